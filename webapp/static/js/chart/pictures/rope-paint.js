// Paints the rope by looking up the tile: a pixel shows one bead or two, in the colours of their finish. No page in here.
//
// What a bead of a colour looks like at a pixel of the tile is worked out once and kept, because the tile comes again and
// again along the rope; only for large palettes on large tiles, where that would take too much room, it is not kept.

import { DIM } from "../craft/displayed.js";

const THREAD = [46, 40, 36], MOST_KEPT = 4_000_000;

/** Paints columns x0 until before x1 of an image. `left` is pixels from the rope's beginning, `top` the first row shown. */
export function paintRope(image, tile, beads, tables, { left = 0, top = 0, x0 = 0, x1 = image.width } = {}) {
  const { width, period, idA, idB, wA, wB, thread } = tile, total = beads.length, out = new Uint32Array(image.data.buffer);
  const { A, B, pixels, kept } = tints(tile, tables), entries = tables.entries;
  const q0 = Math.floor((x0 + left) / width), t0 = x0 + left - q0 * width, perPixel = period / width;
  const first = period * 0.3, last = total - period * 0.3, rows = Math.min(image.height, tile.height - top);
  for (let y = 0; y < rows; y++) {
    let tx = t0, base = q0 * period, o = (y + top) * width + t0;
    for (let x = x0, p = y * image.width + x0; x < x1; x++, p++) {
      const a = base + idA[o];
      let w = wA[o], c = 0;
      if (w !== 0 && a >= 0 && a < total) {
        const value = beads[a], slot = kept ? (value < DIM ? value : value - DIM + entries) * pixels + o : 0;
        c = kept ? A[slot] : 0;
        if (c === 0) {
          c = shade(tables, value, tile.difA[o], tile.spcA[o], tile.trnA[o], tile.deepA[o], tile.rimA[o]);
          if (kept) A[slot] = c;
        }
      } else w = 0;
      if (w === 255) out[p] = c;
      else {
        let r = (c & 255) * w, g = ((c >> 8) & 255) * w, bl = ((c >> 16) & 255) * w;
        const b = base + idB[o], w2 = wB[o];
        if (w2 !== 0 && b >= 0 && b < total) {
          const value = beads[b], slot = kept ? (value < DIM ? value : value - DIM + entries) * pixels + o : 0;
          c = kept ? B[slot] : 0;
          if (c === 0) {
            c = shade(tables, value, tile.difB[o], tile.spcB[o], tile.trnB[o], tile.deepB[o], tile.rimB[o]);
            if (kept) B[slot] = c;
          }
          r += (c & 255) * w2; g += ((c >> 8) & 255) * w2; bl += ((c >> 16) & 255) * w2; w += w2;
        }
        const at = base + tx * perPixel;
        if (w < 255 && at > first && at < last) {
          const rest = Math.min(255 - w, thread[o]);      // thread seen between beads
          r += THREAD[0] * rest; g += THREAD[1] * rest; bl += THREAD[2] * rest; w += rest;
        }
        out[p] = w === 0 ? 0 : (w << 24) | ((bl / w) << 16) | ((g / w) << 8) | (r / w);
      }
      o++;
      if (++tx === width) { tx = 0; o -= width; base += period; }
    }
  }
}

/** The kept colours of a tile: for both beads of a pixel, by place in the palette (faded ones behind) and pixel. */
function tints(tile, tables) {
  if (tile.tints?.tables === tables) return tile.tints;
  const pixels = tile.width * tile.height, size = 2 * tables.entries * pixels, kept = size <= MOST_KEPT;
  tile.tints = { tables, pixels, kept, A: new Uint32Array(kept ? size : 0), B: new Uint32Array(kept ? size : 0) };
  return tile.tints;
}

/** A bead's colour under that light, as an image keeps it. */
function shade({ body, shine, glow, deep }, value, lit, bright, through, inside, rim) {
  const j = (value * 256 + lit) * 3, k = value * 4, d = value * 5, which = deep[d + 4];
  let r = body[j], g = body[j + 1], b = body[j + 2];
  if (which !== 0) {
    const share = ((which === 1 ? inside : rim) / 255) * deep[d + 3],
      dark = which === 1 ? 0.45 + 0.55 * Math.min(1, lit / 170) : 1;
    r += (deep[d] * dark - r) * share; g += (deep[d + 1] * dark - g) * share; b += (deep[d + 2] * dark - b) * share;
  }
  if (glow[k + 3] !== 0 && through !== 0) {
    const share = (glow[k + 3] * through) / 255;
    r += (glow[k] - r) * share; g += (glow[k + 1] - g) * share; b += (glow[k + 2] - b) * share;
  }
  if (bright !== 0) {
    const share = Math.min(1, (bright / 255) * shine[k + 3]);
    r += (shine[k] - r) * share; g += (shine[k + 1] - g) * share; b += (shine[k + 2] - b) * share;
  }
  return ((255 << 24) | (b << 16) | (g << 8) | r) >>> 0;
}
