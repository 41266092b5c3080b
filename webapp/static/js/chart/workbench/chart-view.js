// The chart on the page: colours, symbols, round marks. Only what changed is drawn anew.

import { heights } from "../camera.js";
import { changed } from "../craft/history.js";
import { assigned } from "../craft/symbols.js";
import { ChartPicture } from "../pictures/chart-picture.js";
import { displaysAnew, drawnBeads } from "../state.js";
import { fitCropped, GROUND, MARK, onceAFrame } from "./canvas.js";

const MOST_REDRAWN = 600;

export function chartView(root, store) {
  const holder = root.querySelector("[data-chart]"), canvas = holder.querySelector("[data-beads]"),
    picture = new ChartPicture(canvas, GROUND);
  let drawn = null;

  const draw = () => {
    const { pattern, camera, signs, context } = store.state, beads = drawnBeads(store.state), before = drawn;
    drawn = { pattern, camera, signs, beads };
    if (before?.pattern.palette !== pattern.palette) picture.palette(pattern.palette, assigned(pattern.palette, context.symbols));
    const still = before && before.camera === camera && before.signs === signs && before.beads.length === beads.length &&
      ["palette", "around", "hand"].every(name => before.pattern[name] === pattern[name]);
    const places = still ? changed(before.beads, beads) : null;
    if (places && places.length <= MOST_REDRAWN) return picture.redraw(beads, places, { signs, mark: MARK });
    const { chart } = heights(pattern, camera);
    fitCropped(canvas, camera.width, chart);
    holder.style.height = canvas.style.height;
    picture.draw(pattern, beads, camera, { signs, mark: MARK });
  };
  const later = onceAFrame(draw);

  store.listen((state, before) => {
    if (displaysAnew(state, before) || state.signs !== before.signs || state.camera !== before.camera) later();
  });
  draw();
}
