// The lying chart: a tiny picture of the visible colours, a pixel for a column and half a bead, drawn with one scaled copy,
// and one tiled mask that carries outline and shading. The cost follows pixels, not beads. No page in here.

import { cell, firstOfRow, halves, rowLength, rowsOf } from "../craft/lattice.js";
import { COLOUR, DIM } from "../craft/displayed.js";
import { inkOn, mixed, packed, rgb } from "./colour.js";

export const SMALLEST_SIGN = 11, FADED = 0.6;
const LIGHT = [[0, "rgb(255 255 255 / .26)"], [0.4, "rgb(255 255 255 / .03)"], [0.65, "rgb(0 0 0 / 0)"], [1, "rgb(0 0 0 / .17)"]];
export const halfOf = pitch => Math.max(1, Math.round(pitch * 0.47));

export class ChartPicture {
  /** Draws on a canvas; `signs` are the outlines of the palette's symbols on a square from −1 to 1. */
  constructor(canvas, ground) {
    this.canvas = canvas;
    this.pen = canvas.getContext("2d", { alpha: false });
    this.ground = ground;
  }

  palette(palette, signs) {
    const ground = rgb(this.ground), table = new Uint32Array(128);
    palette.forEach((entry, i) => {
      table[i] = packed(rgb(entry.colour));
      table[DIM + i] = packed(mixed(rgb(entry.colour), ground, FADED).map(Math.round));
    });
    Object.assign(this, { table, signs, inks: palette.map(entry => inkOn(entry.colour)), stamps: null });
  }

  /** Everything that is in sight. */
  draw({ around, hand }, beads, { left, top, pitch }, { signs, mark }) {
    Object.assign(this, { around, hand, beads, left, top, pitch, half: halfOf(pitch) });
    const { pen, canvas } = this, columns = rowsOf(around, beads.length);
    const a = Math.max(0, Math.floor(left / pitch)), b = Math.min(columns - 1, Math.floor((left + canvas.width - 1) / pitch));
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.fillStyle = this.ground;
    pen.fillRect(0, 0, canvas.width, canvas.height);
    if (b < a) return;
    this.#colours(a, b);
    this.#cover(a, b);
    this.#hideMissing(b, columns);
    for (let column = a; column <= b; column++) this.#details(column, signs, mark);
  }

  /** Only these beads anew, where they are in sight. */
  redraw(beads, places, { signs, mark }) {
    this.beads = beads;
    for (const k of places) {
      const { column, half } = cell(this.around, this.hand, k), x = column * this.pitch - this.left;
      if (x <= -this.pitch || x >= this.canvas.width) continue;
      this.#colours(column, column, half);
      const from = half * this.half, y = from - this.top, wide = this.pitch, high = 2 * this.half;
      this.pen.drawImage(this.#mask(), (column & 1) * wide, from, wide, high, x, y, wide, high);
      this.#detail(k, x, y, signs, mark);
    }
  }

  #colours(a, b, only = -1) {
    const { around, hand, beads, table, pitch, half, left, top, pen } = this, rows = halves(around), width = b - a + 1;
    if (!this.small || this.small.width < width || this.small.height !== rows) {
      this.small = new OffscreenCanvas(Math.max(256, 2 * width), rows);
      this.smallPen = this.small.getContext("2d");
    }
    const image = new ImageData(width, rows), pixels = new Uint32Array(image.data.buffer);
    for (let column = a; column <= b; column++) {
      const first = firstOfRow(around, column), length = rowLength(around, column), odd = column & 1;
      for (let i = 0; i < length && first + i < beads.length; i++) {
        const down = 2 * i + odd, at = (hand === "left" ? 2 * around - down : down) * width + column - a;
        pixels[at] = pixels[at + width] = table[beads[first + i]];
      }
    }
    this.smallPen.putImageData(image, 0, 0);
    pen.imageSmoothingEnabled = false;
    if (only < 0) pen.drawImage(this.small, 0, 0, width, rows, a * pitch - left, -top, width * pitch, rows * half);
    else pen.drawImage(this.small, 0, only, 1, 2, a * pitch - left, only * half - top, pitch, 2 * half);
  }

