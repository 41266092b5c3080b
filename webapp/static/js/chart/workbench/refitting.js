// Refit: another number around, in one of four ways, seen before it is done.

import { chartOf, MOST_AROUND, LEAST_AROUND } from "../craft/pattern.js";
import { drift, repeat } from "../craft/repeats.js";
import { rowsOf } from "../craft/lattice.js";
import { counted, driftInWords } from "../craft/words.js";
import { refit, usualWay, WAYS } from "../edits/refit.js";
import { ChartPicture, halfOf } from "../pictures/chart-picture.js";
import { START } from "../camera.js";
import { fit, GROUND, MARK, onceAFrame, ratio } from "./canvas.js";
import { closed } from "./dialogs.js";

const HEIGHT = 144;

export function refitting(root, store) {
  const dialog = document.getElementById("refit"), form = dialog.querySelector("form"),
    { around, way } = form.elements, fill = form.querySelector("[data-entries]");
  const canvas = dialog.querySelector("[data-preview]"), words = dialog.querySelector("[data-preview-words]"),
    picture = new ChartPicture(canvas, GROUND);

  const made = () => {
    const wanted = Number(around.value), fits = Number.isInteger(wanted) && wanted >= LEAST_AROUND && wanted <= MOST_AROUND;
    return fits ? refit(store.state.pattern, wanted, way.value, fill.selectedIndex) : null;
  };
  const preview = onceAFrame(() => {
    const pattern = made();
    form.querySelector("[value=ok]").disabled = !pattern;
    if (!pattern) { words.textContent = "A rope has 3 to 60 beads around and at most 100,000 beads."; return; }
    const d = ratio(), pitch = Math.max(2, Math.floor((HEIGHT * d) / (pattern.around + 1) / 0.94)),
      columns = rowsOf(pattern.around, pattern.beads.length);
    fit(canvas, Math.max(1, Math.min(columns * pitch, (dialog.clientWidth - 80) * d)), (2 * pattern.around + 2) * halfOf(pitch));
    picture.palette(pattern.palette, []);
    picture.draw(pattern, pattern.beads, { ...START, pitch }, { signs: false, mark: MARK });
    const chart = chartOf(pattern);
    const drifts = driftInWords(drift(pattern.around, chart.length));
    words.textContent = `${counted(chart.length, "bead")}, repeat ${counted(repeat(chart), "bead")}, drift ${drifts}.`;
  });

  dialog.addEventListener("opening", () => {
    const { pattern } = store.state;
    around.value = pattern.around;
    way.value = usualWay(pattern);
    dialog.querySelector("[data-now]").textContent = `3 to 60. Now ${pattern.around}.`;
    preview();
  });
  dialog.addEventListener("input", preview);
  closed("refit", { ok: () => {
    const pattern = made();
    if (pattern) store.edit(`Refit to ${pattern.around}: ${WAYS[way.value].toLowerCase()}`, pattern);
  } });
}
