// Stringing with a kept place: runs are ticked in order and one is shown large; the place stays on this device.

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
  const runs = [...section.querySelectorAll("[data-run]")].map(label => ({
    code: label.querySelector("span").textContent, beads: Number(label.querySelector("b").textContent),
    box: label.querySelector("input"), label,
  }));
  const before = totals(runs.map(run => run.beads)), key = section.dataset.place;
  let at = within(localStorage.getItem(key), runs.length);
  const list = { done: () => at === runs.length, move: by => go(at + by) };

  runs.forEach((run, i) => run.box.addEventListener("change", () => go(run.box.checked ? i + 1 : i)));
  find("forward").addEventListener("click", () => go(list.done() ? 0 : at + 1));
  find("back").addEventListener("click", () => go(at - 1));
  section.querySelector("form").addEventListener("reset", event => { event.preventDefault(); go(0); });
  section.addEventListener("focusin", () => { current = list; });
  find("now").hidden = false;
  show();
  return list;

  function go(place) {
    at = within(place, runs.length);
    localStorage.setItem(key, at);
    show();
    find("heard").textContent = list.done() ? "This list is strung" : `${runs[at].beads} ${runs[at].code}, ${names.get(runs[at].code)}`;
  }

  function show() {
    runs.forEach((run, i) => {
      run.box.checked = i < at;
      run.label.classList.toggle("is-next", i === at);
    });
    showRun(runs[at]);
    find("where").textContent = list.done() ? `All ${runs.length} runs` : `Run ${at + 1} of ${runs.length}`;
    find("strung").textContent = before[at].toLocaleString("en");
    find("bar").value = before[at];
    find("then").textContent = runs.slice(at + 1, at + 6).map(run => `${run.beads} ${run.code}`).join(", ").replace(/^./, "Then $&");
    find("forward").textContent = list.done() ? "Begin again" : "Strung, next run";
    find("back").disabled = at === 0;
  }

  function showRun(run) {
    find("count").textContent = run ? run.beads : "";
    find("code").textContent = run ? run.code : "";
    find("name").textContent = run ? names.get(run.code) : "This list is strung";
    find("bead").replaceChildren(...(run ? [run.label.querySelector(".bead").cloneNode(true)] : []));
  }
}
