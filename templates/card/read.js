"use strict";
// Reads the card from the page: what is shown with script is what stands there without.

/** The beads by code, in the order of the palette. */
function readBeads() {
  const entries = [...document.querySelectorAll("#beads li")];
  return new Map(entries.map((entry, index) => [entry.dataset.code, {
    index, code: entry.dataset.code, name: entry.dataset.name, colour: entry.dataset.colour, ink: entry.dataset.ink,
    sign: entry.querySelector("svg"), symbol: new Path2D(entry.querySelector("path").getAttribute("d")),
  }]));
}

/** The runs of a list's stretch, each [beads, code], without the sums between them. */
function readRuns(stretch) {
  const runs = [];
  for (const ten of stretch.children)
    for (const line of ten.textContent.split("\n")) {
      const entry = /^(\d+) ([A-Z]+)$/.exec(line.trim());
      if (entry) runs.push([Number(entry[1]), entry[2]]);
    }
  return runs;
}

const beadsOf = runs => runs.reduce((sum, [beads]) => sum + beads, 0);

/** What is strung at one tap: a run, or a group told as one. `label` says which of how many, `tenth` where to check. */
function* readItems(list) {
  const stretches = [...list.querySelectorAll("ol.tens")];
  const groups = stretches.some(stretch => Number(stretch.dataset.times) > 1);
  let head = groups ? "First, run" : "Run";
  for (const stretch of stretches) {
    const runs = readRuns(stretch), times = Number(stretch.dataset.times);
    const said = times > 1 ? Array(times).fill(runs) : runs.map(run => [run]);
    const name = times > 1 ? "Group" : head;
    const beads = times > 1 ? beadsOf(runs) : 0;
    for (const [at, some] of said.entries())
      yield { runs: some, beads: beads || some[0][0], label: `${name} ${at + 1} of ${said.length}`, tenth: (at + 1) % 10 === 0 };
    if (times > 1) head = "At the end, run";
  }
}

/** A list: its items, and the beads strung when so many of them are. */
function readList(list) {
  const items = [...readItems(list)], upto = new Int32Array(items.length + 1);
  items.forEach((item, at) => { upto[at + 1] = upto[at] + item.beads; });
  return { items, upto, beads: upto[items.length] };
}

/** The threads, first worked first, each with its list and the first bead of the rope that it holds. */
function readThreads() {
  const threads = [];
  for (const section of document.querySelectorAll("section.list")) {
    const list = readList(section);
    for (const number of section.dataset.threads.split(" ")) threads[Number(number) - 1] = { list };
  }
  let first = 0;
  for (const thread of threads) {
    thread.first = first;
    first += thread.list.beads;
  }
  return threads;
}

/** The worked rope as places in the palette, first worked first: the lists expanded, reversed and joined. */
function readRope(threads, beads) {
  const rope = new Uint8Array(threads.reduce((sum, thread) => sum + thread.list.beads, 0));
  for (const { first, list } of threads) {
    let end = first + list.beads;
    for (const item of list.items)
      for (const [many, code] of item.runs) {
        rope.fill(beads.get(code).index, end - many, end);
        end -= many;
      }
  }
  return rope;
}

function readCard() {
  const { key, around, hand } = document.documentElement.dataset, beads = readBeads(), threads = readThreads();
  const numbers = part => ({ name: part.name, first: +part.first, beads: +part.beads, chart: +part.chart, begin: +part.begin });
  const parts = [...document.querySelectorAll("#parts li")].map(part => numbers(part.dataset));
  return { key, around: Number(around), left: hand === "left", beads, entries: [...beads.values()], threads, parts, rope: readRope(threads, beads) };
}
