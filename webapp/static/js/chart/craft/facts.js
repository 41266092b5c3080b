// What a drawing comes to: beads, rounds, repeat, drift, rings, length. No page in here.

import { FILL, fixedBeads, spans } from "./parts.js";
import { chartOf } from "./pattern.js";
import { drift, leastRing, repeat, ringsNear } from "./repeats.js";
import { helix } from "./helix.js";
import { count, counted, driftInWords, plain } from "./words.js";

/** Names and values in the order in which one asks; `total` are the beads displayed, `workingMm` the working diameter of the bead. */
export function facts(pattern, total, workingMm) {
  const chart = chartOf(pattern), shortest = repeat(chart), { around } = pattern;
  return [
    ["Around", count(around)],
    [pattern.parts.length > 1 ? "Part" : "Chart", counted(chart.length, "bead")],
    ["Rounds", plain(chart.length / around, 2)],
    ["Repeat", counted(shortest, "bead")],
    ["Drift", driftInWords(drift(around, chart.length))],
    ["Ring", ringInWords(pattern, total, shortest)],
    ["Length", `${plain((total * helix(around).rise * workingMm) / 10, 1)} cm`],
  ];
}

/** Beads by which a ring grows, and those that it has once: the repeat of a chart alone, else a pass of every part that fills. */
export function ringStep(pattern, shortest = repeat(chartOf(pattern))) {
  const fills = spans(pattern).filter(({ times }) => times === FILL);
  if (pattern.parts.length === 1 && fills.length) return { step: shortest, once: 0 };
  return { step: fills.reduce((sum, { length }) => sum + length, 0), once: fixedBeads(pattern) };
}

/** Whether a ring closes with what is displayed, and where else it would. */
export function ringInWords(pattern, total, shortest) {
  const { step, once } = ringStep(pattern, shortest), { around } = pattern;
  if (!step) return once >= leastRing(around) ? `closes at ${count(once)}` : "too short to close";
  const { below, above } = ringsNear(around, step, total, once);
  if (below === total) return `closes, next at ${count(above)}`;
  return below ? `closes at ${count(below)} or ${count(above)}` : `closes from ${count(above)} on`;
}
