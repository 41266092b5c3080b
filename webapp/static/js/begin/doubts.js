// Beads in doubt, one after another: large, with its place in the picture marked. A bead that is pressed leads to the next;
// the arrow keys choose without going on, for they pass over beads that are not meant.

const KEYS = { PageUp: -1, PageDown: 1 };
let pressed = false;              // whether the pointer chooses, or the keys
let shown = null;                 // the bead that is looked at, by its number, so that it stays when the list comes anew

document.addEventListener("htmx:afterSettle", begin);
document.addEventListener("pointerdown", () => { pressed = true; });
document.addEventListener("change", (event) => {
  if (pressed && event.target.closest("[data-doubts] li")) step(1);
});
document.addEventListener("keydown", (event) => {
  pressed = false;
  if (!(event.key in KEYS) || !event.target.closest("[data-doubts]")) return;
  event.preventDefault();
  step(KEYS[event.key]);
});
document.addEventListener("click", (event) => {
  if (event.target.closest("[data-back]")) step(-1);
  if (event.target.closest("[data-next]")) step(1);
});
begin();

function begin() {
  const section = document.querySelector("[data-doubts]");
  if (!section) return mark(null);
  section.querySelector("[data-steps]").hidden = false;
  show(section, Math.max(0, doubts(section).findIndex((doubt) => doubt.dataset.bead === shown)));
}

function step(by) {
  const section = document.querySelector("[data-doubts]");
  const all = doubts(section);
  const next = all.findIndex((doubt) => !doubt.hidden) + by;
  if (next < 0 || next >= all.length) return;
  show(section, next);
  all[next].querySelector("input:checked, input").focus();
}

function show(section, place) {
  const all = doubts(section);
  for (const [number, doubt] of all.entries()) doubt.hidden = number !== place;
  shown = all[place].dataset.bead;
  section.classList.add("doubts-stepped");
  section.querySelector("[data-back]").disabled = place === 0;
  section.querySelector("[data-next]").disabled = place === all.length - 1;
  const left = all.length - 1 - place;
  section.querySelector("[data-left]").textContent = `${place + 1} of ${all.length}, ${left ? `${left} left` : "the last"}`;
  mark(all[place]);
}

/** Puts the ring round the bead in the picture. */
function mark(doubt) {
  const ring = document.querySelector("[data-now]");
  ring.hidden = !doubt;
  if (!doubt) return;
  ring.style.left = `${doubt.dataset.x}%`;
  ring.style.top = `${doubt.dataset.y}%`;
}

function doubts(section) {
  return [...section.querySelectorAll(".doubts > li")];
}
