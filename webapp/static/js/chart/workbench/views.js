// How one looks at the drawing: symbols, passes, zoom, turning and spinning the rope, and the rope as a picture.

import { centred, within, zoomed } from "../camera.js";
import { mostPasses } from "../craft/displayed.js";
import { rgb } from "../pictures/colour.js";
import { tables } from "../pictures/finishes.js";
import { paintRope } from "../pictures/rope-paint.js";
import { traceTile } from "../pictures/rope-tile.js";
import { beadsOf } from "../state.js";
import { GROUND } from "./canvas.js";
import { number } from "./dialogs.js";
import { withinTurn } from "./rope-view.js";
import { save } from "./save-picture.js";

const PER_SECOND = 24, WIDEST = 12_000;
const still = matchMedia("(prefers-reduced-motion: reduce)");

export function views(root, store) {
  const signs = root.querySelector("[data-signs]"), passes = root.querySelector("[data-passes]"),
    turn = root.querySelector("[data-turn]"), spin = root.querySelector("[data-spin]");

  signs.addEventListener("change", () => store.set({ signs: signs.checked }));
  passes.addEventListener("change", () => {
    passes.max = mostPasses(store.state.pattern);
    passes.value = number(passes);
    showPasses(store, Number(passes.value));
  });
  turn.addEventListener("input", () => store.set({ turn: Number(turn.value) }));
  for (const button of root.querySelectorAll("[data-zoom]")) button.addEventListener("click", () => zoom(store, button.dataset.zoom));
  root.querySelector("[data-save-rope]").addEventListener("click", () => save(ropePicture(store.state), `${store.state.pattern.words.title} rope`));
  spin.addEventListener("click", () => {
    if (still.matches) return store.set({ turn: withinTurn(store.state.turn + 30) });
    const on = spin.getAttribute("aria-pressed") !== "true";
    spin.setAttribute("aria-pressed", String(on));
    if (on) requestAnimationFrame(at => spinning(at, store.state.turn));
  });

  function spinning(last, angle) {
    requestAnimationFrame(now => {
      if (spin.getAttribute("aria-pressed") !== "true") return;
      const next = angle + ((now - last) / 1000) * PER_SECOND;
      if (Math.round(next) !== Math.round(angle)) store.set({ turn: withinTurn(next) });
      spinning(now, next);
    });
  }

  store.listen((state, before) => {
    if (state.turn !== before.turn) turn.value = state.turn;
    if (state.passes !== before.passes) passes.value = state.passes;
    if (state.signs !== before.signs) signs.checked = state.signs;
  });
}

/** Another number of passes in a row. */
export function showPasses(store, passes) {
  const { pattern, cursor, camera } = store.state, total = beadsOf({ pattern, passes }).length;
  store.set({ passes, under: -1, from: -1, patch: null, floating: null, cursor: Math.min(cursor, total - 1), camera: within(pattern, total, camera) });
}

/** Larger or smaller about the middle or a point of the chart; "fit" fills the height. */
export function zoom(store, way, x = store.state.camera.width / 2, y = 0) {
  const { pattern, camera } = store.state, total = beadsOf(store.state).length;
  if (way === "fit") return store.set({ camera: { ...camera, zoomed: false } });
  if (way === "centre") return store.set({ camera: centred(pattern, total, camera, store.state.cursor) });
  const factor = typeof way === "number" ? way : way === "larger" ? 1.25 : 0.8, pitch = camera.pitch * factor;
  store.set({ camera: zoomed(pattern, total, camera, factor > 1 ? Math.max(camera.pitch + 1, pitch) : Math.min(camera.pitch - 1, pitch), x, y) });
}

/** The whole rope on a clear ground, as large as it looks now, or as a picture may be. */
function ropePicture(state) {
  const { pattern, camera, turn } = state, beads = beadsOf(state), rows = beads.length / (pattern.around + 0.5);
  const pitch = Math.max(2, Math.min(Math.max(camera.pitch, 24), Math.floor(WIDEST / (rows + 2))));
  const tile = traceTile(pattern.around, pattern.hand, pitch, (turn * Math.PI) / 180, 2),
    canvas = document.createElement("canvas");
  canvas.width = Math.ceil(rows * pitch) + 2 * pitch;
  canvas.height = tile.height;
  const pen = canvas.getContext("2d"), image = pen.createImageData(canvas.width, canvas.height);
  paintRope(image, tile, beads, tables(pattern.palette, rgb(GROUND)), { left: -pitch });
  pen.putImageData(image, 0, 0);
  return canvas;
}
