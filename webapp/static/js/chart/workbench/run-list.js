// The runs as text, for reading and for copying.

import { codesOf } from "../craft/pattern.js";
import { write } from "../craft/notation.js";

export function runList(root, store) {
  const dialog = document.getElementById("runs"), text = dialog.querySelector("[data-run-text]");
  dialog.addEventListener("opening", () => {
    const { pattern } = store.state, { beads, from, to } = pattern, codes = codesOf(pattern);
    const all = [["Start", beads.subarray(0, from)], ["Chart", beads.subarray(from, to)], ["End", beads.subarray(to)]];
    const parts = all.filter(([, part]) => part.length);
    text.value = parts.map(([name, part]) => (parts.length > 1 ? `${name}: ` : "") + write(part, codes)).join("\n\n");
  });
}
