// What the editor displays: every part once with several passes of the chosen one, or the whole piece. No page in here.
//
// A piece is { part, at, beads, from, length, first, dim }: that many beads displayed from `at` on, which say the part's
// `length` beads, drawn from `from` on, again and again, beginning at its bead `first`.

import { spans } from "./parts.js";

export const DIM = 64, COLOUR = 63;     // a displayed bead is its palette index, and DIM with it where it is not the drawn stretch
export const MOST_DISPLAYED = 200_000;

/** How many passes of the chosen part can be displayed. */
export const mostPasses = ({ beads, from, to }) => Math.max(1, Math.floor((MOST_DISPLAYED - beads.length) / (to - from)) + 1);

/** The pieces that are displayed: of the whole piece where it is known, { part, first, beads } each, else with those passes. */
export function pieces(pattern, passes, whole = null) {
  const all = spans(pattern), piece = (part, beads, first, dim) => ({ part, beads, from: all[part].from, length: all[part].length, first, dim });
  const row = whole ? whole.map(({ part, first, beads }) => piece(part, beads, first, false)) :
    all.flatMap(({ length }, part) => {
      if (part !== pattern.at) return [piece(part, length, 0, true)];
      return [piece(part, length, 0, false), ...(passes > 1 ? [piece(part, length * (passes - 1), 0, true)] : [])];
    });
  let next = 0;
  return row.map(one => ({ ...one, at: (next += one.beads) - one.beads }));
}

/** The displayed beads, one byte each. One part with one pass is the pattern's own. */
export function displayed(pattern, row) {
  if (row.length === 1 && row[0].beads === pattern.beads.length && !row[0].first) return pattern.beads;
  const beads = new Uint8Array(endOf(row.at(-1)));
  for (const { at, beads: many, from, length, first, dim } of row) {
    for (let i = 0, k = first; i < many; i++, k = k + 1 === length ? 0 : k + 1) beads[at + i] = pattern.beads[from + k] + (dim ? DIM : 0);
  }
  return beads;
}

/** The piece at a displayed place. */
export const pieceAt = (row, place) => row.find(piece => place < endOf(piece)) ?? row.at(-1);

/** The drawn bead that stands at a displayed place. */
export function drawnPlace(row, place) {
  const { at, from, length, first } = pieceAt(row, place);
  return from + ((first + place - at) % length);
}

/** Which pass of its part a displayed place belongs to, counted from one. */
export function passAt(row, place) {
  const { part, at, length, first } = pieceAt(row, place), before = row.filter(piece => piece.part === part && piece.at < at);
  return Math.floor((before.reduce((sum, { beads }) => sum + beads, 0) + first + place - at) / length) + 1;
}

const endOf = ({ at, beads }) => at + beads;
