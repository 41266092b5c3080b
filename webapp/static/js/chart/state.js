// Everything that the editor knows, in one plain value, and what a step does to it. No page in here.

import { EMPTY, again, back, record, recoloured } from "./craft/history.js";
import { chartOf } from "./craft/pattern.js";
import { repeat } from "./craft/repeats.js";
import { COLOUR, displayed, drawnPlace, following, mostPasses, pieces } from "./craft/displayed.js";
import { choose, partAt } from "./craft/parts.js";
import { inEveryRepeat } from "./edits/paint.js";
import { beadsPastEdge, START, within } from "./camera.js";

export const TOOLS = ["place", "line", "flood", "take", "patch", "add", "remove", "slide"];

/** The state in which a visit begins. `context` is what the page gives with the pattern: symbols, working diameter and its source. */
export function begin(pattern, context) {
  const every = repeat(chartOf(pattern)), length = pattern.to - pattern.from;
  return {
    pattern, history: EMPTY, context,
    tool: "place", colour: Math.min(1, pattern.palette.length - 1),
    reach: every > 1 && every < length ? "every" : "one", every: every > 1 ? every : length,
    passes: 1, whole: null, signs: false, turn: 180,
    cursor: 0, under: -1, from: -1, patch: null, copy: null, floating: null,
    camera: START,
  };
}

let last = {};

/** What a state displays, as pieces and as beads; worked out anew only when it may have changed. */
function shown({ pattern, passes, whole = null }) {
  if (last.pattern !== pattern || last.passes !== passes || last.whole !== whole) {
    const row = pieces(pattern, passes, whole);
    last = { pattern, passes, whole, row, beads: displayed(pattern, row) };
  }
  return last;
}

/** Whether a state displays something else than the one before, be it only another choice of part. */
export const displaysAnew = (state, before) => ["pattern", "passes", "whole"].some(name => state[name] !== before[name]);

export const beadsOf = state => shown(state).beads;
export const piecesOf = state => shown(state).row;

/** What the view draws: what a state displays, and in the room that it leaves empty the passes that follow. */
function drawn(state) {
  const own = shown(state), { pattern, whole, camera } = state, until = beadsPastEdge(pattern, own.beads.length, camera);
  if (own.drawn?.until !== until) {
    const more = whole ? null : following(pattern, own.row, until), row = more ? [...own.row, more] : own.row;
    own.drawn = { until, row, beads: more ? displayed(pattern, row) : own.beads };
  }
  return own.drawn;
}

export const drawnBeads = state => drawn(state).beads;
export const drawnPieces = state => drawn(state).row;

/** What changes with a step: the pattern, its name in the history, and all that must still fit the pattern. */
export function edited(state, name, pattern) {
  return pattern === state.pattern ? {} : { ...fitted(state, pattern), history: record(state.history, name, state.pattern, pattern) };
}

/** As `edited`, for a pattern that takes the place of the other without a step of its own: part of a stroke. */
export function fitted(state, pattern) {
  if (recoloured(state.pattern, pattern)) return { pattern };
  const passes = Math.min(state.passes, mostPasses(pattern)), length = pattern.to - pattern.from,
    whole = sameLengths(state.pattern, pattern) ? state.whole : null;
  const total = beadsOf({ pattern, passes, whole }).length, same = state.pattern.around === pattern.around;
  return { pattern, passes, whole, colour: Math.min(state.colour, pattern.palette.length - 1), every: Math.min(state.every, length),
           cursor: Math.min(state.cursor, total - 1), under: -1, from: -1, patch: null, floating: null,
           copy: same && state.pattern.palette === pattern.palette ? state.copy : null, camera: within(pattern, total, state.camera) };
}

// the whole piece is known for parts as long and as often as these
const sameLengths = ({ parts, around }, other) => around === other.around && parts.length === other.parts.length &&
  parts.every(({ times, length }, i) => times === other.parts[i].times && length === other.parts[i].length);

/** Another part is chosen; that is no step. */
export function chosenPart(state, at) {
  const pattern = choose(state.pattern, at), every = repeat(chartOf(pattern)), length = pattern.to - pattern.from;
  if (pattern === state.pattern) return {};
  const cursor = state.whole ? state.cursor : drawnPlace(piecesOf(state), state.cursor);
  return { ...fitted({ ...state, passes: 1 }, pattern), cursor, copy: state.copy, every: every > 1 ? every : length,
           reach: every > 1 && every < length ? "every" : "one" };
}

/** The part that stands at a displayed place. */
export const partShown = (state, place) => partAt(state.pattern, drawnPlace(piecesOf(state), place));

export function undone(state) {
  const { history, pattern } = back(state.history, state.pattern);
  return { ...fitted(state, pattern), history };
}

export function redone(state) {
  const { history, pattern } = again(state.history, state.pattern);
  return { ...fitted(state, pattern), history };
}

/** As many steps back (below nought) or on as that. */
export function travelled(state, steps) {
  let now = state;
  for (let i = 0; i < Math.abs(steps); i++) now = { ...now, ...(steps < 0 ? undone(now) : redone(now)) };
  return now;
}

/** Drawn beads of the chosen part that a stroke over displayed places reaches: in every repeat, where that is chosen. */
export function reached(state, places) {
  const { pattern, reach, every } = state, { from, to } = pattern, row = piecesOf(state);
  const own = places.map(place => drawnPlace(row, place)).filter(k => k >= from && k < to);
  return reach === "every" ? inEveryRepeat(pattern, own, every) : [...new Set(own)];
}

/** The palette index of the bead at a displayed place. */
export const colourAt = (state, place) => beadsOf(state)[place] & COLOUR;

/** Holds the state; whoever listens is told the new one and the one before. */
export class Store {
  #listening = [];
  constructor(state) { this.state = state; }

  listen(listener) { this.#listening.push(listener); }

  set(change) {
    const before = this.state;
    if (Object.keys(change).every(name => before[name] === change[name])) return;
    this.state = { ...before, ...change };
    for (const listener of this.#listening) listener(this.state, before);
  }

  edit(name, pattern) { this.set(edited(this.state, name, pattern)); }
}
