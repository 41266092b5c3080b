// The spiral in bead units: where bead k sits, which beads it touches, where it is drawn lying. No page in here.
//
// Rows hold N + 1 and N beads by turns. Lying, a row is a column: right-handed work reads it downwards, left-handed
// work is the mirror image. Places across are counted in half beads from the top, so that every bead is two high.

export const rowLength = (around, row) => (row & 1 ? around : around + 1);
export const firstOfRow = (around, row) => (row >> 1) * (2 * around + 1) + (row & 1 ? around + 1 : 0);
export const rowsOf = (around, beads) => (beads ? place(around, beads - 1).row + 1 : 0);
export const halves = around => 2 * around + 2;
export const turns = (around, k) => k / (around + 0.5);
export const angle = (around, k) => 2 * Math.PI * turns(around, k);

/** Drawn row, counted from nought, and left edge in bead widths (whole on even rows). */
export function place(around, k) {
  const pair = 2 * around + 1, q = Math.floor(k / pair), rest = k - q * pair;
  return rest <= around ? { row: 2 * q, x: rest } : { row: 2 * q + 1, x: rest - around - 0.5 };
}

/** Where bead k is drawn on the lying chart: its column, and its upper edge in half beads. */
export function cell(around, hand, k) {
  const { row, x } = place(around, k);
  return { column: row, half: hand === "left" ? 2 * (around - x) : 2 * x };
}

/** The bead under a point of the lying chart, in columns and half beads; −1 beside the lattice. */
export function beadAt(around, hand, x, half) {
  const column = Math.floor(x), down = hand === "left" ? halves(around) - half : half;
  const along = Math.floor((Math.floor(down) - (column & 1)) / 2);
  if (column < 0 || along < 0 || along >= rowLength(around, column)) return -1;
  return firstOfRow(around, column) + along;
}

/** The beads that bead k touches, sorted; with `total` those of a ring of that many beads. */
export function neighbours(around, k, total) {
  const steps = [1, around, around + 1], reached = new Set(steps.flatMap(step => [k - step, k + step]));
  if (total === undefined) return [...reached].filter(bead => bead >= 0).sort((a, b) => a - b);
  return [...new Set([...reached].map(bead => ((bead % total) + total) % total))].filter(bead => bead !== k).sort((a, b) => a - b);
}

/** The bead one comes to from bead k: along the spiral, or straight along the rope to the next column. */
export function step(around, k, direction) {
  if (direction === "on") return k + 1;
  if (direction === "back") return Math.max(0, k - 1);
  const { row, x } = place(around, k), next = row + (direction === "forward" ? 1 : -1);
  if (next < 0) return k;
  const across = row & 1 ? x - 0.5 : Math.min(x, around - 1);
  return firstOfRow(around, next) + across;
}
