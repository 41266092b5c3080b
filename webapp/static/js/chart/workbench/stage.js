// The room for chart and rope: measured whenever the window changes, not on paper; beads fill its height until one zooms.

import { fitting, within } from "../camera.js";
import { beadsOf } from "../state.js";
import { ratio } from "./canvas.js";

const RULERS = 40 + 30 + 8;      // rounds above, centimetres below, the gap between chart and rope

export function stage(root, store) {
  const holder = root.querySelector("[data-stage]");

  const measure = () => {
    if (matchMedia("print").matches) return;
    const d = ratio(), { state } = store, { pattern } = state;
    const width = Math.max(1, Math.round(holder.clientWidth * d)), room = Math.max(60, Math.round((holder.clientHeight - RULERS) * d));
    const camera = { ...state.camera, ratio: d, width, room };
    if (!camera.zoomed) camera.pitch = fitting(pattern, camera);
    store.set({ camera: within(pattern, beadsOf(state).length, camera) });
  };
  measure();
  new ResizeObserver(measure).observe(holder);
  store.listen((state, before) => {
    const { pattern: { around }, camera } = state;
    if (around !== before.pattern.around || (before.camera.zoomed && !camera.zoomed)) measure();
  });
}
