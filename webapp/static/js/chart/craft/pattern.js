// The pattern as the editor holds it: all parts one after another on one lattice, of which one is chosen. No page in here.
//
//     { words, hand, around, palette, beads, parts, at, from, to, short }
//
// parts[at] is the chosen part, the beads from `from` until before `to`; `short` says that the file came without parts.
// A pattern is never changed; an edit gives a new one, which may share the palette and the beads.

import { read, write } from "./notation.js";
import { CHART, END, FILL, isShort, parted, spans, START } from "./parts.js";

export const MOST_BEADS = 100_000, MOST_ENTRIES = 64, LEAST_AROUND = 3, MOST_AROUND = 60;
const WORDS = { title: "", stitch: "", designer: "", notes: "", tags: [] };
const ENTRY = { finish: "opaque", kind: "11/0 round", symbol: "", maker_code: "", bead: "" };

export const chartOf = pattern => pattern.beads.subarray(pattern.from, pattern.to);
export const codesOf = pattern => pattern.palette.map(entry => entry.code);

/** The pattern of a pattern file as the server gives it; the first part that fills is chosen, or the first of all. */
export function fromDocument(file) {
  const palette = file.palette.map(({ code, name, colour, ...others }) => ({ code, name, colour, ...ENTRY, ...others })),
    codes = palette.map(entry => entry.code);
  const short = !file.parts?.length;
  const stretches = (short ? shortParts(file) : file.parts).map(({ beads, ...part }) => ({ ...part, beads: read(beads, codes) }));
  const words = Object.fromEntries(Object.entries(WORDS).map(([name, usual]) => [name, file[name] ?? usual]));
  const parts = stretches.map(({ name, times = 1, beads }) => ({ name, times, length: beads.length }));
  const pattern = { words, hand: file.hand ?? "right", around: file.around, palette, beads: joined(...stretches.map(({ beads }) => beads)), short };
  return parted(pattern, parts, Math.max(0, parts.findIndex(({ times }) => times === FILL)));
}

const shortParts = ({ start, beads, end }) => [
  { name: START, beads: start, times: 1 }, { name: CHART, beads, times: FILL }, { name: END, beads: end, times: 1 },
].filter(part => part.beads);

/** The document of a pattern, every field said. */
export function toDocument(pattern) {
  const codes = codesOf(pattern);
  const parts = spans(pattern).map(({ name, times, from, to }) => ({ name, beads: write(pattern.beads.subarray(from, to), codes), times }));
  const beadsOf = name => parts.find(part => part.name === name)?.beads ?? "";
  return { format: "ropewright-pattern", version: 1, ...pattern.words, hand: pattern.hand, around: pattern.around, palette: pattern.palette,
           ...(isShort(pattern) ? { beads: beadsOf(CHART), start: beadsOf(START), end: beadsOf(END) } : { parts }) };
}

/** Whether two patterns are the same in all that is kept. */
export const same = (one, other) => one === other || unchanged(one, other) || JSON.stringify(toDocument(one)) === JSON.stringify(toDocument(other));

/** Whether two patterns share all that is kept: at most another part is chosen. */
export const unchanged = (one, other) => ["words", "hand", "around", "palette", "beads", "parts"].every(name => one[name] === other[name]);

/** How often each palette entry stands in the drawn beads. */
export function counts(pattern) {
  const used = new Array(pattern.palette.length).fill(0);
  for (const bead of pattern.beads) used[bead]++;
  return used;
}

export function joined(...stretches) {
  const beads = new Uint8Array(stretches.reduce((sum, stretch) => sum + stretch.length, 0));
  let at = 0;
  for (const stretch of stretches) {
    beads.set(stretch, at);
    at += stretch.length;
  }
  return beads;
}
