// Everything that the editor knows, in one plain value, and what a step does to it. No page in here.

import { EMPTY, again, back, record, recoloured } from "./craft/history.js";
import { chartOf } from "./craft/pattern.js";
import { repeat } from "./craft/repeats.js";
import { COLOUR, drawnPlace, mostPasses, displayed } from "./craft/displayed.js";
import { inEveryRepeat } from "./edits/paint.js";
import { START, within } from "./camera.js";

export const TOOLS = ["place", "line", "flood", "take", "patch", "add", "remove", "slide"];

/** The state in which a visit begins. `context` is what the page gives with the pattern: symbols, working diameter and its source. */
export function begin(pattern, context) {
  const every = repeat(chartOf(pattern)), length = pattern.to - pattern.from;
  return {
    pattern, history: EMPTY, context,
    tool: "place", colour: Math.min(1, pattern.palette.length - 1),
    reach: every > 1 && every < length ? "every" : "one", every: every > 1 ? every : length,
    passes: 1, signs: false, turn: 180,
    cursor: 0, under: -1, from: -1, patch: null, copy: null, floating: null,
    camera: START,
  };
}

let last = {};

/** The displayed beads of a state; worked out anew only when they may have changed. */
export function beadsOf({ pattern, passes }) {
  if (last.pattern !== pattern || last.passes !== passes) last = { pattern, passes, beads: displayed(pattern, passes) };
  return last.beads;
}

/** What changes with a step: the pattern, its name in the history, and all that must still fit the pattern. */
export function edited(state, name, pattern) {
  return pattern === state.pattern ? {} : { ...fitted(state, pattern), history: record(state.history, name, state.pattern, pattern) };
}

/** As `edited`, for a pattern that takes the place of the other without a step of its own: part of a stroke. */
export function fitted(state, pattern) {
  if (recoloured(state.pattern, pattern)) return { pattern };
  const passes = Math.min(state.passes, mostPasses(pattern)), length = pattern.to - pattern.from;
  const total = beadsOf({ pattern, passes }).length, same = state.pattern.around === pattern.around;
  return { pattern, passes, colour: Math.min(state.colour, pattern.palette.length - 1), every: Math.min(state.every, length),
           cursor: Math.min(state.cursor, total - 1), under: -1, from: -1, patch: null, floating: null,
           copy: same && state.pattern.palette === pattern.palette ? state.copy : null, camera: within(pattern, total, state.camera) };
}

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

/** Drawn beads that a stroke over displayed places reaches: in every repeat, where that is chosen. */
export function reached({ pattern, passes, reach, every }, places) {
  const own = places.map(place => drawnPlace(pattern, passes, place));
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
