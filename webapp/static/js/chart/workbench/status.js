// Names the bead under the pointer, or under the cursor; the cursor's bead and its neighbours are announced when it moves.

import { beadInWords, longestInWords, spoken } from "../craft/words.js";
import { beadsOf, displaysAnew, piecesOf } from "../state.js";

export function status(root, store) {
  const line = root.querySelector("[data-status]"), heard = root.querySelector("[data-heard]"),
    chart = root.querySelector("[data-chart]"), calm = [...line.childNodes];

  /** Room for the longest words that may come, at least that of the style sheet, so that they are never cut and nothing moves when they are. */
  const reserve = () => {
    const words = [...line.childNodes];
    line.style.minHeight = "";
    line.textContent = longestInWords(store.state.pattern, piecesOf(store.state));
    line.style.minHeight = `${line.offsetHeight}px`;
    line.replaceChildren(...words);
  };
  let width = 0;
  const measure = () => {
    if (line.clientWidth === width) return;
    width = line.clientWidth;
    reserve();
  };
  measure();
  new ResizeObserver(measure).observe(line);

  const show = () => {
    const { pattern, under, cursor } = store.state,
      at = under >= 0 ? under : document.activeElement === chart ? cursor : -1;
    line.replaceChildren(...(at < 0 ? calm : [beadInWords(pattern, piecesOf(store.state), at)]));
  };
  const say = () => {
    const { pattern, cursor, under } = store.state;
    if (document.activeElement === chart && under < 0) heard.textContent = spoken(pattern, piecesOf(store.state), beadsOf(store.state), cursor);
  };
  store.listen((state, before) => {
    if (displaysAnew(state, before) || ["under", "cursor"].some(name => state[name] !== before[name])) show();
    if (["palette", "parts"].some(name => state.pattern[name] !== before.pattern[name]) ||
        ["passes", "whole"].some(name => state[name] !== before[name])) reserve();
    if (state.cursor !== before.cursor || state.pattern !== before.pattern) say();
  });
  for (const name of ["focus", "blur"]) chart.addEventListener(name, show);
}

/** Says a sentence aloud, and nothing else. */
export function announce(root, sentence) { root.querySelector("[data-heard]").textContent = sentence; }
