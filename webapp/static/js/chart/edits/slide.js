// Slide: every bead of the chart moves along the spiral; what leaves at one end comes in at the other. No page in here.

import { chartOf } from "../craft/pattern.js";

export function slide(pattern, by) {
  const chart = chartOf(pattern), length = chart.length, move = ((by % length) + length) % length;
  if (!move) return pattern;
  const beads = pattern.beads.slice();
  beads.set(chart.subarray(length - move), pattern.from);
  beads.set(chart.subarray(0, length - move), pattern.from + move);
  return { ...pattern, beads };
}
