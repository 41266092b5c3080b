// The one value: history, strokes, tools, the camera, and saving while servers come and go.

import { centred, fitting, heights, panned, pointAt, showing, START, within, zoomed } from "/static/js/chart/camera.js";
import { back, changed, EMPTY, record } from "/static/js/chart/craft/history.js";
import { actionOf, KEYS, TOOL_KEYS } from "/static/js/chart/keys.js";
import { Saving } from "/static/js/chart/saving.js";
import { beadsOf, begin, chosenPart, drawnBeads, edited, partShown, reached, redone, Store, travelled, undone } from "/static/js/chart/state.js";
import { Stroke } from "/static/js/chart/stroke.js";
import { added, cleared, copying, floated, lineBetween, painted, putDown, selected, taken } from "/static/js/chart/use.js";
import { paint } from "/static/js/chart/edits/paint.js";
import { add, setLength } from "/static/js/chart/edits/rounds.js";
import { exchange, merge } from "/static/js/chart/edits/colours.js";
import { equal, near, test } from "./says.js";
import { inParts, letters, pattern, threeParts } from "./patterns.js";

const fresh = (text = "AAAAAAAAAAA", around = 5) => ({ ...begin(pattern(text, around), { symbols: [], workingMm: 2, source: "" }), reach: "one" });
const beads = state => letters(state.pattern.beads);

test("steps go back and on again without end, whatever they changed", () => {
  let state = fresh();
  const seen = [beads(state)];
  for (const edit of [own => paint(own, [2], 1), own => add(own, 3, 5, { colour: 2 }), own => exchange(own, 0, 1), own => merge(own, 2, 0)]) {
    state = { ...state, ...edited(state, "Step", edit(state.pattern)) };
    seen.push(beads(state));
  }
  for (let i = seen.length - 1; i > 0; i--) state = { ...state, ...undone(state) }, equal(beads(state), seen[i - 1]);
  for (let i = 1; i < seen.length; i++) state = { ...state, ...redone(state) }, equal(beads(state), seen[i]);
  equal(beads({ ...state, ...travelled(state, -3) }), seen[1]);
});

test("an edit that changes nothing is no step", () => {
  const state = fresh();
  equal(edited(state, "Nothing", paint(state.pattern, [1], 0)), {});
});

test("a step keeps only the beads that it changed", () => {
  const before = pattern("AAAA", 3), { done } = record(EMPTY, "Place B", before, paint(before, [2], 1));
  equal(done, [{ name: "Place B", places: [2], was: [0], now: [1] }]);
  equal(letters(back({ done, undone: [] }, paint(before, [2], 1)).pattern.beads), "AAAA");
  equal(changed(before.beads, paint(before, [2], 1).beads), [2]);
});

test("a stroke is one step however many beads it paints", () => {
  const store = new Store(fresh()), stroke = new Stroke(store);
  for (const k of [0, 1, 2]) stroke.paint([k]);
  stroke.end("Place B");
  equal([beads(store.state), store.state.history.done.length], ["BBBAAAAAAAA", 1]);
  const other = new Stroke(store);
  other.paint([9]);
  other.cancel();
  equal([beads(store.state), store.state.history.done.length], ["BBBAAAAAAAA", 1]);
});

test("a stroke over a dimmed pass paints the drawn bead", () => {
  equal(reached({ ...fresh("AAAA", 3), passes: 3 }, [1, 5, 9]), [1]);
});

test("passes that follow fill the view, and are neither displayed nor there where the whole piece is", () => {
  const state = { ...fresh("AAAABBB", 3), camera: { ...START, pitch: 20, width: 60 } };
  equal([letters(beadsOf(state)), drawnBeads(state)], ["AAAABBB", [0, 0, 0, 0, 1, 1, 1, 64, 64, 64, 64, 65, 65, 65]]);
  equal(drawnBeads({ ...state, whole: [{ part: 0, first: 0, beads: 7 }] }).length, 7);
});

test("a stroke over a pass that follows paints the bead that it repeats", () => {
  equal(reached(fresh("AAAABBB", 3), [6, 7, 10]), [6, 0, 3]);
});

