// What the editor displays: the start, one pass or several, the end. Passes after the first are dimmed. No page in here.

import { joined } from "./pattern.js";

export const DIM = 64, COLOUR = 63;     // a displayed bead is its palette index, and DIM with it in a pass that is not the drawn one
export const MOST_DISPLAYED = 200_000;

/** How many passes of a pattern can be displayed. */
export const mostPasses = ({ beads, from, to }) => Math.max(1, Math.floor((MOST_DISPLAYED - beads.length) / (to - from)) + 1);

/** The displayed beads, one byte each. With one pass these are the pattern's own. */
export function displayed(pattern, passes) {
  const { beads, from, to } = pattern;
  if (passes === 1) return beads;
  const dimmed = beads.slice(from, to).map(bead => bead + DIM);
  return joined(beads.subarray(0, to), ...new Array(passes - 1).fill(dimmed), beads.subarray(to));
}

/** The drawn bead that stands at a displayed place. */
export function drawnPlace({ from, to }, passes, place) {
  const length = to - from, last = from + length * passes;
  if (place < from) return place;
  return place < last ? from + ((place - from) % length) : place - length * (passes - 1);
}

/** Where a drawn bead is displayed: the end after all passes, the chart in the first. */
export const displayedPlace = ({ from, to }, passes, k) => (k < to ? k : k + (to - from) * (passes - 1));

/** "start", "chart" or "end". */
export const partOf = ({ from, to }, k) => (k < from ? "start" : k < to ? "chart" : "end");
