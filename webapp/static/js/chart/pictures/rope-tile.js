// The shape of the shaded rope. Two rows hold exactly 2N + 1 beads and come back to the same angle, so the shape repeats
// every two rows: one tile says for every pixel which bead it shows, how lit and how shiny. No page in here.

import { clamp } from "./colour.js";

/** Bead measures in rows: width around the rope, diameter across its hole, how much of the width it fills, roundness. */
export const SHAPE = { around: 0.92, across: 1.16, fill: 1.06, round: 0.82 };
export const NONE = -32768;
const LAYERS = ["dif", "spc", "trn", "deep", "rim"];

const normal = v => v.map(part => part / Math.hypot(...v));
const KEY = normal([-0.38, -0.72, 0.80]), FILL = normal([0.55, 0.55, 0.55]), HALF = normal([KEY[0], KEY[1], KEY[2] + 1]);
const smooth = (from, to, value) => { const t = clamp((value - from) / (to - from)); return t * t * (3 - 2 * t); };

/** Measures in pixels for rows of that pitch: axis to bead centres, bead radius, half its width, height of the picture. */
export function ropeSize(around, pitch) {
  const radius = (pitch * SHAPE.around) / (2 * Math.sin(Math.PI / (around + 0.5))), bead = (pitch * SHAPE.across) / 2;
  return { radius, bead, half: (pitch * SHAPE.around * SHAPE.fill) / 2, height: Math.ceil(2 * (radius + bead)) + 4 };
}

/** Traces the tile. `pitch` is whole pixels a row, `turn` radians, `sharp` samples across a pixel. */
export function traceTile(around, hand, pitch, turn, sharp = 2) {
  const size = ropeSize(around, pitch), sense = hand === "left" ? -1 : 1, period = 2 * around + 1;
  const fine = newLayers(2 * pitch * sharp, size.height * sharp);
  for (let bead = -around - 2; bead < period + around + 2; bead++) {
    const th = (sense * 2 * Math.PI * bead) / (around + 0.5) + turn;
    if (Math.cos(th) >= -0.45) traceBead(fine, size, bead, (pitch * bead) / (around + 0.5), th, sharp);
  }
  return { ...reduced(fine, size, sharp), width: 2 * pitch, height: size.height, period, pitch };
}

function newLayers(width, height) {
  const made = { width, height, z: new Float32Array(width * height).fill(-1e9), id: new Int16Array(width * height).fill(NONE) };
  for (const layer of LAYERS) made[layer] = new Uint8Array(width * height);
  return made;
}

/** One bead, a rounded cylinder with its hole along the rope's round, sample by sample. */
function traceBead(fine, { radius, bead, half, height }, number, cx, th, sharp) {
  const s = Math.sin(th), c = Math.cos(th), cy = height / 2 + radius * s, cz = radius * c, reach = Math.hypot(half, bead);
  const round = Math.min(half, bead) * SHAPE.round, flat = half - round, thick = bead - round, outer = radius + bead;
  const x0 = Math.max(0, Math.floor((cx - bead) * sharp)), x1 = Math.min(fine.width - 1, Math.ceil((cx + bead) * sharp));
  const y0 = Math.max(0, Math.floor((cy - reach) * sharp)), y1 = Math.min(fine.height - 1, Math.ceil((cy + reach) * sharp));
  for (let py = y0; py <= y1; py++) {
    const dy = (py + 0.5) / sharp - cy;
    for (let px = x0; px <= x1; px++) {
      const dx = (px + 0.5) / sharp - cx, o = py * fine.width + px;
      if (dx * dx > bead * bead || cz + reach <= fine.z[o]) continue;
      let z = reach, t = 0, r = 0, rho = 0, q1 = 0, q2 = 0, hit = false;
      for (let round_ = 0; round_ < 14 && !hit && z >= -reach; round_++) {      // walks towards the surface
        t = dy * c - z * s; r = dy * s + z * c; rho = Math.sqrt(r * r + dx * dx);
        q1 = Math.abs(t) - flat; q2 = rho - thick;
        const a = q1 > 0 ? q1 : 0, b = q2 > 0 ? q2 : 0, far = Math.sqrt(a * a + b * b) + Math.min(Math.max(q1, q2), 0) - round;
        if (far < 0.03) hit = true; else z -= far;
      }
      if (!hit || cz + z <= fine.z[o]) continue;
      fine.z[o] = cz + z; fine.id[o] = number;
      let nt = 0, nr = 1;
      if (q1 > 0 && q2 > 0) { const l = Math.sqrt(q1 * q1 + q2 * q2); nt = (Math.sign(t) * q1) / l; nr = q2 / l; }
      else if (q1 > q2) { nt = Math.sign(t); nr = 0; }
      const side = rho > 1e-6 ? (nr * dx) / rho : 0, out = rho > 1e-6 ? (nr * r) / rho : nr;
      light(fine, o, side, nt * c + out * s, -nt * s + out * c, radius * s + dy, cz + z, outer, bead);
      if (Math.abs(t) > half * 0.5) fine.dif[o] *= 1 - 0.6 * smooth(bead * 0.34, bead * 0.16, rho);      // the hole
      fine.deep[o] = 255 * smooth(bead * 0.62, bead * 0.34, Math.abs(dx)) * smooth(half, half * 0.8, Math.abs(t));
    }
  }
}

