// A press on a bead of the cell: its letter becomes the next one of the palette, and the picture follows. Another group,
// repeat or number around has other beads to draw: then the page comes anew.

document.addEventListener("click", event => {
  const bead = event.target.closest("[data-cell] g.free"), form = document.querySelector("[data-cell-form]");
  if (!bead) return;
  const place = Number(/free-(\d+)/.exec(bead.getAttribute("class"))[1]), field = form.querySelector("[name=drawn]");
  const letters = [...field.value], codes = form.querySelectorAll("[name=colour]").length;
  letters[place] = String.fromCharCode(65 + ((letters[place].charCodeAt(0) - 64) % codes));
  field.value = letters.join("");
  field.dispatchEvent(new Event("input", { bubbles: true }));
});

document.addEventListener("change", event => {
  const form = event.target.closest("[data-cell-form]");
  if (form && ["around", "group", "repeat"].includes(event.target.name)) form.requestSubmit(form.querySelector("[data-look]"));
});
