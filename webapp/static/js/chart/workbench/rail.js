// The rail of tools, what each of them asks, undo and redo, and how far a stroke reaches.

import { redone, undone } from "../state.js";
import { number } from "./dialogs.js";

export function rail(root, store) {
  const tools = [...root.querySelectorAll("[data-tool]")], asked = [...root.querySelectorAll("[data-for]")],
    steps = [...root.querySelectorAll("[data-step]")];
  const reach = [...root.querySelectorAll("[name=reach]")], every = root.querySelector("[data-every]");

  const mark = () => {
    const { tool } = store.state;
    for (const button of tools) button.setAttribute("aria-pressed", String(button.dataset.tool === tool));
    for (const part of asked) part.hidden = !part.dataset.for.split(" ").includes(tool);
  };
  const dim = () => {
    const { done, undone: left } = store.state.history;
    for (const button of steps) button.setAttribute("aria-disabled", String(!(button.dataset.step === "undo" ? done : left).length));
  };
  const reaches = () => {
    const { reach: chosen, every: beads, pattern } = store.state;
    for (const radio of reach) radio.checked = radio.value === chosen;
    every.max = pattern.to - pattern.from;
    if (document.activeElement !== every) every.value = beads;
  };

  for (const button of tools) button.addEventListener("click", () => store.set({ tool: button.dataset.tool, from: -1, floating: null }));
  for (const button of steps) {
    const go = button.dataset.step === "undo" ? undone : redone;
    button.addEventListener("click", () => store.set(go(store.state)));
  }
  for (const radio of reach) radio.addEventListener("change", () => store.set({ reach: radio.value }));
  every.addEventListener("change", () => store.set({ every: number(every), reach: "every" }));

  store.listen((state, before) => {
    if (state.tool !== before.tool) mark();
    if (state.history !== before.history) dim();
    if (state.reach !== before.reach || state.every !== before.every || state.pattern.parts !== before.pattern.parts || state.pattern.at !== before.pattern.at) reaches();
  });
  mark();
  dim();
  reaches();
}
