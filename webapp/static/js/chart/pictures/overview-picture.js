// The whole rope in a strip: every pixel takes the colour of the bead that stands there. No page in here.

import { beadAt, halves, rowsOf } from "../craft/lattice.js";

/** An image of the whole, `table` giving the colour of each displayed bead. */
export function overviewImage({ around, hand }, beads, table, width, height) {
  const image = new ImageData(width, height), pixels = new Uint32Array(image.data.buffer),
    columns = rowsOf(around, beads.length), high = halves(around);
  for (let x = 0; x < width; x++) {
    const column = Math.min(columns - 1, Math.floor((x / width) * columns)) + 0.5;
    for (let y = 0; y < height; y++) {
      const k = beadNear(around, hand, column, ((y + 0.5) / height) * high);
      if (k < beads.length) pixels[y * width + x] = table[beads[k]];
    }
  }
  return image;
}

// odd columns leave half a bead free at both edges; the nearest bead fills it
function beadNear(around, hand, column, half) {
  const inside = Math.floor(column) & 1 ? Math.min(2 * around + 0.99, Math.max(1.01, half)) : half;
  return beadAt(around, hand, column, Math.min(inside, 2 * around + 1.99));
}
