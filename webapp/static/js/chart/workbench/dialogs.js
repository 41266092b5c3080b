// A button with data-opens="id" opens that dialog, which hears "opening" first; selects of beads are filled then.

export function dialogs(root, store) {
  for (const button of document.querySelectorAll("[data-opens]")) button.addEventListener("click", () => open(button.dataset.opens, store));
}

export function open(id, store) {
  const dialog = document.getElementById(id);
  if (dialog.open) return;
  dialog.returnValue = "";
  dialog.querySelectorAll("[data-entries]").forEach((select, place) => fill(select, store.state, place));
  dialog.dispatchEvent(new Event("opening"));
  dialog.showModal();
}

/** What a dialog does when it was closed with "ok", or with another value. */
export function closed(id, actions) {
  const dialog = document.getElementById(id);
  dialog.addEventListener("close", () => actions[dialog.returnValue]?.(dialog));
  return dialog;
}

function fill(select, { pattern, colour }, place) {
  select.replaceChildren(...pattern.palette.map((entry, i) => new Option(`${entry.code} ${entry.name}`, i)));
  select.selectedIndex = place === 0 ? colour : (colour + 1) % pattern.palette.length;
}

/** A whole number of a field, kept within its bounds. */
export function number(input) {
  const least = Number(input.min || 0), most = Number(input.max || Infinity);
  return Math.min(most, Math.max(least, Math.round(Number(input.value)) || least));
}
