// The strip of parts: choose one by its button, and in its dialog say what it is called, how often it is worked, where it
// begins and ends, and where it stands among the others. With one part there is no strip, and the dialog alone.

import { showing } from "../camera.js";
import { drawnPlace } from "../craft/displayed.js";
import { chosen, FILL, LONGEST_NAME, spans, timesInWords, wrongWith } from "../craft/parts.js";
import { count, counted } from "../craft/words.js";
import { addPart, copyPart, describePart, movePart, removePart, setBorders } from "../edits/parts.js";
import { setLength } from "../edits/rounds.js";
import { beadsOf, chosenPart, piecesOf } from "../state.js";
import { closed, number, open } from "./dialogs.js";
import { announce } from "./status.js";

export function parts(root, store) {
  const strip = root.querySelector("[data-parts]"), list = strip.querySelector("[data-part-list]");

  const build = () => {
    const { pattern } = store.state, focused = [...list.children].indexOf(document.activeElement);
    strip.hidden = pattern.parts.length === 1;
    list.replaceChildren(...pattern.parts.map((part, i) => entry(part, i === pattern.at, i)));
    if (focused >= 0) list.children[Math.min(focused, list.children.length - 1)].focus();
  };

  function entry({ name, times, length }, pressed, place) {
    const button = document.createElement("button"), strong = document.createElement("b"), small = document.createElement("small");
    Object.assign(button, { type: "button", className: "part" });
    button.setAttribute("aria-pressed", String(pressed));
    strong.textContent = name;
    small.textContent = `${timesInWords(times)} · ${counted(length, "bead")}`;
    button.append(strong, small);
    button.addEventListener("click", () => choosePart(root, store, place));
    button.addEventListener("dblclick", () => open("part", store));
    return button;
  }

  store.listen((state, before) => {
    if (state.pattern.parts !== before.pattern.parts || state.pattern.at !== before.pattern.at) build();
  });
  build();
  partDialog(root, store);
}

/** Chooses a part, brings its beginning into sight and says which it is. */
export function choosePart(root, store, place) {
  store.set(chosenPart(store.state, place));
  const { state } = store, { pattern, camera } = state, cursor = piecesOf(state).find(({ part }) => part === place).at;
  store.set({ cursor, camera: showing(pattern, beadsOf(state).length, camera, cursor) });
  announce(root, `Part ${place + 1} of ${pattern.parts.length}, ${chosen(pattern).name}`);
}

function partDialog(root, store) {
  const dialog = document.getElementById("part"), form = dialog.querySelector("form"), { works } = form.elements,
    [name, times, from, to, length] = ["name", "times", "from", "to", "length"].map(field => form.querySelector(`[name=${field}]`)), wrong = dialog.querySelector("[data-wrong]");

  dialog.addEventListener("opening", () => {
    const { pattern } = store.state, part = chosen(pattern), all = spans(pattern);
    dialog.querySelector("[data-drawn]").textContent = all.length === 1 ? `${counted(part.length, "bead")} drawn.` :
      `Part ${pattern.at + 1} of ${all.length}. ${counted(pattern.beads.length, "bead")} drawn: ${all.map(one => `${one.name} ${count(one.length)}`).join(", ")}.`;
    for (const field of [from, to]) field.max = pattern.beads.length;
    wrong.textContent = "";
    name.value = part.name;
    works.value = part.times === FILL ? FILL : "times";
    times.value = part.times === FILL ? 1 : part.times;
    [from.value, to.value, length.value] = [pattern.from + 1, pattern.to, part.length];
  });
  times.addEventListener("input", () => { works.value = "times"; });
  for (const field of [from, to]) field.addEventListener("input", () => { length.value = Math.max(1, Number(to.value) - Number(from.value) + 1); });
  for (const button of dialog.querySelectorAll("[data-border]")) button.addEventListener("click", () => {
    const field = button.dataset.border === "from" ? from : to;
    field.value = drawnPlace(piecesOf(store.state), store.state.cursor) + 1;
    field.dispatchEvent(new Event("input"));
  });

  /** The pattern as the fields say; what is wrong with them stands in the dialog, which then stays open. */
  const said = () => {
    const { pattern, colour } = store.state, called = name.value.trim(), often = works.value === FILL ? FILL : number(times);
    const part = { ...chosen(pattern), name: called, times: often };
    wrong.textContent = called && called.length <= LONGEST_NAME ? wrongWith(pattern.parts.with(pattern.at, part)) : `A part has a name of at most ${LONGEST_NAME} letters.`;
    if (wrong.textContent) return null;
    const described = describePart(pattern, { name: called, times: often }), bordered = setBorders(described, Number(from.value) - 1, Number(to.value));
    return setLength(bordered, Math.max(1, Number(length.value)), colour);
  };
  form.addEventListener("submit", event => { if (event.submitter?.value === "ok" && !said()) event.preventDefault(); });
  closed("part", { ok: () => {
    const made = said();
    if (made) store.edit(`Part ${chosen(made).name}`, made);
  } });

  const ACTS = {
    add: pattern => [addPart(pattern, store.state.colour), "Add a part", "The rope has no room for another part."],
    copy: pattern => [copyPart(pattern), `Copy ${chosen(pattern).name}`, "The rope has no room for another part."],
    earlier: pattern => [movePart(pattern, -1), `${chosen(pattern).name} earlier`, "There it cannot stand: it is the first, or two parts that fill would meet."],
    later: pattern => [movePart(pattern, 1), `${chosen(pattern).name} later`, "There it cannot stand: it is the last, or two parts that fill would meet."],
    remove: pattern => [removePart(pattern), `Remove ${chosen(pattern).name}`, "It cannot go: it is the only part, or two parts that fill would meet."],
  };
  for (const button of document.querySelectorAll("[data-part-act]")) button.addEventListener("click", () => {
    const { pattern } = store.state, [made, step, refused] = ACTS[button.dataset.partAct](pattern);
    if (made === pattern) {
      wrong.textContent = refused;
      return announce(root, refused);
    }
    dialog.close();
    store.edit(step, made);
    choosePart(root, store, made.at);
  });
}
