// How a chart repeats: its shortest repeat, the drift of a pass, which rings close. No page in here.

/** Length of the shortest stretch that divides the beads and, said again and again, gives them. */
export function repeat(beads) {
  const length = beads.length, border = new Int32Array(length);
  for (let i = 1, fits = 0; i < length; i++) {
    while (fits && beads[i] !== beads[fits]) fits = border[fits - 1];
    if (beads[i] === beads[fits]) fits++;
    border[i] = fits;
  }
  const shortest = length - (border[length - 1] ?? 0);
  return length % shortest ? length : shortest;
}

/** How far that many beads turn round the rope: signed beads in (−(N + ½)/2, (N + ½)/2], and degrees. */
export function drift(around, beads) {
  const halfBeads = 2 * around + 1, rest = (2 * beads) % halfBeads, signed = 2 * rest <= halfBeads ? rest : rest - halfBeads;
  return { beads: signed / 2, degrees: (signed / halfBeads) * 360 };
}

/** The fewest beads of a ring in which every bead has six different neighbours. */
export const leastRing = around => 2 * around + 3;

/** Whether a ring of that many beads closes in colour; the half bead never prevents it. */
export const closes = (around, repeatBeads, total) => total >= leastRing(around) && total % repeatBeads === 0;

/** The nearest beads at which a ring closes: at most `total` (nought where there is none) and more than it. `once` are the
 *  beads of start and end, which no repeat may cut. */
export function ringsNear(around, step, total, once = 0) {
  const least = once + Math.max(1, Math.ceil((leastRing(around) - once) / step)) * step;
  const below = once + Math.floor((total - once) / step) * step;
  return below < least ? { below: 0, above: least } : { below, above: below + step };
}