/** Light on a surface with that normal, at height `y` and depth `z` beside the axis. */
function light(fine, o, nx, ny, nz, y, z, outer, bead) {
  const far = Math.sqrt(y * y + z * z), open = smooth(outer - 1.75 * bead, outer - 0.18 * bead, far);      // valleys are dark
  const whole = 0.74 + 0.26 * clamp(0.45 + (0.75 * (y * KEY[1] + z * KEY[2])) / far);
  const key = clamp((nx * KEY[0] + ny * KEY[1] + nz * KEY[2] + 0.22) / 1.22),
    fill = clamp(nx * FILL[0] + ny * FILL[1] + nz * FILL[2]);
  const lit = (0.20 + 0.16 * (0.5 - 0.5 * ny) + 0.78 * key + 0.12 * fill) * (0.26 + 0.74 * open) * whole;
  const nh = Math.max(0, nx * HALF[0] + ny * HALF[1] + nz * HALF[2]), mx = 2 * nz * nx, my = 2 * nz * ny, away = 1 - clamp(nz);
  const pane = smooth(0.16, 0.30, -my) * smooth(0.98, 0.84, -my) * smooth(0.62, 0.46, Math.abs(mx + 0.30));
  const shine = (nh ** 90 * 0.75 + pane * 0.42 + nh ** 14 * 0.10 + away ** 4 * 0.10) * open * (0.45 + 0.55 * whole);
  fine.dif[o] = Math.min(255, lit * 205);
  fine.spc[o] = Math.min(255, shine * 255);
  fine.trn[o] = 255 * clamp(-(nx * KEY[0] + ny * KEY[1]) * 0.9 + 0.25 * nz) ** 1.6 * open;
  fine.rim[o] = 255 * smooth(0.05, 0.75, away);
}

/** Down to pixels: the two beads that cover most of each, their light, and how much of the pixel is rope or thread. */
function reduced(fine, { radius, height }, sharp) {
  const width = fine.width / sharp, pixels = width * height, full = sharp * sharp, made = { thread: new Uint8Array(pixels) };
  for (const side of ["A", "B"]) {
    made[`id${side}`] = new Int16Array(pixels);
    made[`w${side}`] = new Uint8Array(pixels);
    for (const layer of LAYERS) made[layer + side] = new Uint8Array(pixels);
  }
  const ids = new Int16Array(full), seen = new Uint8Array(full), sums = LAYERS.map(() => new Float32Array(full)),
    layers = LAYERS.map(layer => fine[layer]);
  const keepA = LAYERS.map(layer => made[`${layer}A`]), keepB = LAYERS.map(layer => made[`${layer}B`]);
  for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) {
    const q = y * width + x;
    let distinct = 0, a = -1, b = -1;
    for (let v = 0; v < sharp; v++) for (let u = 0; u < sharp; u++) {
      const o = (y * sharp + v) * fine.width + x * sharp + u;
      if (fine.id[o] === NONE) continue;
      let j = 0;
      while (j < distinct && ids[j] !== fine.id[o]) j++;
      if (j === distinct) { ids[distinct] = fine.id[o]; seen[distinct] = 0; for (const sum of sums) sum[distinct] = 0; distinct++; }
      seen[j]++;
      for (let l = 0; l < sums.length; l++) sums[l][j] += layers[l][o];
    }
    for (let j = 0; j < distinct; j++) if (a < 0 || seen[j] > seen[a]) { b = a; a = j; } else if (b < 0 || seen[j] > seen[b]) b = j;
    made.thread[q] = 255 * clamp(radius * 0.96 - Math.abs(y + 0.5 - height / 2) + 0.5);
    if (a < 0) continue;
    const both = seen[a] + (b < 0 ? 0 : seen[b]), cover = distinct > 2 ? 1 : both / full;
    made.idA[q] = ids[a]; made.wA[q] = 255 * (seen[a] / both) * cover;
    for (let l = 0; l < sums.length; l++) keepA[l][q] = sums[l][a] / seen[a];
    if (b < 0) continue;
    made.idB[q] = ids[b]; made.wB[q] = 255 * (seen[b] / both) * cover;
    for (let l = 0; l < sums.length; l++) keepB[l][q] = sums[l][b] / seen[b];
  }
  return made;
}
