// The parts of a rope in the editor: where each stands among the drawn beads, which one is chosen, how they are called. No page in here.
//
// A part is { name, times, length }; `times` is a number or FILL: as often as the length of the rope leaves room.

export const FILL = "fill", MOST_PARTS = 12, MOST_TIMES = 1000, LONGEST_NAME = 40;
export const START = "Start", CHART = "Chart", END = "End";      // of a pattern whose file says no parts

/** The pattern with those parts, the one at that place chosen. */
export function parted(pattern, parts, at = pattern.at) {
  const chosen = Math.max(0, Math.min(at, parts.length - 1)), from = total(parts.slice(0, chosen));
  return { ...pattern, parts, at: chosen, from, to: from + parts[chosen].length };
}

/** The pattern with another part chosen; itself where it is chosen already. */
export const choose = (pattern, at) => (at === pattern.at ? pattern : parted(pattern, pattern.parts, at));

export const chosen = pattern => pattern.parts[pattern.at];

/** Every part with the drawn beads from which and before which it stands. */
export function spans({ parts }) {
  let to = 0;
  return parts.map(part => ({ ...part, from: to, to: to += part.length }));
}

/** The place of the part in which a drawn bead stands. */
export function partAt({ parts }, k) {
  let before = parts[0].length, at = 0;
  while (k >= before && at < parts.length - 1) before += parts[++at].length;
  return at;
}

export const total = parts => parts.reduce((sum, { length }) => sum + length, 0);

/** Beads that every rope has of the parts with a number. */
export const fixedBeads = ({ parts }) => parts.reduce((sum, { times, length }) => sum + (times === FILL ? 0 : times * length), 0);

/** Whether the parts are what a file says without parts: a start, a chart that fills, an end. */
export function isShort({ short, parts }) {
  const usual = { [START]: 1, [CHART]: FILL, [END]: 1 }, names = parts.map(({ name }) => name).join(" ");
  return short && /^(Start )?Chart( End)?$/.test(names) && parts.every(({ name, times }) => times === usual[name]);
}

/** How often a part is worked, after its name. */
export const timesInWords = times => (times === FILL ? "fills" : `× ${times}`);

/** How a part is called within a sentence. */
export const nameInWords = (pattern, part) => (isShort(pattern) ? `the ${part.name.toLowerCase()}` : `“${part.name}”`);

/** What is wrong with parts, in a sentence; empty where nothing is. */
export function wrongWith(parts) {
  if (parts.length > MOST_PARTS) return `A rope has at most ${MOST_PARTS} parts.`;
  const both = parts.findIndex(({ times }, i) => times === FILL && parts[i + 1]?.times === FILL);
  return both < 0 ? "" : `“${parts[both].name}” and “${parts[both + 1].name}” would both fill the rope with nothing between them.`;
}
