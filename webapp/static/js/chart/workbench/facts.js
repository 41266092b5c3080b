// The facts of the drawing, following it at once.

import { facts as factsOf } from "../craft/facts.js";
import { beadsOf, displaysAnew } from "../state.js";
import { afterAFrame } from "./canvas.js";

export function facts(root, store) {
  const line = document.querySelector("[data-facts]");

  const draw = () => {
    const { pattern, context } = store.state;
    line.replaceChildren(...factsOf(pattern, beadsOf(store.state).length, context.workingMm).map(([name, value]) => {
      const fact = document.createElement("span"), strong = document.createElement("b");
      strong.textContent = value;
      fact.append(`${name} `, strong);
      if (name === "Length") fact.title = context.source;
      return fact;
    }));
  };
  const later = afterAFrame(draw);
  store.listen((state, before) => { if (displaysAnew(state, before)) later(); });
  draw();
}