test("a line leaves what is displayed only where one of its ends does", () => {
  const state = { ...fresh("AAAAA", 3), camera: { ...START, pitch: 20, width: 60 } };
  equal([Math.max(...lineBetween(state, 3, 4)), lineBetween(state, 3, 8).includes(8)], [4, true]);
});

test("every repeat is the usual reach of a chart that repeats", () => {
  equal([begin(pattern("ABABAB", 3), {}).reach, begin(pattern("ABABAB", 3), {}).every], ["every", 2]);
  equal([begin(pattern("AAAAAA", 3), {}).reach, begin(pattern("AAAAAA", 3), {}).every], ["one", 6]);
});

test("whoever listens hears only what changed", () => {
  const store = new Store(fresh()), heard = [];
  store.listen((state, before) => heard.push([before.colour, state.colour]));
  store.set({ colour: 2 });
  store.set({ colour: 2 });
  equal(heard, [[1, 2]]);
});

test("a patch is copied, hangs, and is put down; what moves leaves the bead in use behind", () => {
  let state = { ...fresh("BCAAAAAAAAA", 5), colour: 0 };
  state = { ...state, ...selected(state, 0, 1) };
  state = { ...state, ...copying(state) };
  equal(beads({ ...state, ...putDown({ ...state, ...floated(state.copy, 4) }) }), "BCAABCAAAAA");
  equal(beads({ ...state, ...putDown({ ...state, ...floated(state.copy, 1, state.patch) }) }), "ABCAAAAAAAA");
  equal(beads({ ...state, ...cleared(state) }), "AAAAAAAAAAA");
});

test("the cursor, passes and colour still fit when a pattern becomes smaller", () => {
  let state = { ...fresh("AAAAAAAAAAABBBBBBBBBBB", 5), cursor: 21, colour: 2 };
  state = { ...state, ...edited(state, "Cut", { ...setLength(state.pattern, 5, 0), palette: state.pattern.palette.slice(0, 2) }) };
  equal([state.cursor, state.colour], [4, 1]);
});

test("tools tell what they do in the history", () => {
  const state = fresh();
  equal(painted(state, "Line", [1, 2]).history.done.at(-1).name, "Line B");
  equal(added({ ...state, cursor: 3 }, 2, "pairs", {}).history.done.at(-1).name, "Add 2 pairs of rows");
  equal(taken(fresh("CAAA", 3), 0), { colour: 2, tool: "place" });
});

test("keys of the list do what the list says", () => {
  const action = (key, held = {}) => actionOf({ key, shiftKey: false, ctrlKey: false, metaKey: false, altKey: false, ...held });
  equal([action("a"), action("ArrowLeft"), action("z", { ctrlKey: true }), action("Z", { ctrlKey: true, shiftKey: true }), action("ArrowUp", { shiftKey: true }), action("F5"), action("a", { altKey: true })],
    ["code", "move", "undo", "redo", "select", "", ""]);
  equal(TOOL_KEYS.length, KEYS.filter(([, , , name]) => name === "tool").length);
});

const wide = { ...START, pitch: 20, width: 400, room: 300 }, own = pattern("A".repeat(900), 12);

test("one never looks past the rope", () => {
  equal(within(own, 900, { ...wide, left: -50 }).left, 0);
  equal(within(own, 900, { ...wide, left: 1e6 }).left, 72 * 20 - 400);
  equal(panned(own, 900, { ...wide, left: 100 }, 30, 0).left, 130);
});

test("the point under the pointer stays where it is when one zooms", () => {
  const before = { ...wide, left: 300 }, after = zoomed(own, 900, before, 30, 200, 0);
  near(pointAt(after, 200, 0).x, pointAt(before, 200, 0).x, 0.04);
  equal(after.pitch, 30);
});

test("chart and rope fill the room as far as whole pixels allow", () => {
  for (const around of [3, 6, 12, 40, 60]) {
    const pitch = fitting({ around }, { room: 500, ratio: 1 }), { chart, rope } = heights({ around }, { pitch, room: 500 });
    equal(chart + rope <= 500 && (pitch === 56 || chart + rope > 380), true);
  }
});

test("a bead is brought into sight, or into the middle", () => {
  equal(showing(own, 900, wide, 0).left, 0);
  const { left } = showing(own, 900, wide, 625), column = 50 * 20;
  equal(column >= left && column + 20 <= left + 400, true);
  equal(centred(own, 900, wide, 625).left, column + 10 - 200);
});

