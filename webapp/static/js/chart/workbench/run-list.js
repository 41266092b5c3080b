// The runs as text, for reading and for copying.

import { spans, timesInWords } from "../craft/parts.js";
import { codesOf } from "../craft/pattern.js";
import { write } from "../craft/notation.js";

export function runList(root, store) {
  const dialog = document.getElementById("runs"), text = dialog.querySelector("[data-run-text]");
  dialog.addEventListener("opening", () => {
    const { pattern } = store.state, codes = codesOf(pattern), parts = spans(pattern);
    const named = ({ name, times }) => (parts.length > 1 ? `${name}${times === 1 ? "" : `, ${timesInWords(times)}`}: ` : "");
    text.value = parts.map(part => named(part) + write(pattern.beads.subarray(part.from, part.to), codes)).join("\n\n");
  });
}
