// What the tools do to a pattern: strokes, flood, patch, rounds, slide, colours, refit.

import { byCode, changeEntry, exchange, freshEntry, merge, wrongEntry } from "/static/js/chart/edits/colours.js";
import { connected, inEveryRepeat, ofThatColour, paint } from "/static/js/chart/edits/paint.js";
import { between, copied, laid, places, repeated, turned } from "/static/js/chart/edits/patch.js";
import { refit, usualWay } from "/static/js/chart/edits/refit.js";
import { addPart, copyPart, describePart, movePart, removePart, setBorders } from "/static/js/chart/edits/parts.js";
import { add, remove, setLength } from "/static/js/chart/edits/rounds.js";
import { slide } from "/static/js/chart/edits/slide.js";
import { along, line } from "/static/js/chart/edits/strokes.js";
import { shiftInWords } from "/static/js/chart/use.js";
import { equal, test } from "./says.js";
import { inParts, letters, pattern, threeParts, told } from "./patterns.js";

test("paint changes nothing of the pattern before", () => {
  const before = pattern("AAAA", 3), after = paint(before, [1, 2], 1);
  equal([letters(before.beads), letters(after.beads)], ["AAAA", "ABBA"]);
  equal(paint(after, [1, 2], 1) === after, true);
});

test("every repeat is reached within the chosen part", () => {
  equal(inEveryRepeat({ from: 2, to: 11 }, [3, 6], 3).sort((a, b) => a - b), [3, 6, 9]);
});

test("a fast stroke leaves no gap", () => {
  const found = along(12, "right", 900, { x: 0.5, half: 1 }, { x: 20.5, half: 20 });
  const touch = (a, b) => [1, 12, 13].includes(Math.abs(a - b));
  equal(found.slice(1).every((k, i) => touch(found[i], k)), true);
});

test("a line begins and ends with its beads, in either hand", () => {
  for (const hand of ["right", "left"]) equal([line(6, hand, 91, 3, 60)[0], line(6, hand, 91, 3, 60).at(-1)], [3, 60]);
});

test("flood passes a wall of as many beads as the rope is around, and not one more", () => {
  equal(connected(3, pattern("AAABBBAAAAA", 3).beads, 0).length, 8);
  equal(connected(3, pattern("AAABBBBAAAA", 3).beads, 0), [0, 1, 2]);
  equal(ofThatColour(pattern("AAABBBBAAAA", 3).beads, 0), [0, 1, 2, 7, 8, 9, 10]);
});

test("a patch holds the beads between its corners, column for column", () => {
  equal(between(5, "right", 22, 0, 12).columns, [[0, 1], [6], [11, 12]]);
  equal(between(5, "left", 22, 0, 12).columns, [[1, 0], [6], [12, 11]]);
  equal(between(5, "right", 22, 2, 2).columns, [[2]]);
});

test("a copy keeps its beads when it moves along the spiral, round the rope too", () => {
  const copy = copied({ columns: [[3, 4]] }, pattern("AAABCA", 3).beads);
  equal(copy, { anchor: 3, beads: [{ offset: 0, colour: 1 }, { offset: 1, colour: 2 }] });
  equal(laid(copy, 6, 8), [[6, 1], [7, 2]]);
  equal(laid(copy, 7, 8), [[7, 1]]);
  equal(repeated(copy, 0, 3, 8), [[3, 1], [4, 2], [6, 1], [7, 2]]);
});

test("two mirrors are a half turn, and done twice change nothing", () => {
  const beads = pattern("ABCDEFGHIJ".repeat(3), 5).beads, patch = between(5, "right", 30, 0, 13);
  const put = (own, pairs) => { const made = own.slice(); for (const [k, colour] of pairs) made[k] = colour; return made; };
  const once = way => put(beads, turned(patch, beads, way));
  for (const way of ["along", "across", "half"]) equal(put(once(way), turned(patch, once(way), way)), beads);
  equal(put(once("along"), turned(patch, once("along"), "across")), once("half"));
  equal(places(patch), [0, 1, 2, 6, 7, 11, 12, 13]);
});

