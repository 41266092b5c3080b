// What lies over the chart: cursor, the bead under the pointer, patch, floating copy, line to be, and where parts meet.

import { heights } from "../camera.js";
import { cell, halves } from "../craft/lattice.js";
import { laid, places } from "../edits/patch.js";
import { halfOf } from "../pictures/chart-picture.js";
import { beadsOf, drawnPieces } from "../state.js";
import { lineBetween } from "../use.js";
import { ACCENT, fitCropped, GROUND, MARK, onceAFrame } from "./canvas.js";

const WATCHED = ["pattern", "passes", "whole", "camera", "cursor", "under", "patch", "floating", "from", "tool", "colour"];
const LEAST_APART = 12;      // CSS pixels from seam to seam; nearer ones would hide the beads

export function overlay(root, store) {
  const holder = root.querySelector("[data-chart]"), canvas = holder.querySelector("[data-over]"), pen = canvas.getContext("2d");

  const draw = () => {
    const { state } = store, { pattern, camera, under, cursor, patch, floating, from, colour } = state;
    fitCropped(canvas, camera.width, heights(pattern, camera).chart);
    pen.clearRect(0, 0, canvas.width, canvas.height);
    drawSeams(state);
    if (patch) outline(places(patch), "rgb(23 99 92 / .3)");
    if (floating) drawFloating(state);
    if (state.tool === "line" && from >= 0 && under >= 0) fillBeads(lineBetween(state, from, under), () => pattern.palette[colour].colour);
    if (cursor >= 0 && (holder.matches(":focus") || ["add", "remove"].includes(state.tool))) frame(cursor, 2.5);
    if (under >= 0 && under !== cursor) frame(under, 1.5);
  };
  const later = onceAFrame(draw);

  store.listen((state, before) => { if (WATCHED.some(name => state[name] !== before[name])) later(); });
  for (const event of ["focus", "blur"]) holder.addEventListener(event, later);
  draw();

  function box(k) {
    const { pattern: { around, hand }, camera: { left, top, pitch } } = store.state, high = halfOf(pitch),
      { column, half } = cell(around, hand, k);
    return [column * pitch - left, half * high - top, pitch, 2 * high];
  }

  function rounded(k, inset = 0) {
    const [x, y, wide, high] = box(k);
    pen.roundRect(x + inset, y + inset, wide - 2 * inset, high - 2 * inset, Math.min(wide, high) * 0.36);
  }

  function frame(k, width) {
    const d = store.state.camera.ratio;
    for (const [colour, wide] of [[GROUND, width * 2.2 * d], [MARK, width * d]]) {
      pen.beginPath();
      rounded(k);
      pen.strokeStyle = colour;
      pen.lineWidth = wide;
      pen.stroke();
    }
  }

  function outline(beads, wash) {
    pen.beginPath();
    for (const k of beads) pen.rect(...box(k));
    pen.fillStyle = wash;
    pen.fill();
    edge(new Set(beads));
  }

  /** A line round a set of beads: along every side at which the neighbour is not of the set. */
  function edge(set) {
    const { hand } = store.state.pattern, next = hand === "left" ? -1 : 1;
    pen.beginPath();
    for (const k of set) {
      const [x, y, wide, high] = box(k);
      if (!set.has(k - next)) { pen.moveTo(x, y); pen.lineTo(x + wide, y); }
      if (!set.has(k + next)) { pen.moveTo(x, y + high); pen.lineTo(x + wide, y + high); }
      for (const [at, near, far] of sides(k, x, wide)) {
        if (!set.has(near)) { pen.moveTo(at, y); pen.lineTo(at, y + high / 2); }
        if (!set.has(far)) { pen.moveTo(at, y + high / 2); pen.lineTo(at, y + high); }
      }
    }
    const d = store.state.camera.ratio;
    for (const [colour, wide] of [[GROUND, 4 * d], [ACCENT, 2 * d]]) {
      pen.strokeStyle = colour;
      pen.lineWidth = wide;
      pen.stroke();
    }
  }

  function sides(k, x, wide) {
    const { around, hand } = store.state.pattern, [upper, lower] = hand === "left" ? [around + 1, around] : [around, around + 1];
    return [[x, k - lower, k - upper], [x + wide, k + upper, k + lower]];
  }

  function fillBeads(beads, colourOf) {
    const { camera: { width, pitch } } = store.state;
    for (const k of beads) {
      const [x] = box(k);
      if (x < -pitch || x > width) continue;
      pen.fillStyle = GROUND;
      pen.fillRect(...box(k));
      pen.beginPath();
      rounded(k, Math.max(0.5, pitch * 0.03));
      pen.fillStyle = colourOf(k);
      pen.fill();
    }
  }

  function drawFloating({ pattern, floating: { copy, anchor, from }, colour }) {
    const pairs = laid(copy, anchor, beadsOf(store.state).length), colours = new Map(pairs);
    if (from) fillBeads(places(from), () => pattern.palette[colour].colour);
    fillBeads(colours.keys(), k => pattern.palette[colours.get(k)].colour);
    edge(new Set(colours.keys()));
  }

  /** Where one part meets the next, and where one pass meets the next. */
  function drawSeams({ camera: { ratio: d, left, width, pitch }, pattern: { around } }) {
    const row = drawnPieces(store.state), reach = 2 * around + 1, seen = place => Math.round(((left + place * width) / pitch) * (around + 0.5));
    const [first, last] = [seen(0) - reach, seen(1) + reach];
    for (const { part, at, beads, length, first: cut } of row) {
      if (at > 0 && row.some(piece => piece.at + piece.beads === at && piece.part !== part)) seam(at, [], 3 * d);
      const passed = at > 0 && row.some(piece => piece.at + piece.beads === at && piece.part === part) ? at : at + length - cut;
      if ((length / (around + 0.5)) * pitch < LEAST_APART * d) {
        if (passed === at) seam(at, [2 * d, 4 * d], 1.5 * d);
        continue;
      }
      const skip = Math.max(0, Math.ceil((first - passed) / length));
      for (let k = passed + skip * length; k < Math.min(at + beads, last); k += length) seam(k, [2 * d, 4 * d], 1.5 * d);
    }
  }

  function seam(k, dashes, wide) {
    const { pattern, camera } = store.state, [x, y, width, high] = box(k),
      bottom = halves(pattern.around) * halfOf(camera.pitch) - camera.top;
    const [first, across, last] = pattern.hand === "left" ? [bottom, y + high, -camera.top] : [-camera.top, y, bottom];
    pen.beginPath();
    pen.moveTo(x + width, first);
    pen.lineTo(x + width, across);
    pen.lineTo(x, across);
    pen.lineTo(x, last);
    for (const [colour, thick] of [[GROUND, wide * 2.2], [ACCENT, wide]]) {
      pen.setLineDash(dashes);
      pen.strokeStyle = colour;
      pen.lineWidth = thick;
      pen.stroke();
    }
    pen.setLineDash([]);
  }
}
