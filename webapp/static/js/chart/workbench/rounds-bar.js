// Add rounds, Remove rounds and Slide: how many, of what, and where the cursor is.

import { added, removed, shiftInWords, slid } from "../use.js";
import { number } from "./dialogs.js";

const FIRST = { add: "[data-add=before]", remove: "button[data-remove]", slide: "[data-slide='1']" };

export function roundsBar(root, store) {
  const many = name => number(root.querySelector(`[data-${name}-many]`)),
    chosen = name => root.querySelector(`[name=${name}]:checked`).value;
  const act = {
    add: where => store.set(added(store.state, many("add"), chosen("add-unit"), { after: where === "after", copies: chosen("add-fill") === "copy" })),
    remove: () => store.set(removed(store.state, many("remove"), chosen("remove-unit"))),
    slide: way => store.set(slid(store.state, way * number(root.querySelector("[data-slide-by]")))),
  };
  for (const button of root.querySelectorAll("[data-add]")) button.addEventListener("click", () => act.add(button.dataset.add));
  root.querySelector("button[data-remove]").addEventListener("click", () => act.remove());
  for (const button of root.querySelectorAll("[data-slide]")) button.addEventListener("click", () => act.slide(Number(button.dataset.slide)));

  const describe = () => {
    for (const name of ["add", "remove"]) {
      const words = shiftInWords(store.state.pattern.around, many(name), chosen(`${name}-unit`));
      root.querySelector(`[data-for=${name}] [data-shifts]`).textContent = words;
    }
  };
  for (const name of ["add", "remove"]) root.querySelector(`[data-for=${name}]`).addEventListener("input", describe);
  store.listen((state, before) => { if (state.pattern.around !== before.pattern.around) describe(); });
  describe();
}

/** What Enter does on the chart with one of these tools: its first button. */
export const pressed = (root, tool) => root.querySelector(FIRST[tool]).click();
