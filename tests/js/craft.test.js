// Repeats, helix, notation, patterns, what is shown, facts and words.

import { ringInWords } from "/static/js/chart/craft/facts.js";
import { helix } from "/static/js/chart/craft/helix.js";
import { read, write } from "/static/js/chart/craft/notation.js";
import { counts, fromDocument, same, toDocument } from "/static/js/chart/craft/pattern.js";
import { closes, drift, leastRing, repeat, ringsNear } from "/static/js/chart/craft/repeats.js";
import { drawnPlace, mostPasses, partOf, displayed, displayedPlace } from "/static/js/chart/craft/displayed.js";
import { assigned } from "/static/js/chart/craft/symbols.js";
import { beadInWords, driftInWords, spoken } from "/static/js/chart/craft/words.js";
import { inkOn } from "/static/js/chart/pictures/colour.js";
import { equal, near, shared, test } from "./says.js";
import { pattern } from "./patterns.js";

test("charts repeat as the fixture says", async () => {
  for (const { beads, repeat: shortest } of await shared("repeats", "repeat")) equal(repeat(new TextEncoder().encode(beads)), shortest);
});

test("passes drift as the fixture says", async () => {
  for (const { around, beads, drift: far, degrees } of await shared("repeats", "drift")) {
    near(drift(around, beads).beads, far);
    near(drift(around, beads).degrees, degrees, 1e-8);
  }
});

test("rings close as the fixture says", async () => {
  for (const { around, repeat: every, total, least, closes: closed } of await shared("repeats", "rings")) equal([leastRing(around), closes(around, every, total)], [least, closed]);
});

test("the nearest rings are told, with whole passes between start and end", () => {
  equal(ringsNear(6, 7, 84), { below: 84, above: 91 });
  equal(ringsNear(6, 7, 14), { below: 0, above: 21 });
  equal(ringsNear(6, 10, 25, 5), { below: 25, above: 35 });
  equal(ringInWords(pattern("AABAABAAB", 3), 1, 3), "closes, next at 12");
  equal(ringInWords(pattern("AAB", 3), 1, 3), "closes from 9 on");
});

test("the helix is that of the fixture", async () => {
  for (const { around, radius, twist, rise } of await shared("helix", "helix")) {
    const found = helix(around);
    for (const [one, other] of [[found.radius, radius], [found.twist, twist], [found.rise, rise]]) near(one, other, 1e-10);
  }
});

test("texts are written and read as in the fixture", async () => {
  for (const { codes, beads, text } of await shared("notation", "texts")) {
    equal(write(Uint8Array.from(beads), codes), text);
    equal(read(text, codes), beads);
  }
});

test("ink reads on the colours of the fixture", async () => {
  for (const { colour, ink } of await shared("ink", "ink")) equal([colour, inkOn(colour)], [colour, ink]);
});

test("a document comes back as it went", () => {
  const own = { ...pattern("AABBC", 4), from: 1, to: 4 };
  equal(same(fromDocument(toDocument(own)), own), true);
  equal([toDocument(own).start, toDocument(own).beads, toDocument(own).end], ["A", "A 2B", "C"]);
});

test("beads of the palette are counted in start, chart and end", () => equal(counts(pattern("AABBBC", 4)), [2, 3, 1]));

test("passes after the first are dimmed and lead back to the drawn beads", () => {
  const own = { ...pattern("ABBC", 3), from: 1, to: 3 };
  equal(displayed(own, 3), [0, 1, 1, 65, 65, 65, 65, 2]);
  equal([0, 1, 2, 3, 4, 5, 6, 7].map(place => drawnPlace(own, 3, place)), [0, 1, 2, 1, 2, 1, 2, 3]);
  equal([0, 1, 3].map(k => displayedPlace(own, 3, k)), [0, 1, 7]);
  equal([0, 1, 2, 3].map(k => partOf(own, k)), ["start", "chart", "chart", "end"]);
});

test("no more passes are shown than 200,000 beads", () => equal(mostPasses({ beads: { length: 100_000 }, from: 0, to: 100_000 }), 2));

test("a bead is named by its place and code", () => {
  equal(beadInWords(pattern("AABBC", 3), 1, pattern("AABBC", 3).beads, 3), "B Bead B · bead 4 of 5 · round 2, place 1");
  const parts = { ...pattern("AABBC", 3), from: 2 };
  equal(beadInWords(parts, 1, parts.beads, 3), "B Bead B · bead 2 of 3 of the chart · round 2, place 1");
});

test("the six beads that a bead touches are said as they lie on the page", () => {
  const own = pattern("AAABBBBCCCCABC", 3), left = { ...own, hand: "left" };
  equal(spoken(own, 1, own.beads, 5).split(". ")[1], "Above B, below B, left A and A, right C and C.");
  equal(spoken(left, 1, own.beads, 5).split(". ")[1], "Above B, below B, left A and A, right C and C.");
  equal(spoken(own, 1, own.beads, 0).split(". ")[1], "Above none, below A, left none and none, right B and B.");
});

test("drift is told with its sign", () => equal([driftInWords(drift(6, 84)), driftInWords(drift(12, 900))], ["−0.5 beads, −28°", "none"]));

test("entries take the symbol they name, others the next that is free", () => {
  const symbols = [["dot", "1"], ["ring", "2"], ["bar", "3"]], entry = symbol => ({ symbol });
  equal(assigned([entry(""), entry("dot"), entry("dot"), entry("none")], [...symbols, ["cross", "4"]]), ["2", "1", "3", "4"]);
});
