// The pattern as the editor holds it: start, chart and end on one lattice, and the marks between them. No page in here.
//
//     { words, hand, around, palette, beads, from, to }      the chart is the beads from `from` until before `to`
//
// A pattern is never changed; an edit gives a new one, which may share the palette and the beads.

import { read, write } from "./notation.js";

export const MOST_BEADS = 100_000, MOST_ENTRIES = 64, LEAST_AROUND = 3, MOST_AROUND = 60;
const WORDS = { title: "", stitch: "", designer: "", notes: "", tags: [] };
const ENTRY = { finish: "opaque", kind: "11/0 round", symbol: "", maker_code: "" };

export const chartOf = pattern => pattern.beads.subarray(pattern.from, pattern.to);
export const codesOf = pattern => pattern.palette.map(entry => entry.code);

/** The pattern of a pattern file as the server gives it. */
export function fromDocument(file) {
  const palette = file.palette.map(({ code, name, colour, ...others }) => ({ code, name, colour, ...ENTRY, ...others })),
    codes = palette.map(entry => entry.code);
  const [start, chart, end] = ["start", "beads", "end"].map(name => read(file[name] ?? "", codes));
  const words = Object.fromEntries(Object.entries(WORDS).map(([name, usual]) => [name, file[name] ?? usual]));
  return { words, hand: file.hand ?? "right", around: file.around, palette, beads: joined(start, chart, end),
           from: start.length, to: start.length + chart.length };
}

/** The document of a pattern, every field said. */
export function toDocument(pattern) {
  const codes = codesOf(pattern), { beads, from, to } = pattern;
  return { format: "ropewright-pattern", version: 1, ...pattern.words, hand: pattern.hand, around: pattern.around,
           palette: pattern.palette, beads: write(beads.subarray(from, to), codes),
           start: write(beads.subarray(0, from), codes), end: write(beads.subarray(to), codes) };
}

/** Whether two patterns are the same in all that is kept. */
export const same = (one, other) => JSON.stringify(toDocument(one)) === JSON.stringify(toDocument(other));

/** How often each palette entry stands in start, chart and end. */
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
