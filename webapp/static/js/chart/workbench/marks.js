// Start, chart and end: where the marks between them stand, and how long the chart is.

import { drawnPlace } from "../craft/displayed.js";
import { count, counted } from "../craft/words.js";
import { setLength, setMarks } from "../edits/rounds.js";
import { closed } from "./dialogs.js";

export function marks(root, store) {
  const dialog = document.getElementById("marks"),
    [from, to, length] = ["from", "to", "length"].map(name => dialog.querySelector(`[name=${name}]`));

  dialog.addEventListener("opening", () => {
    const { pattern } = store.state;
    const parts = `start ${count(pattern.from)}, chart ${count(pattern.to - pattern.from)}, end ${count(pattern.beads.length - pattern.to)}`;
    dialog.querySelector("[data-drawn]").textContent = `${counted(pattern.beads.length, "bead")} drawn: ${parts}.`;
    for (const field of [from, to]) field.max = pattern.beads.length;
    [from.value, to.value, length.value] = [pattern.from + 1, pattern.to, pattern.to - pattern.from];
  });
  for (const field of [from, to]) field.addEventListener("input", () => { length.value = Math.max(1, Number(to.value) - Number(from.value) + 1); });
  for (const button of dialog.querySelectorAll("[data-mark]")) button.addEventListener("click", () => {
    const { pattern, passes, cursor } = store.state, field = button.dataset.mark === "from" ? from : to;
    field.value = drawnPlace(pattern, passes, cursor) + 1;
    field.dispatchEvent(new Event("input"));
  });
  closed("marks", { ok: () => {
    const { pattern, colour } = store.state, marked = setMarks(pattern, Number(from.value) - 1, Number(to.value));
    store.edit("Start, chart and end", setLength(marked, Math.max(1, Number(length.value)), colour));
  } });
}
