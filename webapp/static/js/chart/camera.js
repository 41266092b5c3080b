// What part of the lying chart is in sight: sums of panning and zooming, in device pixels. No page in here.

import { cell, firstOfRow, halves, rowsOf } from "./craft/lattice.js";
import { halfOf } from "./pictures/chart-picture.js";
import { ropeSize } from "./pictures/rope-tile.js";

export const SMALLEST = 3, LARGEST = 72;

/** A camera: { left, top, pitch } of what is seen, { width, room } of where. Room holds chart and rope, one over the other. */
export const START = { left: 0, top: 0, pitch: 20, width: 1, room: 1, ratio: 1, zoomed: false };

/** Heights of chart and rope in the room: their own where they fit, else the rope keeps a good quarter. */
export function heights({ around }, { pitch, room }) {
  const chart = halves(around) * halfOf(pitch), rope = ropeSize(around, pitch).height;
  if (chart + rope <= room) return { chart, rope };
  const lower = Math.max(1, Math.min(rope, Math.round(room * 0.28)));
  return { chart: Math.max(1, Math.min(chart, room - lower)), rope: lower };
}

/** The camera kept within the rope. */
export function within(pattern, total, camera) {
  const along = rowsOf(pattern.around, total) * camera.pitch - camera.width,
    across = halves(pattern.around) * halfOf(camera.pitch) - heights(pattern, camera).chart;
  const kept = (value, most) => Math.round(Math.max(0, Math.min(value, Math.max(0, most))));
  return { ...camera, left: kept(camera.left, along), top: kept(camera.top, across) };
}

/** Beads of a rope that goes on past the right edge, and ends with a whole column. */
export const beadsPastEdge = ({ around }, total, { width, pitch }) => firstOfRow(around, Math.max(rowsOf(around, total), Math.ceil(width / pitch) + 1));

/** The largest pitch at which chart and rope fit into the room. */
export function fitting(pattern, { room, ratio }) {
  const fits = pitch => halves(pattern.around) * halfOf(pitch) + ropeSize(pattern.around, pitch).height <= room;
  let pitch = Math.round(56 * ratio);
  while (pitch > SMALLEST * ratio && !fits(pitch)) pitch--;
  return pitch;
}

export const panned = (pattern, total, camera, dx, dy) => within(pattern, total, { ...camera, left: camera.left + dx, top: camera.top + dy });

/** Another pitch, with the lattice point under (x, y) of the chart kept where it is. */
export function zoomed(pattern, total, camera, pitch, x, y) {
  const kept = Math.round(Math.max(SMALLEST * camera.ratio, Math.min(pitch, LARGEST * camera.ratio))),
    grown = kept / camera.pitch;
  const rise = halfOf(kept) / halfOf(camera.pitch);
  return within(pattern, total, { ...camera, pitch: kept, left: (camera.left + x) * grown - x, top: (camera.top + y) * rise - y, zoomed: true });
}

/** Moved no further than needed to bring a bead into sight. */
export function showing(pattern, total, camera, k) {
  const { column, half } = cell(pattern.around, pattern.hand, k), { chart } = heights(pattern, camera),
    high = halfOf(camera.pitch);
  const inside = (start, size, from, length, room) => {
    if (start < from + room) return start - room;
    return start + size > from + length - room ? start + size - length + room : from;
  };
  return within(pattern, total, { ...camera, left: inside(column * camera.pitch, camera.pitch, camera.left, camera.width, camera.pitch),
                                  top: inside(half * high, 2 * high, camera.top, chart, high) });
}

/** With a bead in the middle. */
export function centred(pattern, total, camera, k) {
  const { column, half } = cell(pattern.around, pattern.hand, k);
  return within(pattern, total, { ...camera, left: (column + 0.5) * camera.pitch - camera.width / 2,
                                  top: (half + 1) * halfOf(camera.pitch) - heights(pattern, camera).chart / 2 });
}

/** A point of the chart, in pixels from its upper left corner, as columns and half beads. */
export const pointAt = (camera, x, y) => ({ x: (x + camera.left) / camera.pitch, half: (y + camera.top) / halfOf(camera.pitch) });
