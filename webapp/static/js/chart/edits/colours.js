// The palette and what it does to the beads: exchange, merge, entries that come, go and change. No page in here.

import { MOST_ENTRIES } from "../craft/pattern.js";

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
export const COLOURS = ["#2f7f76", "#f3ecdd", "#d9932b", "#a83a2c", "#3d4f7d", "#8a9a5b", "#6b4a6e", "#c9b8a0"];

/** Every bead of one entry becomes the other, and the other way round. */
export const exchange = (pattern, one, other) => recoloured(pattern, bead => (bead === one ? other : bead === other ? one : bead));

/** Every bead of one entry becomes another, and the entry leaves the palette. */
export function merge(pattern, gone, kept) {
  const changed = recoloured(pattern, bead => (bead === gone ? kept : bead));
  return { ...recoloured(changed, bead => (bead > gone ? bead - 1 : bead)), palette: pattern.palette.filter((_, i) => i !== gone) };
}

/** The pattern with one entry more; itself where the palette is full. */
export function addEntry(pattern, entry) {
  return pattern.palette.length < MOST_ENTRIES ? { ...pattern, palette: [...pattern.palette, entry] } : pattern;
}

/** An entry to begin with: the first code that is free, a colour of its own, the kind of the others. */
export function freshEntry({ palette }) {
  const taken = new Set(palette.map(entry => entry.code)), pairs = [...LETTERS].flatMap(a => [...LETTERS].map(b => a + b));
  const code = [...LETTERS, ...pairs].find(letters => !taken.has(letters));
  return { code, name: `Bead ${code}`, colour: COLOURS[palette.length % COLOURS.length], finish: "opaque",
           kind: palette.at(-1).kind, symbol: "", maker_code: "", bead: "" };
}

/** The pattern with an entry changed. */
export const changeEntry = (pattern, index, entry) => ({ ...pattern, palette: pattern.palette.map((old, i) => (i === index ? entry : old)) });

/** What is wrong with an entry at that place of a palette, in a sentence; empty when nothing is. */
export function wrongEntry(palette, index, entry) {
  if (!/^[A-Z]{1,2}$/.test(entry.code)) return "A code is one or two letters A to Z.";
  if (palette.some((other, i) => i !== index && other.code === entry.code)) return `The code ${entry.code} stands in the palette already.`;
  return entry.name.trim() ? "" : "A bead needs a name.";
}

/** The entry that a typed code means: the latest letters that are a whole code; −1 for none. */
export function byCode(palette, typed) {
  const find = letters => palette.findIndex(entry => entry.code === letters);
  const both = find(typed.slice(-2));
  return typed.length > 1 && both >= 0 ? both : find(typed.slice(-1));
}

function recoloured(pattern, change) {
  const beads = pattern.beads.map(change);
  return { ...pattern, beads };
}
