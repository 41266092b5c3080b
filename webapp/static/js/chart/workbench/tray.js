// The tray of bead tubes: press one to work with it; it is filled by its share of the chart and says its count.

import { counts } from "../craft/pattern.js";
import { assigned } from "../craft/symbols.js";
import { counted } from "../craft/words.js";
import { inkOn } from "../pictures/colour.js";
import { afterAFrame } from "./canvas.js";

const LAYERS = 13, SVG = "http://www.w3.org/2000/svg";

export function tray(root, store) {
  const holder = root.querySelector("[data-tubes]"), blank = root.querySelector("template[data-tube]");

  const build = () => {
    const { pattern: { palette }, context } = store.state, symbols = assigned(palette, context.symbols);
    holder.replaceChildren(...palette.map((entry, i) => tube(entry, symbols[i], i)));
    lift();
    count();
  };
  const lift = () => [...holder.children].forEach((button, i) => {
    button.setAttribute("aria-pressed", String(i === store.state.colour));
    if (i === store.state.colour) bringIntoSight(holder, button);
  });
  const count = () => {
    const used = counts(store.state.pattern), all = store.state.pattern.beads.length;
    used.forEach((beads, i) => {
      const button = holder.children[i];
      button.querySelector("[data-count]").textContent = counted(beads, "bead");
      heap(button.querySelector("[data-heap]"), beads ? Math.max(1, Math.round(Math.sqrt(beads / all) * LAYERS)) : 0);
    });
  };
  const later = afterAFrame(count);

  function tube(entry, symbol, index) {
    const button = blank.content.firstElementChild.cloneNode(true), find = name => button.querySelector(`[data-${name}]`);
    find("code").textContent = entry.code;
    find("name").textContent = entry.name;
    find("heap").setAttribute("fill", entry.colour);
    find("body").setAttribute("fill", entry.colour);
    find("sign").setAttribute("fill", inkOn(entry.colour));
    find("sign").setAttribute("d", symbol);
    button.dataset.code = entry.code;
    button.addEventListener("click", () => store.set({ colour: index, tool: store.state.tool === "take" ? "place" : store.state.tool }));
    button.addEventListener("dblclick", () => root.querySelector("[data-bead=edit]").click());
    return button;
  }

  store.listen((state, before) => {
    if (state.pattern.palette !== before.pattern.palette) build();
    else if (state.pattern !== before.pattern) later();
    if (state.colour !== before.colour) lift();
  });
  build();
}

/** Moves the tray alone, never the page. */
function bringIntoSight(holder, button) {
  const left = button.offsetLeft - holder.offsetLeft, right = left + button.offsetWidth;
  if (left < holder.scrollLeft) holder.scrollLeft = left;
  else if (right > holder.scrollLeft + holder.clientWidth) holder.scrollLeft = right - holder.clientWidth;
}

/** Layers of four beads each, heaped from the bottom of the glass. */
function heap(group, layers) {
  while (group.childElementCount > layers * 4) group.lastChild.remove();
  for (let place = group.childElementCount; place < layers * 4; place++) {
    const bead = document.createElementNS(SVG, "rect"), layer = Math.floor(place / 4);
    const at = { x: (layer % 2 ? 4.4 : 2.8) + (place % 4) * 6.6, y: 74.2 - layer * 5.2, width: 6.2, height: 4.8, rx: 2.2 };
    for (const [name, value] of Object.entries(at)) bead.setAttribute(name, value);
    group.append(bead);
  }
}
