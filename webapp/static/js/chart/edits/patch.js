// A patch: a stretch of the lying lattice, kept as columns of beads. Copies move along the spiral, bead by bead, which is
// the one move that maps the lattice to itself everywhere, round the rope too. No page in here.

import { cell, firstOfRow, rowLength } from "../craft/lattice.js";
import { COLOUR } from "../craft/displayed.js";

/** The patch between two beads: { columns }, each column the displayed places in it from the top of the page down. */
export function between(around, hand, total, one, other) {
  const a = cell(around, hand, one), b = cell(around, hand, other);
  const [left, right] = [Math.min(a.column, b.column), Math.max(a.column, b.column)];
  const [top, bottom] = [Math.min(a.half, b.half), Math.max(a.half, b.half)], columns = [];
  for (let column = left; column <= right; column++) {
    const first = firstOfRow(around, column), row = Array.from({ length: rowLength(around, column) }, (_, i) => first + i);
    if (hand === "left") row.reverse();
    columns.push(row.filter((k, i) => k < total && inside(2 * i + (column & 1), top, bottom)));
  }
  return { columns };
}

// a column half a bead aside keeps the beads whose greater part lies in the patch
const inside = (half, top, bottom) => (top === bottom ? Math.abs(half - top) <= 1 && half <= bottom : half >= top && half <= bottom);

export const places = patch => patch.columns.flat();

/** What was copied: beads as { offset, colour } from the first of the patch in working order. */
export function copied(patch, beads) {
  const all = places(patch), anchor = Math.min(...all);
  return { anchor, beads: all.map(k => ({ offset: k - anchor, colour: beads[k] & COLOUR })) };
}

/** Pairs of displayed place and colour of a copy laid down at a bead; what falls beside the rope is left out. */
export const laid = (copy, anchor, total) => copy.beads.map(({ offset, colour }) => [anchor + offset, colour]).filter(([k]) => k >= 0 && k < total);

/** A copy laid down again and again along the rope, that many beads apart, from a bead on. */
export function repeated(copy, anchor, step, total) {
  const pairs = [];
  for (let at = anchor + step; at < total; at += step) pairs.push(...laid(copy, at, total));
  return pairs;
}

/** Pairs for the patch mirrored where it stands: "along" turns the order of columns, "across" that of beads in a column;
 *  "half" is both, a half turn. */
export function turned(patch, beads, way) {
  const columns = way === "across" ? patch.columns : [...patch.columns].reverse();
  return patch.columns.flatMap((column, i) => {
    const source = way === "along" ? columns[i] : [...columns[i]].reverse();
    const lean = Math.trunc((source.length - column.length) / 2);
    return column.flatMap((k, at) => {
      const from = source[Math.min(source.length - 1, Math.max(0, at + lean))];
      return from === undefined ? [] : [[k, beads[from] & COLOUR]];
    });
  });
}
