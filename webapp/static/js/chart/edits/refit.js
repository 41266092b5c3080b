// Refit: the same design on another number around. No page in here.

import { firstOfRow, rowLength, rowsOf } from "../craft/lattice.js";
import { helix } from "../craft/helix.js";
import { chartOf, joined, MOST_BEADS } from "../craft/pattern.js";
import { parted, spans } from "../craft/parts.js";
import { repeat } from "../craft/repeats.js";

export const WAYS = {
  string: "Keep the string of beads",
  rounds: "Keep rounds",
  rows: "Keep rows",
  stretch: "Stretch the picture",
};

/** The way that suits a chart: the string for spirals, whose repeat is short beside a round, else the stretched picture. */
export function usualWay(pattern) {
  const chart = chartOf(pattern);
  return repeat(chart) <= 3 * pattern.around && repeat(chart) < chart.length ? "string" : "stretch";
}

/** The pattern on `around` beads; where the lattice asks for more beads they take `colour`. Null where it would be too long. */
export function refit(pattern, around, way, colour) {
  if (around === pattern.around) return pattern;
  const made = { string: kept, rounds: cutRounds, rows: cutRows, stretch: stretched }[way](pattern, around, colour);
  const { beads, lengths } = made, parts = pattern.parts.map((part, i) => ({ ...part, length: lengths[i] }));
  return beads.length > MOST_BEADS ? null : parted({ ...pattern, beads, around }, parts);
}

const kept = ({ beads, parts }) => ({ beads, lengths: parts.map(({ length }) => length) });

const cutRounds = (pattern, around, colour) => byParts(pattern, beads => {
  const many = Math.ceil(beads.length / pattern.around);
  return joined(...Array.from({ length: many }, (_, i) => {
    const round = beads.subarray(i * pattern.around, (i + 1) * pattern.around);
    return fitted(round, lastLength(round, i === many - 1, pattern.around, around), colour);
  }));
});

const cutRows = (pattern, around, colour) => byParts(pattern, beads => {
  const many = rowsOf(pattern.around, beads.length), first = row => firstOfRow(pattern.around, row);
  return joined(...Array.from({ length: many }, (_, row) => {
    const own = beads.subarray(first(row), first(row + 1));
    return fitted(own, lastLength(own, row === many - 1, rowLength(pattern.around, row), rowLength(around, row)), colour);
  }));
});

// a last round or row that is not full stays as it is, where there is room
const lastLength = (beads, last, full, wanted) => (last && beads.length < full ? Math.min(beads.length, wanted) : wanted);

function fitted(beads, length, colour) {
  const made = new Uint8Array(length).fill(colour);
  made.set(beads.subarray(0, length));
  return made;
}

/** Every part by itself: its rounds and rows are counted from its own first bead. */
function byParts(pattern, change) {
  const parts = spans(pattern).map(({ from, to }) => change(pattern.beads.subarray(from, to)));
  return { beads: joined(...parts), lengths: parts.map(({ length }) => length) };
}

/** Every new bead takes the colour of the old one nearest to it, by angle round the rope and by true height along it. */
function stretched(pattern, around) {
  const old = helix(pattern.around), fresh = helix(around), ratio = old.rise / fresh.rise;
  const grown = beads => Math.min(MOST_BEADS + 1, Math.round(beads * ratio));
  let before = 0;
  const lengths = spans(pattern).map(({ to }) => {
    const length = Math.max(1, grown(to) - before);
    before += length;
    return length;
  });
  const beads = new Uint8Array(before);
  for (let k = 0; k < before; k++) beads[k] = pattern.beads[nearest(pattern, old, (k / (around + 0.5)) % 1, k * fresh.rise)];
  return { beads, lengths };
}

function nearest({ around, beads }, { radius, rise }, turn, height) {
  const pair = around + 0.5, round = Math.round(height / (rise * pair) - turn);
  let best = 0, least = Infinity;
  for (let turns = round - 1; turns <= round + 1; turns++) {
    const middle = Math.round((turns + turn) * pair);
    for (let k = Math.max(0, middle - 1); k <= Math.min(beads.length - 1, middle + 1); k++) {
      const aside = (((k / pair - turn) % 1) + 1.5) % 1 - 0.5,
        far = (aside * 2 * Math.PI * radius) ** 2 + (k * rise - height) ** 2;
      if (far < least) [best, least] = [k, far];
    }
  }
  return least < Infinity ? best : Math.max(0, Math.min(beads.length - 1, Math.round(height / rise)));
}
