// Repeats, helix, notation, patterns, what is shown, facts and words.

import { ringInWords } from "/static/js/chart/craft/facts.js";
import { helix } from "/static/js/chart/craft/helix.js";
import { read, write } from "/static/js/chart/craft/notation.js";
import { counts, fromDocument, same, toDocument } from "/static/js/chart/craft/pattern.js";
import { closes, drift, leastRing, repeat, ringsNear } from "/static/js/chart/craft/repeats.js";
import { displayed, drawnPlace, following, mostPasses, passAt, pieces, repeatedPlace } from "/static/js/chart/craft/displayed.js";
import { assigned } from "/static/js/chart/craft/symbols.js";
import { beadInWords, driftInWords, spoken } from "/static/js/chart/craft/words.js";
import { inkOn } from "/static/js/chart/pictures/colour.js";
import { equal, near, shared, test } from "./says.js";
import { inParts, pattern, threeParts, told } from "./patterns.js";

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
  equal(ringInWords(pattern("AABAABAAB", 3), 9, 3), "closes, next at 12");
  equal(ringInWords(pattern("AAB", 3), 3, 3), "closes from 9 on");
  equal(ringInWords(threeParts("AA|BBBB|CC", 3), 8, 4), "closes from 12 on");
  equal(ringInWords(inParts({ Head: ["ABC", 4] }, 3), 3, 3), "closes at 12");
  equal(ringInWords(inParts({ Head: ["ABC", 2] }, 3), 3, 3), "too short to close");
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
  const own = threeParts("A|ABB|C", 4);
  equal(same(fromDocument(toDocument(own)), own), true);
  equal([toDocument(own).start, toDocument(own).beads, toDocument(own).end, toDocument(own).parts], ["A", "A 2B", "C", undefined]);
});

test("a document in parts comes back in parts, and the part that fills is chosen", () => {
  const own = inParts({ Head: ["ABC", 2], Body: ["AB", "fill"] }, 4), document = toDocument(own);
  equal([document.beads, document.start, document.parts], [undefined, undefined, [{ name: "Head", beads: "A B C", times: 2 }, { name: "Body", beads: "A B", times: "fill" }]]);
  equal(told(fromDocument(document)), "Head 2 ABC | *Body fill AB");
});

test("a pattern without parts is written with them once a part has a name or a number of its own", () => {
  const own = threeParts("A|ABB|", 4);
  equal(Boolean(toDocument(own).parts), false);
  equal(toDocument({ ...own, parts: own.parts.map(part => ({ ...part, name: part.name === "Start" ? "Head" : part.name })) }).parts[0].name, "Head");
  equal(toDocument({ ...own, parts: own.parts.map(part => ({ ...part, times: 2 })) }).parts[1].times, 2);
});

test("beads of the palette are counted in start, chart and end", () => equal(counts(pattern("AABBBC", 4)), [2, 3, 1]));

test("passes after the first are dimmed and lead back to the drawn beads", () => {
  const own = threeParts("A|BB|C", 3), row = pieces(own, 3);
  equal(displayed(own, row), [64, 1, 1, 65, 65, 65, 65, 66]);
  equal([0, 1, 2, 3, 4, 5, 6, 7].map(place => drawnPlace(row, place)), [0, 1, 2, 1, 2, 1, 2, 3]);
  equal([1, 3, 6].map(place => passAt(row, place)), [1, 2, 3]);
});

test("the whole piece begins in the middle of a part that is cut there, and nothing of it is dimmed", () => {
  const own = inParts({ Left: ["ABCD", "fill"], Head: ["EE", 2], Right: ["AB", "fill"] }, 3);
  const row = pieces(own, 1, [{ part: 0, first: 3, beads: 5 }, { part: 1, first: 0, beads: 4 }, { part: 2, first: 0, beads: 3 }]);
  equal(displayed(own, row), [3, 0, 1, 2, 3, 4, 4, 4, 4, 0, 1, 0]);
  equal([0, 1, 4, 5, 8, 9, 11].map(place => drawnPlace(row, place)), [3, 0, 3, 4, 5, 6, 6]);
  equal([0, 1, 5, 7, 11].map(place => passAt(row, place)), [1, 2, 1, 2, 2]);
});

test("a part that fills is followed by its passes, cut where the view ends, and each bead leads back to the one it repeats", () => {
  const own = inParts({ Head: ["AB", 1], Body: ["CDE", "fill"] }, 3), row = pieces(own, 1), more = following(own, row, 10);
  equal(displayed(own, [...row, more]), [0, 1, 66, 67, 68, 66, 67, 68, 66, 67]);
  equal([4, 5, 9].map(place => repeatedPlace(row, place)), [4, 2, 3]);
  equal([4, 5, 9].map(place => passAt(row, place)), [1, 2, 3]);
});

test("a part with a number is followed by the passes that are left of it, and one worked once by nothing", () => {
  const beadsAfter = (times, passes) => {
    const own = inParts({ Body: ["ABC", times] }, 3);
    return following(own, pieces(own, passes), 100)?.beads ?? 0;
  };
  equal([beadsAfter(3, 1), beadsAfter(3, 2), beadsAfter(3, 3), beadsAfter(1, 1)], [6, 3, 0, 0]);
  const ended = threeParts("A|BB|C", 3);
  equal(following(ended, pieces(ended, 1), 100), null);
});

test("no more passes are shown than 200,000 beads", () => equal(mostPasses({ beads: { length: 100_000 }, from: 0, to: 100_000 }), 2));

test("a bead is named by its place and code", () => {
  const named = (own, at, passes = 1) => beadInWords(own, pieces(own, passes), at);
  equal(named(pattern("AABBC", 3), 3), "B Bead B · bead 4 of 5 · round 2, place 1");
  equal(named(threeParts("AA|BBC|", 3), 3), "B Bead B · bead 2 of 3 of the chart · round 2, place 1");
  equal(named(threeParts("AA|BBC|", 3), 7, 2), "C Bead C · bead 3 of 3 of the chart · round 3, place 2 · pass 2");
  equal(named(inParts({ Head: ["AB", 1], Body: ["BC", "fill"] }, 3), 2), "B Bead B · bead 1 of 2 of “Body” · round 1, place 3");
  equal(named(pattern("AABBC", 3), 8), "B Bead B · bead 4 of 5 · pass 2");
});

test("the six beads that a bead touches are said as they lie on the page", () => {
  const own = pattern("AAABBBBCCCCABC", 3), left = { ...own, hand: "left" };
  equal(spoken(own, pieces(own, 1), own.beads, 5).split(". ")[1], "Above B, below B, left A and A, right C and C.");
  equal(spoken(left, pieces(left, 1), own.beads, 5).split(". ")[1], "Above B, below B, left A and A, right C and C.");
  equal(spoken(own, pieces(own, 1), own.beads, 0).split(". ")[1], "Above none, below A, left none and none, right B and B.");
});

test("drift is told with its sign", () => equal([driftInWords(drift(6, 84)), driftInWords(drift(12, 900))], ["−0.5 beads, −28°", "none"]));

test("entries take the symbol they name, others the next that is free", () => {
  const symbols = [["dot", "1"], ["ring", "2"], ["bar", "3"]], entry = symbol => ({ symbol });
  equal(assigned([entry(""), entry("dot"), entry("dot"), entry("none")], [...symbols, ["cross", "4"]]), ["2", "1", "3", "4"]);
});
