// The chart from the keyboard: the cursor goes along and across the lattice, tools and beads are chosen, used and undone.

import { showing } from "../camera.js";
import { step } from "../craft/lattice.js";
import { byCode } from "../edits/colours.js";
import { actionOf, KEYS, TOOL_KEYS } from "../keys.js";
import { beadsOf, partShown, redone, undone } from "../state.js";
import { flooded, lineBetween, painted, putDown, selected, taken } from "../use.js";
import { open } from "./dialogs.js";
import { choosePart } from "./parts.js";
import { patchAction } from "./patch-bar.js";
import { withinTurn } from "./rope-view.js";
import { pressed } from "./rounds-bar.js";
import { announce } from "./status.js";
import { zoom } from "./views.js";

const TYPING = 700, FAR = 10;

export function keyboard(root, store) {
  const holder = root.querySelector("[data-chart]");
  let typed = "", typedAt = 0, anchor = -1;
  list(document.querySelector("[data-keys]"));

  const total = () => beadsOf(store.state).length;
  const goTo = at => {
    const { pattern, camera } = store.state, cursor = Math.max(0, Math.min(total() - 1, at));
    store.set({ cursor, under: -1, camera: showing(pattern, total(), camera, cursor) });
  };
  /** Where a key leads from a bead. */
  const led = (key, from) => {
    const { pattern: { around, hand } } = store.state, down = hand === "left" ? "back" : "on",
      up = hand === "left" ? "on" : "back";
    const way = { ArrowDown: down, ArrowUp: up, ArrowRight: "forward", ArrowLeft: "backward", PageDown: "forward", PageUp: "backward" }[key];
    if (!way) return key === "Home" ? 0 : total() - 1;
    let at = from;
    for (let i = key.startsWith("Page") ? FAR : 1; i > 0; i--) at = step(around, at, way);
    return Math.min(at, total() - 1);
  };

  const ACTIONS = {
    move(key) {
      anchor = -1;
      const { floating, tool, from, cursor } = store.state;
      if (floating) return store.set({ floating: { ...floating, anchor: led(key, floating.anchor) } });
      goTo(led(key, cursor));
      if (tool === "line" && from >= 0) store.set({ under: store.state.cursor });
    },
    select(key) {
      if (anchor < 0) anchor = store.state.cursor;
      goTo(led(key, store.state.cursor));
      store.set({ tool: "patch", ...selected(store.state, anchor, store.state.cursor) });
    },
    use: key => { if (key === "Enter") use(); },
    code(key) {
      const now = performance.now();
      typed = (now - typedAt < TYPING ? typed : "") + key.toUpperCase();
      typedAt = now;
      const colour = byCode(store.state.pattern.palette, typed), entry = store.state.pattern.palette[colour];
      if (colour < 0) return;
      store.set({ colour });
      announce(root, `${entry.code} ${entry.name}`);
    },
    tool(key) {
      const name = TOOL_KEYS[(Number(key) + 9) % 10],
        button = root.querySelector(`[data-tool=${name}], .tool[data-opens=${name}]`);
      button.click();
      announce(root, button.textContent.trim());
    },
    undo: () => store.set(undone(store.state)),
    redo: () => store.set(redone(store.state)),
    copy: () => patchAction(root, store, "copy"),
    cut: () => patchAction(root, store, "cut"),
    paste: () => patchAction(root, store, "paste"),
    clear: () => patchAction(root, store, "clear"),
    drop() {
      const { floating, from } = store.state;
      anchor = -1;
      store.set(floating ? { floating: null } : from >= 0 ? { from: -1 } : { patch: null });
    },
    larger: () => zoom(store, "larger"),
    smaller: () => zoom(store, "smaller"),
    fit: () => zoom(store, "fit"),
    centre: () => zoom(store, "centre"),
    turn: key => store.set({ turn: withinTurn(store.state.turn + (key === "[" ? -10 : 10)) }),
    keys: () => open("keys", store),
  };

  function use() {
    const { state } = store, { tool, cursor, from } = state;
    if (state.floating) return store.set(putDown(state));
    if (tool !== "take" && partShown(state, cursor) !== state.pattern.at) return choosePart(root, store, partShown(state, cursor));
    if (tool === "line" && from < 0) return store.set({ from: cursor });
    const acts = {
      place: () => painted(state, "Place", [cursor]),
      line: () => ({ ...painted(state, "Line", lineBetween(state, from, cursor)), from: -1, under: -1 }),
      flood: () => painted(state, "Flood", flooded(state, cursor, root.querySelector("[name=flood]:checked").value === "all")),
      take: () => taken(state, cursor),
      patch: () => selected(state, cursor, cursor),
    };
    if (acts[tool]) store.set(acts[tool]()); else pressed(root, tool);
  }

  holder.addEventListener("keydown", event => {
    const action = actionOf(event);
    if (!action) return;
    event.preventDefault();
    if (event.key === " " && !event.repeat) {
      root.dataset.panning = "yes";
      delete root.dataset.panned;
      holder.classList.add("is-panning");
    }
    ACTIONS[action](event.key);
  });
  const released = event => {
    if (event.key !== " " || !root.dataset.panning) return;
    delete root.dataset.panning;
    holder.classList.remove("is-panning");
    if (!root.dataset.panned && event.target === holder) use();
  };
  holder.addEventListener("keyup", released);
  addEventListener("blur", () => { delete root.dataset.panning; holder.classList.remove("is-panning"); });

  root.addEventListener("keydown", event => {
    if (event.target === holder || event.target.closest("input, textarea, select")) return;
    const action = actionOf(event);
    if (["undo", "redo"].includes(action)) { ACTIONS[action](event.key); event.preventDefault(); }
  });
  holder.addEventListener("focus", () => {
    const { pattern, camera, cursor } = store.state, seen = showing(pattern, total(), camera, cursor);
    if (holder.matches(":focus-visible") && (seen.left !== camera.left || seen.top !== camera.top)) store.set({ cursor: inSight(store.state) });
  });

  /** A bead that is in sight, for a cursor that is not. */
  function inSight({ pattern: { around }, camera: { left, pitch } }) {
    return Math.min(total() - 1, Math.ceil(left / pitch / 2) * (2 * around + 1));
  }
}

function list(holder) {
  holder.replaceChildren(...KEYS.map(([, keys, words]) => {
    const row = document.createElement("div"), name = document.createElement("dt"),
      key = document.createElement("kbd"), does = document.createElement("dd");
    key.textContent = keys;
    name.append(key);
    does.textContent = words;
    row.append(name, does);
    return row;
  }));
}
