// The steps of a visit as text and back.

import { back, EMPTY, record } from "/static/js/chart/craft/history.js";
import { same } from "/static/js/chart/craft/pattern.js";
import { MOST_LETTERS, readHistory, writeHistory } from "/static/js/chart/craft/written-history.js";
import { exchange } from "/static/js/chart/edits/colours.js";
import { paint } from "/static/js/chart/edits/paint.js";
import { add } from "/static/js/chart/edits/rounds.js";
import { letters, pattern } from "./patterns.js";
import { equal, test } from "./says.js";

const first = pattern("AABAAB", 3), second = paint(first, [0, 5], 1), third = add(second, 0, 3, { colour: 1 });
const steps = record(record(EMPTY, "Place B", first, second), "Add 1 round", second, third);

test("steps that were written and read again lead back to the pattern before them", () => {
  const read = readHistory(writeHistory(steps, third), third);
  equal(read.done.map(step => step.name), ["Place B", "Add 1 round"]);
  const once = back(read, third), twice = back(once.history, once.pattern);
  equal([same(once.pattern, second), letters(twice.pattern.beads)], [true, letters(first.beads)]);
  equal(twice.history.undone.length, 2);
});

test("steps that lead to another pattern are not taken up", () => {
  equal(readHistory(writeHistory(steps, third), second), EMPTY);
  equal(readHistory(writeHistory(steps, third), exchange(third, 0, 1)), EMPTY);
});

test("what is no text of steps is a visit without steps", () => equal([null, "", "{}", "[1]"].map(text => readHistory(text, first)), [EMPTY, EMPTY, EMPTY, EMPTY]));

test("beyond the room there is the oldest steps are left out", () => {
  const large = { ...first, words: { ...first.words, notes: "n".repeat(MOST_LETTERS / 3) } };
  const longer = add(large, 0, 3, { colour: 1 }), many = record(steps, "Add 1 round", large, longer);
  const read = readHistory(writeHistory(record(many, "Take theirs", longer, large), large), large);
  equal(read.done.map(step => step.name), ["Take theirs"]);
});
