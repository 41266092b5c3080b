// The patch: copy, cut, paste, move, mirror, half turn, repeat along the rope, clear.

import { copied } from "../edits/patch.js";
import { beadsOf } from "../state.js";
import { cleared, copying, cut, floated, mirrored, repeatedAlong } from "../use.js";
import { number } from "./dialogs.js";
import { announce } from "./status.js";

export function patchBar(root, store) {
  const buttons = [...root.querySelectorAll("[data-patch]")], step = root.querySelector("[data-repeat-step]");

  for (const button of buttons) button.addEventListener("click", () => {
    if (button.getAttribute("aria-disabled") === "true") return announce(root, wanting(button.dataset.patch));
    patchAction(root, store, button.dataset.patch);
  });
  const dim = () => {
    const { patch, copy } = store.state;
    for (const button of buttons) button.setAttribute("aria-disabled", String(button.dataset.patch === "paste" ? !copy : !patch));
  };
  const least = () => {
    step.max = beadsOf(store.state).length;
    if (Number(step.value) < 2) step.value = 2 * store.state.pattern.around + 1;
  };
  store.listen((state, before) => {
    if (state.patch !== before.patch || state.copy !== before.copy) dim();
    if (state.tool !== before.tool) least();
  });
  dim();
}

/** Does what the button or the key of that name says; without a patch, or a copy, nothing. */
export function patchAction(root, store, name) {
  const { state } = store, { patch, copy, cursor } = state;
  if (name === "paste" ? !copy : !patch) return;
  const step = number(root.querySelector("[data-repeat-step]"));
  const actions = {
    copy: () => ({ ...copying(state), from: -1 }), cut: () => cut(state), clear: () => cleared(state),
    paste: () => ({ ...floated(copy, cursor), tool: "patch" }),
    move: () => { const own = copied(patch, beadsOf(state)); return floated(own, own.anchor, patch); },
    along: () => mirrored(state, "along"), across: () => mirrored(state, "across"), half: () => mirrored(state, "half"),
    repeat: () => repeatedAlong(state, step),
  };
  store.set(actions[name]());
  if (SAID[name]) announce(root, SAID[name]);
  root.querySelector("[data-chart]").focus({ preventScroll: true });
}

const SAID = {
  copy: "The patch is copied.",
  paste: "The copy hangs over the chart: arrow keys move it, Enter puts it down.",
  move: "Arrow keys move the patch, Enter puts it down.",
};
const wanting = name => (name === "paste"
  ? "Nothing was copied yet."
  : "Select a patch first: drag over the chart, or hold Shift and press arrow keys.");
