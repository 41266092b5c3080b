// Where one is in a list of runs; no page here, so that it can be tested as it is.

/** Beads strung before each run, and all of them at the end: [3, 1, 2] gives [0, 3, 4, 6]. */
export function totals(runs) {
  const before = [0];
  for (const beads of runs) before.push(before.at(-1) + beads);
  return before;
}

/** The place as a whole number of runs done, nought to all of them; anything else is nought. */
export function within(place, runs) {
  const whole = Number.parseInt(place, 10);
  return Number.isNaN(whole) ? 0 : Math.min(Math.max(whole, 0), runs);
}
