// What the editor displays: every part once with several passes of the chosen one, or the whole piece. No page in here.
//
// A piece is { part, at, beads, from, length, first, dim }: that many beads displayed from `at` on, which say the part's
// `length` beads, drawn from `from` on, again and again, beginning at its bead `first`.

import { FILL, spans } from "./parts.js";

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

/** The passes that really follow the last piece, until there are that many beads in all: as a dimmed piece, or null where the
 *  rope has no more of them. */
export function following({ parts }, row, until) {
  const { part, from, length } = row.at(-1), at = endOf(row.at(-1)), { times } = parts[part];
  const left = times === FILL ? Infinity : times * length - displayedOf(row, part), beads = Math.min(until - at, left);
  return beads > 0 ? { part, from, length, at, beads, first: 0, dim: true } : null;
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

/** The piece at a place; a place that follows them all is in the last one's part. */
export const pieceAt = (row, place) => row.find(piece => place < endOf(piece)) ?? row.at(-1);

/** The drawn bead that stands at a place. */
export function drawnPlace(row, place) {
  const { at, from, length, first } = pieceAt(row, place);
  return from + ((first + place - at) % length);
}

/** Whether a place lies beyond the displayed pieces, in the passes that follow. */
export const follows = (row, place) => place >= endOf(row.at(-1));

/** The displayed place of a place: itself, or that of the bead which a following pass says again. */
export function repeatedPlace(row, place) {
  const { part, from } = row.at(-1);
  if (!follows(row, place)) return place;
  return row.find(piece => piece.part === part).at + drawnPlace(row, place) - from;
}

/** Which pass of its part a place belongs to, counted from one. */
export function passAt(row, place) {
  const { part, at, length, first } = pieceAt(row, place), before = row.filter(piece => piece.at < at);
  return Math.floor((displayedOf(before, part) + first + place - at) / length) + 1;
}

/** Whether a place needs its pass to be told apart: its part is displayed more than once, or it follows what is displayed. */
export function isOneOfPasses(row, place) {
  const { part, length } = pieceAt(row, place);
  return follows(row, place) || displayedOf(row, part) > length;
}

const endOf = ({ at, beads }) => at + beads;
const displayedOf = (row, part) => row.reduce((sum, piece) => sum + (piece.part === part ? piece.beads : 0), 0);
