// What a drawing comes to: beads, rounds, repeat, drift, rings, length. No page in here.

import { chartOf } from "./pattern.js";
import { drift, repeat, ringsNear } from "./repeats.js";
import { helix } from "./helix.js";
import { count, counted, driftInWords, plain } from "./words.js";

/** Names and values in the order in which one asks; `workingMm` is the working diameter of the bead. */
export function facts(pattern, passes, workingMm) {
  const chart = chartOf(pattern), shortest = repeat(chart), { around } = pattern;
  return [
    ["Around", count(around)],
    ["Chart", counted(chart.length, "bead")],
    ["Rounds", plain(chart.length / around, 2)],
    ["Repeat", counted(shortest, "bead")],
    ["Drift", driftInWords(drift(around, chart.length))],
    ["Ring", ringInWords(pattern, passes, shortest)],
    ["Length", `${plain(lengthMm(pattern, passes, workingMm) / 10, 1)} cm`],
  ];
}

/** The beads of the rope with that many passes. */
export const ropeBeads = ({ beads, from, to }, passes) => beads.length + (to - from) * (passes - 1);

const lengthMm = (pattern, passes, workingMm) => ropeBeads(pattern, passes) * helix(pattern.around).rise * workingMm;

/** Whether a ring closes with what is displayed, and where else it would. */
export function ringInWords(pattern, passes, shortest) {
  const { around, from, to, beads } = pattern, once = beads.length - (to - from), total = ropeBeads(pattern, passes);
  const { below, above } = ringsNear(around, once ? to - from : shortest, total, once);
  if (below === total) return `closes, next at ${count(above)}`;
  return below ? `closes at ${count(below)} or ${count(above)}` : `closes from ${count(above)} on`;
}