test("beads that come in belong to the part at which they come in", () => {
  const own = threeParts("AA|BBB|C", 3);
  const described = ({ beads, from, to }) => [letters(beads), from, to];
  equal(described(add(own, 2, 2, { colour: 2 })), ["AACCBBBC", 2, 7]);
  equal(described(add(own, 0, 2, { colour: 2, after: true })), ["ACCABBBC", 4, 7]);
  equal(described(add(own, 5, 1, { colour: 0 })), ["AABBBAC", 2, 5]);
  equal(letters(add(pattern("ABCABC", 3), 2, 3, { after: true }).beads), "ABCABCABC");
});

test("beads that go leave the marks where they belong, and never an empty chart", () => {
  const own = threeParts("AA|BBB|C", 3);
  const described = ({ beads, from, to }) => [letters(beads), from, to];
  equal(described(remove(own, 1, 2)), ["ABBC", 1, 3]);
  equal(described(remove(own, 4, 9)), ["AABB", 2, 4]);
  equal(remove(own, 2, 3) === own, true);
});

test("the chart is cut or made longer at its end, and its marks can be moved", () => {
  const own = threeParts("AA|BBB|C", 3);
  equal(letters(setLength(own, 5, 0).beads), "AABBBAAC");
  equal(letters(setLength(own, 1, 0).beads), "AABC");
  equal(told(setBorders(own, 1, 99)), "Start 1 A | *Chart fill ABBBC");
});

test("a round moves what follows by half a bead, a pair of rows does not", () => {
  equal(shiftInWords(12, 1, "rounds"), "12 beads; what follows moves half a bead across.");
  equal(shiftInWords(12, 2, "pairs"), "50 beads; what follows stays straight.");
});

test("slide takes what leaves at one end in at the other and leaves start and end alone", () => {
  equal(letters(slide(threeParts("A|ABC|A", 3), 1).beads), "ACABA");
  equal(letters(slide(pattern("ABC", 3), -1).beads), "BCA");
  const own = pattern("ABC", 3);
  equal(slide(own, 3) === own, true);
});

test("two colours change places, or become one", () => {
  const own = pattern("AABBC", 3);
  equal(letters(exchange(own, 0, 2).beads), "CCBBA");
  const merged = merge(own, 0, 2);
  equal([letters(merged.beads), merged.palette.map(entry => entry.code)], ["BBAAB", ["B", "C"]]);
});

test("entries are checked before they are kept", () => {
  const { palette } = pattern("ABC", 3), entry = palette[0];
  equal(wrongEntry(palette, 0, entry), "");
  equal(wrongEntry(palette, 0, { ...entry, code: "B" }), "The code B stands in the palette already.");
  equal(wrongEntry(palette, 0, { ...entry, code: "a1" }), "A code is one or two letters A to Z.");
  equal(wrongEntry(palette, 0, { ...entry, name: " " }), "A bead needs a name.");
  equal(freshEntry(pattern("ABC", 3)).code, "D");
  equal(changeEntry(pattern("ABC", 3), 1, { ...entry, code: "Z" }).palette.map(({ code }) => code), ["A", "Z", "C"]);
});

test("typed letters choose the code of two where there is one", () => {
  const palette = ["A", "B", "AB"].map(code => ({ code }));
  equal([byCode(palette, "A"), byCode(palette, "AB"), byCode(palette, "BA"), byCode(palette, "X")], [0, 2, 0, -1]);
});

test("refit keeps the string, rounds or rows", () => {
  const own = pattern("AAABBBCCC", 3);
  equal(letters(refit(own, 4, "string", 0).beads), "AAABBBCCC");
  equal(letters(refit(own, 4, "rounds", 0).beads), "AAAABBBACCCA");
  equal(letters(refit(pattern("AAAABBBCC", 3), 4, "rows", 2).beads), "AAAACBBBCCC");
  equal(letters(refit(pattern("AAAABBBCCCC", 3), 2 + 1, "rows", 2).beads), "AAAABBBCCCC");
  equal(letters(refit(pattern("AAAAABBBBCCCCC", 4), 3, "rows", 0).beads), "AAAABBBCCCC");
});

