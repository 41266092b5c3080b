// The palette's entries: added, edited, removed; two exchanged, or merged into one.

import { addEntry, changeEntry, exchange, freshEntry, merge, wrongEntry } from "../edits/colours.js";
import { counts } from "../craft/pattern.js";
import { count } from "../craft/words.js";
import { closed, open } from "./dialogs.js";
import { lookAlikes } from "./look-alikes.js";

const LOOKS = ["name", "colour", "finish", "kind", "maker_code"];      // changed by hand, an entry no longer is the bead of the cabinet
const FIELDS = ["code", "name", "colour", "finish", "kind", "maker_code"];

export function palette(root, store) {
  beadDialog(root, store);
  pairDialog("exchange", store, (one, other, uses) => `${count(uses[0])} of ${one.code} and ${count(uses[1])} of ${other.code}.`,
    (pattern, a, b) => [`Exchange ${pattern.palette[a].code} and ${pattern.palette[b].code}`, exchange(pattern, a, b)]);
  pairDialog("merge", store, (one, other, uses) => `${count(uses[0])} beads of ${one.code} become ${other.code}.`,
    (pattern, a, b) => [`Merge ${pattern.palette[a].code} into ${pattern.palette[b].code}`, merge(pattern, a, b)]);
}

/** A dialog with two beads: says what it touches, and does it when they are two different ones. */
function pairDialog(id, store, words, edit) {
  const dialog = document.getElementById(id), [one, other] = dialog.querySelectorAll("select"),
    touches = dialog.querySelector("[data-touches]"), done = dialog.querySelector("[value=ok]");
  const say = () => {
    const { pattern } = store.state, [a, b] = [one.selectedIndex, other.selectedIndex], uses = counts(pattern);
    done.disabled = a === b;
    touches.textContent = a === b ? "Choose two different beads." : words(pattern.palette[a], pattern.palette[b], [uses[a], uses[b]]);
  };
  dialog.addEventListener("change", say);
  dialog.addEventListener("opening", say);
  closed(id, { ok: () => {
    const [a, b] = [one.selectedIndex, other.selectedIndex];
    if (a !== b) store.edit(...edit(store.state.pattern, a, b));
  } });
}

function beadDialog(root, store) {
  const dialog = document.getElementById("bead"), form = dialog.querySelector("form"),
    wrong = dialog.querySelector("[data-wrong]"), gone = dialog.querySelector("[data-remove-bead]");
  let index = 0, entry = null;
  const look = lookAlikes(root, form.elements.colour, dialog.querySelector("[data-alike]"), () => store.state.pattern.palette.filter((_, i) => i !== index));

  const show = (at, fresh) => {
    [index, entry] = [at, fresh];
    const used = counts(store.state.pattern)[at] ?? 0, { palette } = store.state.pattern;
    for (const field of FIELDS) setField(form.elements[field], entry[field]);
    wrong.textContent = "";
    gone.hidden = at >= palette.length || palette.length === 1;
    gone.disabled = used > 0;
    gone.title = used ? "It stands in the chart; merge it into another bead instead." : "";
    dialog.querySelector("h2").textContent = at < palette.length ? `Bead ${entry.code}` : "A new bead";
    open("bead", store);
    look();
  };
  root.querySelector("[data-bead=add]").addEventListener("click", () => show(store.state.pattern.palette.length, freshEntry(store.state.pattern)));
  root.querySelector("[data-bead=edit]").addEventListener("click", () => show(store.state.colour, store.state.pattern.palette[store.state.colour]));
  gone.addEventListener("click", () => {
    const { pattern } = store.state;
    dialog.close("");
    store.edit(`Remove bead ${pattern.palette[index].code}`, merge(pattern, index, index ? 0 : 1));
  });
  form.addEventListener("submit", event => {
    if (event.submitter?.value !== "ok") return;
    const typed = typedEntry(form, entry);
    wrong.textContent = wrongEntry(store.state.pattern.palette, index, typed);
    if (wrong.textContent) event.preventDefault();
  });
  closed("bead", { ok: () => {
    const { pattern } = store.state, typed = typedEntry(form, entry);
    const untouched = JSON.stringify(typed) === JSON.stringify(entry);
    if (index < pattern.palette.length) store.edit(`Change bead ${typed.code}`, untouched ? pattern : changeEntry(pattern, index, typed));
    else {
      store.edit(`Add bead ${typed.code}`, addEntry(pattern, typed));
      store.set({ colour: store.state.pattern.palette.length - 1 });
    }
  } });
}

function typedEntry(form, entry) {
  const typed = Object.fromEntries(FIELDS.map(field => [field, form.elements[field].value.trim()]));
  const same = LOOKS.every(field => typed[field] === entry[field]);
  return { ...entry, ...typed, code: typed.code.toUpperCase(), bead: same ? entry.bead : "" };
}

// a kind of the maker's own that is no longer kept stays what it is
function setField(field, value) {
  if (field.options && ![...field.options].some(option => option.value === value)) field.add(new Option(value, value));
  field.value = value;
}
