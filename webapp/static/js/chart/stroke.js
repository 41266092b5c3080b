// A stroke: all that it paints from press to release is one step. No page in here.

import { record } from "./craft/history.js";
import { paint } from "./edits/paint.js";
import { slide } from "./edits/slide.js";
import { fitted, reached } from "./state.js";

export class Stroke {
  constructor(store) {
    this.store = store;
    this.before = store.state.pattern;
  }

  /** Paints displayed places on top of what the stroke has painted. */
  paint(places) {
    const { state } = this.store;
    this.#show(paint(state.pattern, reached(state, places), state.colour));
  }

  /** Slides the chart as it was before the stroke. */
  slide(by) { this.#show(slide(this.before, by)); }

  end(name) {
    const { pattern, history } = this.store.state;
    if (pattern !== this.before) this.store.set({ history: record(history, name, this.before, pattern) });
  }

  cancel() { this.#show(this.before); }

  #show(pattern) {
    const { state } = this.store;
    if (pattern !== state.pattern) this.store.set(fitted(state, pattern));
  }
}