/** A server that answers as it is told, and what the page was told meanwhile. */
function talk(answers, { load = async () => ({ status: 200, body: {} }), sequence = 0 } = {}) {
  const states = [], sent = [];
  const saving = new Saving({
    send: async (document, number) => { sent.push([document.text, number]); return answers.shift()(); },
    load, sequence, tell: state => states.push(state), same: (body, document) => body.text === document.text, pause: async () => {},
  });
  return { saving, states, sent };
}
const ok = sequence => () => ({ status: 200, body: { sequence } }), nobody = () => { throw new Error("nobody answers"); }, refused = () => ({ status: 409, body: {} });
const text = words => () => ({ text: words });

test("a change is sent with the sequence last seen", async () => {
  const { saving, sent, states } = talk([ok(4), ok(5)], { sequence: 3 });
  saving.changed(text("one"));
  await saving.settled();
  saving.changed(text("two"));
  await saving.settled();
  equal(sent, [["one", 3], ["two", 4]]);
  equal([saving.safe, states.at(-1)], [true, "kept"]);
});

test("nobody answers: it is said, and tried until somebody does", async () => {
  const { saving, sent, states } = talk([nobody, nobody, ok(1)]);
  saving.changed(text("one"));
  await saving.settled();
  equal(sent.length, 3);
  equal(states.includes("offline") && saving.safe, true);
});

test("an answer that was lost is taken up, whichever of the saves it was for", async () => {
  const { saving, sent } = talk([nobody, nobody, refused, ok(2)], { load: async () => ({ status: 200, body: { text: "one", sequence: 1 } }) });
  const words = ["one", "two", "three", "three"];
  saving.changed(() => ({ text: words[sent.length] }));
  await saving.settled();
  equal(sent, [["one", 0], ["two", 0], ["three", 0], ["three", 1]]);
  equal(saving.safe, true);
});

test("a save from an older state waits for a choice and goes on from there", async () => {
  const { saving, sent, states } = talk([refused, ok(8)], { load: async () => ({ status: 200, body: { text: "theirs", sequence: 7 } }) });
  saving.changed(text("mine"));
  await saving.settled();
  equal([states.at(-1), saving.safe], ["stale", false]);
  saving.changed(text("mine too"));
  saving.goOn(7);
  saving.changed(text("next"));
  await saving.settled();
  equal([sent.at(-1), saving.safe], [["next", 7], true]);
});

test("a save with something wrong in it is said and not sent again", async () => {
  const { saving, sent, states } = talk([() => ({ status: 422, body: { error: { message: "No name." } } }), ok(1)]);
  saving.changed(text("wrong"));
  await saving.settled();
  equal([sent.length, states.at(-1), saving.safe], [1, "refused", false]);
  saving.changed(text("right"));
  await saving.settled();
  equal(saving.safe, true);
});

test("strokes stay within the chosen part, and another is chosen without a step", () => {
  const own = threeParts("AAA|AAAAA|AA", 3);
  let state = { ...begin(own, {}), reach: "one", colour: 1 };
  equal(reached(state, [2, 3, 7, 8]), [3, 7]);
  state = { ...state, ...chosenPart({ ...state, cursor: 9 }, 2) };
  equal([state.pattern.at, state.cursor, state.history.done.length, reached(state, [2, 3, 7, 8])], [2, 9, 0, [8]]);
  equal(chosenPart(state, 2), {});
  equal([0, 3, 9].map(place => partShown(state, place)), [0, 1, 2]);
});

test("the whole piece is known until parts are another length", () => {
  const state = { ...begin(inParts({ Head: ["ABC", 2] }, 3), {}), reach: "one", whole: [{ part: 0, first: 0, beads: 6 }] };
  equal(beadsOf(state), [0, 1, 2, 0, 1, 2]);
  const painted = { ...state, ...edited(state, "Place", paint(state.pattern, [0], 1)) };
  equal(beadsOf(painted), [1, 1, 2, 1, 1, 2]);
  equal({ ...state, ...edited(state, "Add", add(state.pattern, 0, 3, { colour: 0 })) }.whole, null);
});