  #cover(a, b) {
    const mask = this.#mask(), x = a * this.pitch - this.left;
    this.pattern.setTransform(new DOMMatrix([1, 0, 0, 1, a & 1 ? x - this.pitch : x, -this.top]));
    this.pen.fillStyle = this.pattern;
    this.pen.fillRect(x, 0, (b - a + 1) * this.pitch, Math.min(this.canvas.height, mask.height - this.top));
  }

  /** The last column may be part filled. */
  #hideMissing(b, columns) {
    if (b !== columns - 1) return;
    const { around, hand, beads, pitch, half, left, top, pen } = this, { half: last } = cell(around, hand, beads.length - 1);
    const [from, to] = hand === "left" ? [0, last] : [last + 2, halves(around)];
    pen.fillStyle = this.ground;
    pen.fillRect(b * pitch - left, from * half - top, pitch, (to - from) * half);
  }

  #details(column, signs, mark) {
    const { around, hand, pitch, half, left, top, canvas } = this, first = firstOfRow(around, column);
    const drawn = signs && pitch >= SMALLEST_SIGN, end = Math.min(this.beads.length, first + rowLength(around, column));
    for (let k = drawn ? first : Math.ceil(first / around) * around; k < end; k += drawn ? 1 : around) {
      const y = cell(around, hand, k).half * half - top;
      if (y > -2 * half && y < canvas.height) this.#detail(k, column * pitch - left, y, signs, mark);
    }
  }

  /** The symbol of a bead, and the nick where a round starts. */
  #detail(k, x, y, signs, mark) {
    const { pen, pitch, half, around, beads } = this;
    if (signs && pitch >= SMALLEST_SIGN) {
      if (beads[k] >= DIM) pen.globalAlpha = 0.4;
      pen.drawImage(this.#stamp(beads[k] & COLOUR), x, y);
      pen.globalAlpha = 1;
    }
    if (k % around || pitch < 8) return;
    const deep = pitch * ((k / around) % 10 ? 0.2 : 0.34);
    pen.globalAlpha = beads[k] < DIM ? 1 : 0.4;
    pen.beginPath();
    pen.moveTo(x - 1, y + half * 0.55);
    pen.lineTo(x + deep, y + half);
    pen.lineTo(x - 1, y + half * 1.45);
    pen.closePath();
    pen.strokeStyle = this.ground;
    pen.lineWidth = 1.5;
    pen.stroke();
    pen.fillStyle = mark;
    pen.fill();
    pen.globalAlpha = 1;
  }

  #stamp(colour) {
    const { pitch, half } = this;
    if (this.stamps?.pitch !== pitch) this.stamps = { pitch };
    if (!this.stamps[colour]) {
      const stamp = new OffscreenCanvas(pitch, 2 * half), pen = stamp.getContext("2d"), size = Math.min(pitch, 2 * half) * 0.27;
      pen.setTransform(size, 0, 0, size, pitch / 2, half);
      pen.fillStyle = this.inks[colour];
      pen.fill(new Path2D(this.signs[colour]), "evenodd");
      this.stamps[colour] = stamp;
    }
    return this.stamps[colour];
  }

  /** Two columns: ground outside the bead, light and shade inside it. */
  #mask() {
    const key = `${this.around} ${this.pitch}`;
    if (this.key === key) return this.kept;
    const { around, pitch, half } = this, mask = new OffscreenCanvas(2 * pitch, halves(around) * half),
      pen = mask.getContext("2d");
    if (pitch >= 4) cutOut(pen, around, pitch, half, this.ground);
    this.key = key;
    this.kept = mask;
    this.pattern = this.pen.createPattern(mask, "repeat");
    return mask;
  }
}

/** The same small cover on every place of two columns; what lies beside them is ground. */
function cutOut(pen, around, pitch, half, ground) {
  const covers = pen.createPattern(beadCover(pitch, half, ground), "repeat");
  pen.fillStyle = ground;
  pen.fillRect(pitch, 0, pitch, pen.canvas.height);
  for (const column of [0, 1]) {
    const row = [column * pitch, column * half, pitch, 2 * rowLength(around, column) * half];
    pen.clearRect(...row);
    covers.setTransform(new DOMMatrix([1, 0, 0, 1, row[0], row[1]]));
    pen.fillStyle = covers;
    pen.fillRect(...row);
  }
}

/** Ground round the bead, light and shade within. */
function beadCover(pitch, half, ground) {
  const cover = new OffscreenCanvas(pitch, 2 * half), pen = cover.getContext("2d"),
    shade = pen.createLinearGradient(0, 0, 0, 2 * half);
  const gap = pitch >= 9 ? Math.max(1, Math.round(pitch * 0.06)) : 0.5;
  pen.fillStyle = ground;
  pen.fillRect(0, 0, pitch, 2 * half);
  pen.globalCompositeOperation = "destination-out";
  pen.beginPath();
  pen.roundRect(gap / 2, gap / 2, pitch - gap, 2 * half - gap, Math.min(pitch, 2 * half) * 0.36);
  pen.fill();
  pen.globalCompositeOperation = "destination-over";
  for (const [at, tint] of LIGHT) shade.addColorStop(at, tint);
  pen.fillStyle = shade;
  pen.fillRect(0, 0, pitch, 2 * half);
  return cover;
}
