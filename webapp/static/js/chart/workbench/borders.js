// Borders of the chosen part are dragged over the chart: beads go from one part to its neighbour.

import { cell } from "../craft/lattice.js";
import { drawnPlace } from "../craft/displayed.js";
import { record } from "../craft/history.js";
import { setBorders } from "../edits/parts.js";
import { fitted, piecesOf } from "../state.js";

const NEAR = 7;      // CSS pixels

/** Which border of the chosen part lies under a point of the chart, in columns and half beads: "from", "to" or nothing. */
export function borderAt({ pattern, camera, whole, passes }, { x, half }) {
  if (pattern.parts.length === 1 || whole || passes > 1) return "";
  const { around, hand, beads } = pattern;
  const near = border => {
    if (!border || border === beads.length) return false;
    const { column, half: edge } = cell(around, hand, border), before = hand === "left" ? half >= edge + 2 : half < edge;
    return Math.abs(x - column - (before ? 1 : 0)) * camera.pitch <= NEAR * camera.ratio;
  };
  return near(pattern.to) ? "to" : near(pattern.from) ? "from" : "";
}

/** What dragging does from press to release, as a tool's act. */
export function draggingBorder(store, side) {
  const before = store.state.pattern;
  return {
    move(to) {
      if (to < 0) return;
      const k = drawnPlace(piecesOf(store.state), to), [from, until] = side === "from" ? [k, before.to] : [before.from, k];
      const moved = setBorders(before, Math.min(from, before.to - 1), Math.max(until, before.from + 1));
      if (moved !== store.state.pattern) store.set(fitted(store.state, moved));
    },
    end() {
      const { pattern, history } = store.state;
      if (pattern !== before) store.set({ history: record(history, "Move a border", before, pattern) });
    },
    cancel: () => store.set(fitted(store.state, before)),
  };
}
