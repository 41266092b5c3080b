// The whole rope in a strip; the window in it shows and moves what the chart shows.

import { panned } from "../camera.js";
import { rowsOf } from "../craft/lattice.js";
import { DIM } from "../craft/displayed.js";
import { mixed, packed, rgb } from "../pictures/colour.js";
import { overviewImage } from "../pictures/overview-picture.js";
import { beadsOf, displaysAnew } from "../state.js";
import { afterAFrame, GROUND, ink, onceAFrame, whenInksChange } from "./canvas.js";

export function overview(root, store) {
  const strip = root.querySelector(".strip"), canvas = strip.querySelector("canvas"),
    slider = strip.querySelector("input"), pen = canvas.getContext("2d");
  let drawn = {};

  const frame = () => {
    const { pattern, camera } = store.state, { ratio: d, left, width, pitch } = camera;
    const wide = Math.max(1, Math.round(canvas.clientWidth * d)), high = Math.max(1, Math.round(canvas.clientHeight * d));
    if (canvas.width !== wide || canvas.height !== high) Object.assign(canvas, { width: wide, height: high });
    if (drawn.image?.width !== wide) picture(pattern, beadsOf(store.state), wide, Math.max(1, high - Math.round(8 * d)));
    const all = rowsOf(pattern.around, beadsOf(store.state).length) * pitch, a = (left / all) * wide,
      b = Math.min(1, width / all) * wide;
    pen.clearRect(0, 0, wide, high);
    pen.drawImage(drawn.image, 0, 4 * d);
    pen.fillStyle = ink("--paper");
    pen.globalAlpha = 0.6;
    pen.fillRect(0, 4 * d, a, high - 8 * d);
    pen.fillRect(a + b, 4 * d, wide - a - b, high - 8 * d);
    pen.globalAlpha = 1;
    pen.strokeStyle = ink("--accent");
    pen.lineWidth = 2.5 * d;
    pen.beginPath();
    pen.roundRect(a + 1.5 * d, 1.5 * d, Math.max(8 * d, b - 3 * d), high - 3 * d, 5 * d);
    pen.stroke();
    slider.max = Math.max(0, Math.round((all - width) / pitch));
    slider.value = Math.round(left / pitch);
    slider.setAttribute("aria-valuetext", `row ${Number(slider.value) + 1}`);
  };
  const draw = () => {
    if (drawn.image) picture(store.state.pattern, beadsOf(store.state), drawn.image.width, drawn.image.height);
    frame();
  };
  const later = afterAFrame(draw), follows = onceAFrame(frame);

  /** The small picture is made anew only when beads, palette or sizes are others. */
  function picture(pattern, beads, width, height) {
    if (drawn.pattern === pattern && drawn.beads === beads && drawn.image?.width === width && drawn.image?.height === height) return;
    const table = new Uint32Array(128), image = new OffscreenCanvas(width, height);
    pattern.palette.forEach(({ colour }, i) => {
      table[i] = packed(rgb(colour));
      table[DIM + i] = packed(mixed(rgb(colour), rgb(GROUND), 0.5).map(Math.round));
    });
    image.getContext("2d").putImageData(overviewImage(pattern, beads, table, width, height), 0, 0);
    drawn = { pattern, beads, image };
  }

  const go = left => {
    const { pattern, camera } = store.state;
    store.set({ camera: panned(pattern, beadsOf(store.state).length, camera, left - camera.left, 0) });
  };
  const follow = event => {
    const { pattern: { around }, camera: { pitch, width } } = store.state;
    go((event.offsetX / canvas.clientWidth) * rowsOf(around, beadsOf(store.state).length) * pitch - width / 2);
  };
  let held = false;
  canvas.addEventListener("pointerdown", event => { held = true; canvas.setPointerCapture(event.pointerId); follow(event); });
  canvas.addEventListener("pointermove", event => { if (held) follow(event); });
  for (const name of ["pointerup", "pointercancel"]) canvas.addEventListener(name, () => { held = false; });
  slider.addEventListener("input", () => go(Number(slider.value) * store.state.camera.pitch));

  store.listen((state, before) => {
    if (state.camera !== before.camera) follows();
    if (displaysAnew(state, before)) later();
  });
  whenInksChange(later);
  draw();
}
