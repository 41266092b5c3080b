// What a tool does at a bead: a state and a displayed place in, what changes out. No page in here.

import { drawnPlace } from "./craft/displayed.js";
import { counted } from "./craft/words.js";
import { connected, ofThatColour, paint, place } from "./edits/paint.js";
import { between, copied, laid, places, repeated, turned } from "./edits/patch.js";
import { add, remove, UNITS } from "./edits/rounds.js";
import { slide } from "./edits/slide.js";
import { line } from "./edits/strokes.js";
import { beadsOf, colourAt, drawnBeads, edited, piecesOf, reached } from "./state.js";

const code = state => state.pattern.palette[state.colour].code;

/** Beads of a stroke or a line in the colour in use, as one step. */
export const painted = (state, name, at) => edited(state, `${name} ${code(state)}`, paint(state.pattern, reached(state, at), state.colour));

/** The line from one place to another; it leaves what is displayed only where one of its ends does. */
export function lineBetween(state, from, to) {
  const { pattern: { around, hand } } = state, total = beadsOf(state).length;
  return line(around, hand, Math.max(from, to) < total ? total : drawnBeads(state).length, from, to);
}

/** What flood reaches: beads that hang together, or all of the colour. */
export const flooded = (state, at, whole) => (whole ? ofThatColour(beadsOf(state), at) : connected(state.pattern.around, beadsOf(state), at));

/** The bead's colour comes into use, and Place with it. */
export const taken = (state, at) => ({ colour: colourAt(state, at), tool: "place" });

/** The patch between two displayed places. */
export const selected = (state, one, other) => ({ patch: between(state.pattern.around, state.pattern.hand, beadsOf(state).length, one, other) });

/** Displayed places as drawn beads, of the chosen part alone. */
const onDrawn = (state, pairs) => {
  const { from, to } = state.pattern, row = piecesOf(state);
  return pairs.map(([at, colour]) => [drawnPlace(row, at), colour]).filter(([k]) => k >= from && k < to);
};
const laidDown = (state, name, pairs, first = state.pattern) => edited(state, name, place(first, onDrawn(state, pairs)));

/** The patch as a copy; Cut also fills it with the bead in use. */
export const copying = state => ({ copy: copied(state.patch, beadsOf(state)) });
export const cleared = (state, name = "Clear") => edited(state, name, emptied(state, state.patch));
const emptied = (state, patch) => place(state.pattern, onDrawn(state, places(patch).map(at => [at, state.colour])));
export const cut = state => ({ ...cleared(state, "Cut"), ...copying(state) });
const MIRRORS = { along: "Mirror along", across: "Mirror across", half: "Half turn" };
export const mirrored = (state, way) => laidDown(state, MIRRORS[way], turned(state.patch, beadsOf(state), way));
export const repeatedAlong = (state, step) => {
  const copy = copied(state.patch, beadsOf(state));
  return laidDown(state, `Repeat along every ${counted(step, "bead")}`, repeated(copy, copy.anchor, step, beadsOf(state).length));
};

/** A copy hangs over the chart, its first bead at a place, until it is put down or dropped. `from` is the patch that moves. */
export const floated = (copy, anchor, from = null) => ({ floating: { copy, anchor, from } });

/** The floating copy stays where it hangs. */
export function putDown(state) {
  const { copy, anchor, from } = state.floating, total = beadsOf(state).length;
  const left = from ? emptied(state, from) : state.pattern;
  const change = laidDown(state, from ? "Move" : "Paste", laid(copy, anchor, total), left);
  const patch = from && { columns: from.columns.map(column => column.map(k => k + anchor - copy.anchor).filter(k => k >= 0 && k < total)) };
  return { ...change, floating: null, patch: patch ?? state.patch };
}

/** Rounds or pairs of rows before or after the cursor's bead, in the bead in use or as copies. */
export function added(state, many, unit, { after, copies }) {
  const at = drawnPlace(piecesOf(state), state.cursor), length = many * UNITS[unit](state.pattern.around);
  return edited(state, `Add ${unitsInWords(many, unit)}`, add(state.pattern, at, length, { after, colour: copies ? null : state.colour }));
}

export function removed(state, many, unit) {
  const at = drawnPlace(piecesOf(state), state.cursor);
  return edited(state, `Remove ${unitsInWords(many, unit)}`, remove(state.pattern, at, many * UNITS[unit](state.pattern.around)));
}

export const slid = (state, by) => edited(state, `Slide by ${by < 0 ? "−" : ""}${counted(Math.abs(by), "bead")}`, slide(state.pattern, by));

const unitsInWords = (many, unit) => (unit === "rounds" ? counted(many, "round") : counted(many, "pair of rows", "pairs of rows"));

/** What the change of length means for all that follows, in a sentence. */
export function shiftInWords(around, many, unit) {
  const beads = many * UNITS[unit](around);
  return (2 * beads) % (2 * around + 1) === 0
    ? `${counted(beads, "bead")}; what follows stays straight.`
    : `${counted(beads, "bead")}; what follows moves ${many % 2 ? "half a bead" : "some beads"} across.`;
}
