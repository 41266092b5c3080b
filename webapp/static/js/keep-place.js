// Stringing with a kept place: runs are ticked in order and one is shown large; the place stays on this device, or that of
// a piece in the library.

import { placeInLibrary } from "./library-place.js";
import { totals, within } from "./place.js";

const names = new Map([...document.querySelectorAll("[data-legend] [data-code]")].map(item => [item.dataset.code, item.dataset.name]));
const lists = [...document.querySelectorAll("[data-place]")].map(keepPlace);
let current = lists.find(list => !list.done()) ?? lists[0];

document.addEventListener("keydown", event => {
  if (event.altKey || event.ctrlKey || event.metaKey || event.target.closest("input:not([type=checkbox]), select, textarea")) return;
  const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
  if (!by || !current) return;
  event.preventDefault();
  current.move(by);
});

function keepPlace(section) {
  const find = name => section.querySelector(`[data-${name}]`);
  const runs = [...section.querySelectorAll(".runs label")].map(label => step(label, section));
  const before = totals(runs.map(run => run.beads));
  const place = section.dataset.save ? placeInLibrary(section.dataset, find("kept")) : placeOnDevice(section.dataset.place);
  const groups = runs.filter(run => run.number).length;
  const earlier = Number(section.dataset.earlier ?? 0), all = Number(section.dataset.of ?? runs.length - groups); // of a list in parts
  let at = within(place.kept, runs.length);
  const list = { done: () => at === runs.length, move: by => go(at + by) };

  runs.forEach((run, i) => run.box.addEventListener("change", () => go(run.box.checked ? i + 1 : i)));
  find("forward").addEventListener("click", () => go(list.done() ? 0 : at + 1));
  find("back").addEventListener("click", () => go(at - 1));
  section.querySelector("form").addEventListener("reset", event => { event.preventDefault(); go(0); });
  section.addEventListener("focusin", () => { current = list; });
  find("now").hidden = false;
  show();
  return list;

  function go(to) {
    at = within(to, runs.length);
    place.keep(at);
    show();
    find("heard").textContent = list.done() ? "This list is strung" : heard(runs[at]);
  }

  function show() {
    runs.forEach((run, i) => {
      run.box.checked = i < at;
      run.label.classList.toggle("is-next", i === at);
    });
    showRun(runs[at]);
    find("where").textContent = list.done() ? section.dataset.of ? "This part is strung" : "All is strung" : where(runs[at]);
    find("strung").textContent = before[at].toLocaleString("en");
    find("bar").value = before[at];
    find("then").textContent = runs.slice(at + 1, at + (groups ? 2 : 6)).map(run => run.text).join(", ").replace(/^./, "Then $&");
    find("forward").textContent = list.done() ? "Begin again" : runs[at].number ? "Strung, next group" : "Strung, next run";
    find("back").disabled = at === 0;
  }

  function where(run) {
    return run.number ? `Group ${run.number} of ${groups}` : `Run ${earlier + at + 1 - run.passed} of ${all}`;
  }

  function showRun(run) {
    const one = run && !run.number;
    find("count").textContent = one ? run.beads : "";
    find("code").textContent = one ? run.code : run ? run.text : "";
    find("name").textContent = one ? names.get(run.code) : run ? "The whole group" : "This list is strung";
    find("bead").replaceChildren(...(run ? run.pictures().map(bead => bead.cloneNode(true)) : []));
  }
}

function placeOnDevice(key) {
  return { kept: localStorage.getItem(key), keep: at => localStorage.setItem(key, at) };
}

// What is strung at once: a run, or one of the groups that a list repeats.
function step(label, section) {
  const text = label.dataset.runs ?? written(label), number = Number(label.dataset.number ?? 0);
  const parts = text.split(", ").map(part => part.split(" "));
  const earlier = [...section.querySelectorAll("[data-number]")];
  return {
    text, number, label, box: label.querySelector("input"), code: parts[0][1],
    beads: parts.reduce((sum, [count]) => sum + Number(count), 0),
    passed: number ? 0 : earlier.filter(other => other.compareDocumentPosition(label) & Node.DOCUMENT_POSITION_FOLLOWING).length,
    pictures: () => number ? [...section.querySelectorAll(".group-run .bead")] : [label.querySelector(".bead")],
  };
}

// A run as its line says it: "5 A".
function written(label) {
  return `${label.querySelector("b").textContent} ${label.querySelector("span").textContent}`;
}

function heard(run) {
  return run.number ? run.text : `${run.text}, ${names.get(run.code)}`;
}
