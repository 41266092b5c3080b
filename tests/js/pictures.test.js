// Pictures without a page: the sense of rope and ring, finishes, the colour map, the strip.

import { ChartPicture } from "/static/js/chart/pictures/chart-picture.js";
import { tables } from "/static/js/chart/pictures/finishes.js";
import { overviewImage } from "/static/js/chart/pictures/overview-picture.js";
import { Pace } from "/static/js/chart/pictures/pace.js";
import { paintRope } from "/static/js/chart/pictures/rope-paint.js";
import { lookAt, ringPlace, wholeTurns } from "/static/js/chart/pictures/ring-place.js";
import { ropeSize, traceTile } from "/static/js/chart/pictures/rope-tile.js";
import { equal, near, shared, test } from "./says.js";
import { pattern } from "./patterns.js";

const PITCH = 24, GROUND = "#ffffff", dot = (a, b) => a.reduce((sum, part, i) => sum + part * b[i], 0);
const cross = ([a, b, c], [d, e, f]) => [b * f - c * e, c * d - a * f, a * e - b * d];

test("the ring winds the way that the fixture says for either hand", async () => {
  const senses = await shared("helix-sense", "out_cross_next_along_axis");
  for (const [hand, sense] of Object.entries(senses)) for (const k of [0, 5, 40]) {
    const [one, next] = [ringPlace(6, hand, 130, k), ringPlace(6, hand, 130, k + 1)];
    equal(Math.sign(dot(cross(one.out, next.out), one.along)), sense);
  }
});

test("a ring closes on itself: the bead after the last is the first", () => {
  for (const total of [84, 91, 900]) {
    const [first, after] = [ringPlace(6, "right", total, 0), ringPlace(6, "right", total, total)];
    first.out.forEach((part, i) => near(part, after.out[i], 1e-6));
    equal(wholeTurns(6, total), Math.round(total / 6.5));
  }
});

test("the ring is seen from above, its near side low in the picture", () => {
  const { view, eye } = lookAt(10, 900, 600, 0, 0.6, 1), seen = p => [0, 1, 2].map(i => view[i] * p[0] + view[4 + i] * p[1] + view[8 + i] * p[2] + view[12 + i]);
  equal([eye[2] > 0, seen([0, 0, 1])[1] > seen([0, 0, 0])[1]], [true, true]);
  const near_ = seen([0, -5, 0]), far = seen([0, 5, 0]);
  equal([near_[2] > far[2], near_[1] < far[1]], [true, true]);
});

/** The middle of every pixel column and row at which a bead is seen in the tile. */
function middleOf(tile, bead) {
  let x = 0, y = 0, n = 0;
  for (let q = 0; q < tile.idA.length; q++) if (tile.wA[q] > 128 && tile.idA[q] === bead) { x += q % tile.width; y += Math.floor(q / tile.width); n++; }
  return { x: x / n, y: y / n, n };
}

test("a picture that moves is drawn coarser when frame after frame is slow, and finer again when they are quick", () => {
  const pace = new Pace(), after = gaps => { for (const gap of gaps) pace.frame(gap); return pace.coarse; };
  equal(after([60, 16, 60, 60, 16]), 1);
  equal(after([60, 60, 60]), 2);
  equal(after(new Array(20).fill(60)), 3);
  equal(after([5000, 5000, 5000]), 3);
  equal(after(new Array(180).fill(16)), 1);
});

test("the rope runs the way that the fixture says for either hand", async () => {
  const around = await shared("helix-sense", "around"), { rope_lying: views } = await shared("helix-sense", "views");
  for (const [hand, lines] of Object.entries(views)) {
    const tile = traceTile(around, hand, PITCH, hand === "left" ? Math.PI : Math.PI, 1), [one, other] = [3, 4].map(bead => middleOf(tile, bead));
    equal(other.y > one.y ? "down" : "up", lines.find(({ beads }) => beads.includes(3) && beads.includes(4)).toward);
    const [before, after] = [3, 10].map(bead => middleOf(tile, bead));
    equal([after.x > before.x, lines.at(-1).toward], [true, "right"]);
  }
});