test("a stretched picture keeps its height and its bands", () => {
  const bands = pattern("A".repeat(123) + "B".repeat(123) + "C".repeat(123), 20), stretched = refit(bands, 12, "stretch", 0);
  const share = letter => [...letters(stretched.beads)].filter(found => found === letter).length / stretched.beads.length;
  equal(["A", "B", "C"].map(letter => Math.round(share(letter) * 30)), [10, 10, 10]);
  equal(letters(stretched.beads).replace(/(.)\1+/g, "$1").length < 40, true);
});

test("a stretched picture comes back nearly as it was", () => {
  const own = pattern(Array.from({ length: 820 }, (_, k) => ((k % 20.5) < 10 ? "A" : "B")).join(""), 20);
  const back = refit(refit(own, 40, "stretch", 0), 20, "stretch", 0), wrong = [...back.beads].filter((bead, k) => bead !== own.beads[k]).length;
  equal(wrong / own.beads.length < 0.08, true);
});

test("start and end keep their places when a chart is refitted", () => {
  const own = threeParts("AAA|BBB|CCC", 3);
  equal(["from", "to"].map(mark => refit(own, 5, "rounds", 0)[mark]), [5, 10]);
});

test("spirals keep their string unless one says otherwise, pictures are stretched", () => {
  equal([usualWay(pattern("AAB".repeat(20), 6)), usualWay(pattern("A".repeat(50) + "B".repeat(31), 6))], ["string", "stretch"]);
});

test("a part comes in after the chosen one and is chosen, of pairs of rows so that what follows stays straight", () => {
  const made = addPart(pattern("AB", 3), 2);
  equal([made.parts.map(({ name }) => name), made.at, made.to - made.from, letters(made.beads.subarray(2, 5))], [["Chart", "Part 2"], 1, 35, "CCC"]);
  equal(addPart(inParts({ "Part 2": ["AB", 1] }, 3), 0).parts[1].name, "Part 3");
});

test("a part is copied behind itself; what fills the rope is worked once as a copy", () => {
  const own = inParts({ Body: ["AB", "fill"], Tail: ["C", 3] }, 3);
  equal(told(copyPart(own)), "Body fill AB | *Copy of Body 1 AB | Tail 3 C");
  equal(told(copyPart(copyPart(own))).startsWith("Body fill AB | Copy of Body 1 AB | *Copy of Copy of Body"), true);
});

test("parts change places with their beads and keep name and number", () => {
  const own = inParts({ Head: ["ABC", 2], Body: ["AB", "fill"], Tail: ["C", 1] }, 3);
  equal(told(movePart(own, 1)), "Body fill AB | *Head 2 ABC | Tail 1 C");
  equal(told(movePart(movePart(own, 1), 1)), "Body fill AB | Tail 1 C | *Head 2 ABC");
  equal(movePart(own, -1) === own, true);
});

test("two parts that fill never meet, and one part is always left", () => {
  const own = inParts({ Left: ["AB", "fill"], Head: ["C", 1], Right: ["BA", "fill"] }, 3), middle = { ...own, at: 1, from: 2, to: 3 };
  equal(removePart(middle) === middle, true);
  equal(movePart(own, 1) === own, true);
  equal(describePart(middle, { name: "Head", times: "fill" }) === middle, true);
  equal(told(describePart(middle, { name: "Focal", times: 6 })), "Left fill AB | *Focal 6 C | Right fill BA");
  const alone = pattern("AB", 3);
  equal(removePart(alone) === alone, true);
});

test("beads go to the neighbour when a border moves; a neighbour that has none left is gone", () => {
  const own = { ...inParts({ Head: ["AA", 2], Body: ["BBB", "fill"], Tail: ["CC", 1] }, 3), at: 1, from: 2, to: 5 };
  equal(told(setBorders(own, 3, 6)), "Head 2 AAB | *Body fill BBC | Tail 1 C");
  equal(told(setBorders(own, 0, 7)), "*Body fill AABBBCC");
  equal(told(setBorders(pattern("AABBB", 3), 2, 4)), "Start 1 AA | *Chart fill BB | End 1 B");
  equal(setBorders(own, 2, 5) === own, true);
});
