// The lattice, its neighbours and its sense, against the fixtures that the engine reads too.

import { angle, beadAt, cell, neighbours, place, rowsOf, step } from "/static/js/chart/craft/lattice.js";
import { equal, near, shared, test } from "./says.js";

const HELIX = "helix-sense";

test("beads stand in the rows and at the angles of the fixture", async () => {
  const around = await shared(HELIX, "around");
  for (const { bead, row, x, angle: turned } of await shared(HELIX, "places")) {
    equal(place(around, bead), { row, x });
    near(angle(around, bead), turned, 1e-8);
  }
});

test("the lying chart runs the way that the fixture says for either hand", async () => {
  const around = await shared(HELIX, "around"), { chart_lying: views } = await shared(HELIX, "views");
  for (const [hand, lines] of Object.entries(views)) for (const { toward, beads } of lines) {
    const [one, other] = beads.slice(0, 2).map(bead => cell(around, hand, bead));
    const direction = other.column > one.column ? "right" : other.half > one.half ? "down" : "up";
    equal(direction, toward);
  }
});

test("beads touch the neighbours of the fixture", async () => {
  for (const { around, bead, total, beads } of await shared("lattice", "neighbours")) equal(neighbours(around, bead, total), beads);
});

test("beads begin the rows of the fixture", async () => {
  for (const { around, beads, rows } of await shared("lattice", "rows")) equal(rowsOf(around, beads), rows);
});

test("the bead under the middle of a cell is the bead of that cell", () => {
  for (const hand of ["right", "left"]) for (let k = 0; k < 100; k++) {
    const { column, half } = cell(7, hand, k);
    equal([0.1, 1, 1.9].map(down => beadAt(7, hand, column + 0.5, half + down)), [k, k, k]);
  }
});

test("there is no bead beside the lattice", () => {
  equal([beadAt(5, "right", -1, 2), beadAt(5, "right", 1.5, 0.5), beadAt(5, "right", 0.5, 12.5), beadAt(5, "left", 1.5, 11.5)], [-1, -1, -1, -1]);
});

test("a way straight along the rope comes back on itself", () => {
  for (let k = 0; k < 33; k++) equal(step(5, step(5, k, "forward"), "backward"), place(5, k).x === 5 ? k - 1 : k);
  equal(step(5, 3, "backward"), 3);
});