/** The rope of one bead colour as an image. */
function painted(finish, colour = "#336699") {
  const tile = traceTile(6, "right", PITCH, 0.4, 2), image = new ImageData(4 * PITCH, tile.height), beads = new Uint8Array(60);
  paintRope(image, tile, beads, tables([{ colour, finish }], [255, 255, 255]), { left: 40 });
  return image;
}

test("the six finishes look different from one another", () => {
  const finishes = ["opaque", "transparent", "matte", "metallic", "pearl", "lined"], images = finishes.map(finish => painted(finish).data);
  for (let a = 0; a < images.length; a++) for (let b = a + 1; b < images.length; b++) {
    const apart = images[a].reduce((sum, part, i) => sum + Math.abs(part - images[b][i]), 0) / images[a].length;
    equal([finishes[a], finishes[b], apart > 3], [finishes[a], finishes[b], true]);
  }
});

test("a part of the rope painted alone is as it was painted with the whole", () => {
  const tile = traceTile(12, "right", PITCH, 1, 2), beads = Uint8Array.from({ length: 300 }, (_, k) => (k * 7) % 3);
  const lut = tables(pattern("ABC", 12).palette, [255, 255, 255]), whole = new ImageData(200, tile.height), parts = new ImageData(200, tile.height);
  paintRope(whole, tile, beads, lut, { left: 33 });
  for (const [x0, x1] of [[0, 61], [61, 62], [62, 200]]) paintRope(parts, tile, beads, lut, { left: 33, x0, x1 });
  equal(whole.data.every((part, i) => part === parts.data[i]), true);
});

test("the tile is as high as the rope and two rows wide", () => {
  const tile = traceTile(12, "right", PITCH, 0, 1);
  equal([tile.width, tile.height, tile.period], [2 * PITCH, ropeSize(12, PITCH).height, 25]);
});

/** Colours of a small chart, read from the middle of each bead. */
function read(canvas, places, pitch) {
  const pen = canvas.getContext("2d"), half = Math.round(pitch * 0.47);
  return places.map(([column, down]) => [...pen.getImageData(column * pitch + pitch / 2, (down + 1) * half, 1, 1).data.slice(0, 3)]);
}

test("beads stand on the chart in their colours, and one that is drawn anew is as in the whole", () => {
  const own = pattern("ABABABABABA", 5), palette = [{ colour: "#ff0000" }, { colour: "#0000ff" }, { colour: "#00ff00" }];
  const canvas = new OffscreenCanvas(60, 12 * 9), picture = new ChartPicture(canvas, GROUND), camera = { left: 0, top: 0, pitch: 20 };
  picture.palette(palette, []);
  picture.draw(own, own.beads, camera, { signs: false, mark: "#000" });
  const strong = ([r, g, b]) => (r > 150 ? "red" : b > 150 ? "blue" : g > 150 ? "green" : "dark");
  equal(read(canvas, [[0, 0], [0, 2], [1, 1], [1, 3]], 20).map(strong), ["red", "blue", "red", "blue"]);
  const changed = own.beads.slice();
  changed[1] = 2;
  picture.redraw(changed, [1], { signs: false, mark: "#000" });
  const single = canvas.getContext("2d").getImageData(0, 0, 60, 108).data;
  picture.draw(own, changed, camera, { signs: false, mark: "#000" });
  const whole = canvas.getContext("2d").getImageData(0, 0, 60, 108).data;
  equal(single.every((part, i) => Math.abs(part - whole[i]) <= 2), true);
});

test("the strip shows the first bead at its upper left, and for the left hand at its lower left", () => {
  const own = pattern("AB".repeat(50), 5), table = new Uint32Array(128).fill(1);
  table[0] = 7;
  const corner = (hand, row) => new Uint32Array(overviewImage({ ...own, hand }, own.beads, table, 40, 24).data.buffer)[row * 40];
  equal([corner("right", 0), corner("left", 23)], [7, 7]);
});
