// The shaded rope under the chart, column for column. Dragging turns it; panning moves the picture and paints what came in.

import { heights } from "../camera.js";
import { changed } from "../craft/history.js";
import { rgb } from "../pictures/colour.js";
import { tables } from "../pictures/finishes.js";
import { paintRope } from "../pictures/rope-paint.js";
import { SHAPE, traceTile } from "../pictures/rope-tile.js";
import { displaysAnew, drawnBeads } from "../state.js";
import { fitCropped, GROUND, onceAFrame } from "./canvas.js";

const SETTLE = 200, FINE_PITCH = 40, MOST_REPAINTED = 120;

export function ropeView(root, store) {
  const canvas = root.querySelector("[data-rope]"), pen = canvas.getContext("2d");
  let drawn = null, blurred = null, tile, image, lut, sharpening = 0;

  const look = () => {
    const { pattern, camera, turn } = store.state;
    return { pattern, camera, turn, beads: drawnBeads(store.state) };
  };

  const draw = () => {
    const before = drawn, now = drawn = look(), { pattern, camera, turn } = now;
    const shaped = before && before.turn === turn && before.camera.pitch === camera.pitch && before.camera.room === camera.room &&
      before.camera.width === camera.width && before.pattern.around === pattern.around && before.pattern.hand === pattern.hand;
    if (before?.pattern.palette !== pattern.palette) lut = tables(pattern.palette, rgb(GROUND));
    if (!shaped) return reshape(now, before);
    if (blurred || before.pattern.palette !== pattern.palette || before.beads.length !== now.beads.length) return whole(now);
    const places = changed(before.beads, now.beads), moved = camera.left - before.camera.left;
    if (moved) move(now, moved);
    if (places.length > MOST_REPAINTED || (places.length && moved)) return paint(now, 0, image.width);
    for (const k of places) touch(now, k);
  };
  const later = onceAFrame(draw);

  function reshape(now, before) {
    const { pattern, camera, turn } = now, zooming = before && before.camera.pitch !== camera.pitch && before.pattern === pattern;
    const hurried = zooming || (before && before.turn !== turn);
    if (zooming) stretch(now, before);
    else {
      blurred = null;
      trace(now, hurried || camera.pitch > FINE_PITCH ? 1 : 2);
      sized(now);
      paint(now, 0, image.width);
    }
    clearTimeout(sharpening);
    if (hurried) sharpening = setTimeout(() => whole(drawn = look()), SETTLE);
  }

  /** All of it anew, as fine as time allows. */
  function whole(now) {
    blurred = null;
    trace(now, now.camera.pitch > FINE_PITCH ? 1 : 2);
    sized(now);
    paint(now, 0, image.width);
  }

  /** While one zooms, the picture from before is stretched; it is painted when zooming rests. */
  function stretch(now, before) {
    if (!blurred) {
      blurred = { picture: new OffscreenCanvas(image.width, image.height), camera: before.camera };
      blurred.picture.getContext("2d").drawImage(canvas, 0, 0);
    }
    const rope = fitted(now), { picture, camera } = blurred, grown = now.camera.pitch / camera.pitch;
    pen.clearRect(0, 0, canvas.width, canvas.height);
    pen.imageSmoothingEnabled = false;
    const [wide, high] = [picture.width * grown, picture.height * grown];
    pen.drawImage(picture, camera.left * grown - now.camera.left, (rope - high) / 2, wide, high);
  }

  /** Gives the height of the rope. */
  function fitted({ pattern, camera }) {
    const { rope } = heights(pattern, camera);
    fitCropped(canvas, camera.width, rope);
    return rope;
  }

  /** A canvas and an image of the rope's size. */
  function sized(now) {
    const rope = fitted(now), { width } = now.camera;
    if (!image || image.width !== width || image.height !== rope) image = pen.createImageData(width, rope);
  }

  function trace({ pattern: { around, hand }, camera: { pitch }, turn }, sharp) {
    tile = traceTile(around, hand, pitch, (turn * Math.PI) / 180, sharp);
  }

  function paint({ beads, camera }, x0, x1) {
    paintRope(image, tile, beads, lut, { left: camera.left, top: Math.max(0, Math.floor((tile.height - image.height) / 2)), x0, x1 });
    pen.putImageData(image, 0, 0, x0, 0, x1 - x0, image.height);
  }

  /** The picture moves; only what came in is painted. */
  function move(now, by) {
    const { width, height, data } = image, pixels = new Uint32Array(data.buffer);
    if (Math.abs(by) >= width) return paint(now, 0, width);
    for (let row = 0; row < height; row++) {
      const start = row * width;
      if (by > 0) pixels.copyWithin(start, start + by, start + width);
      else pixels.copyWithin(start - by, start, start + width + by);
    }
    pen.putImageData(image, 0, 0);
    if (by > 0) paint(now, width - by, width); else paint(now, 0, -by);
  }

  /** Only the pixels that a bead can touch. */
  function touch(now, k) {
    const { pattern: { around }, camera: { left, pitch } } = now, reach = (pitch * SHAPE.across) / 2 + 2,
      x = (pitch * k) / (around + 0.5) - left;
    const x0 = Math.max(0, Math.floor(x - reach)), x1 = Math.min(image.width, Math.ceil(x + reach));
    if (x1 > x0) paint(now, x0, x1);
  }

  let held = null;
  canvas.addEventListener("pointerdown", event => {
    canvas.setPointerCapture(event.pointerId);
    held = { y: event.clientY, turn: store.state.turn };
  });
  canvas.addEventListener("pointermove", event => {
    if (held) store.set({ turn: withinTurn(held.turn + (event.clientY - held.y)) });
  });
  for (const name of ["pointerup", "pointercancel"]) canvas.addEventListener(name, () => { held = null; });

  store.listen((state, before) => {
    if (displaysAnew(state, before) || state.camera !== before.camera || state.turn !== before.turn) later();
  });
  draw();
}

/** Degrees within a whole turn. */
export const withinTurn = degrees => ((Math.round(degrees) % 360) + 360) % 360;
