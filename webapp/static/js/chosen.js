// Chooses all patterns of the page at once, or none again.

document.addEventListener("htmx:afterSwap", show);
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
