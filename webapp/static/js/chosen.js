// Chooses all patterns of the page at once, or none again; a list that comes anew keeps what is chosen in it.

let chosen = new Set();
document.addEventListener("htmx:beforeSwap", () => {
  chosen = new Set([...document.querySelectorAll("[name=chosen]:checked")].map((box) => box.value));
});
document.addEventListener("htmx:afterSwap", () => {
  for (const box of document.querySelectorAll("[name=chosen]")) if (chosen.has(box.value)) box.checked = true;
  show();
});
document.addEventListener("click", (event) => {
  const button = event.target.closest("[data-all]");
  if (!button) return;
  const boxes = [...button.form.elements.chosen.length ? button.form.elements.chosen : [button.form.elements.chosen]];
  const choose = boxes.some((box) => !box.checked);
  for (const box of boxes) box.checked = choose;
});
show();

function show() {
  for (const button of document.querySelectorAll("[data-all]")) button.hidden = false;
}
