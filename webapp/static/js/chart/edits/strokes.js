// Which beads lie on the way between two points of the lying chart, so that a fast stroke leaves no gaps. No page in here.

import { beadAt, cell } from "../craft/lattice.js";

/** Displayed places on the straight way between two points, in order. A point is { x, half }. */
export function along(around, hand, total, from, to) {
  const steps = Math.max(1, Math.ceil(Math.max(Math.abs(to.x - from.x) * 4, Math.abs(to.half - from.half) * 2))), way = [];
  for (let i = 0; i <= steps; i++) {
    const part = i / steps, k = beadAt(around, hand, from.x + (to.x - from.x) * part, from.half + (to.half - from.half) * part);
    if (k >= 0 && k < total && way.at(-1) !== k) way.push(k);
  }
  return way;
}

/** The middle of a bead as a point. */
export function middle(around, hand, k) {
  const { column, half } = cell(around, hand, k);
  return { x: column + 0.5, half: half + 1 };
}

/** A line of beads from one to another, ends included. */
export const line = (around, hand, total, from, to) => along(around, hand, total, middle(around, hand, from), middle(around, hand, to));
