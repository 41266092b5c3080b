// Names the bead under the pointer, or under the cursor; the cursor's bead and its neighbours are announced when it moves.

import { beadInWords, longestInWords, spoken } from "../craft/words.js";
import { beadsOf } from "../state.js";

export function status(root, store) {
  const line = root.querySelector("[data-status]"), heard = root.querySelector("[data-heard]"),
    chart = root.querySelector("[data-chart]"), calm = line.textContent;

  /** Room for the longest words that may come, so that they are never cut and nothing moves when they are. */
  const reserve = () => {
    const { pattern, passes } = store.state, words = line.textContent;
    line.style.minHeight = "0";
    line.textContent = longestInWords(pattern, passes, beadsOf(store.state));
    line.style.minHeight = `${line.offsetHeight}px`;
    line.textContent = words;
  };
  let width = 0;
  new ResizeObserver(() => {
    if (line.clientWidth === width) return;
    width = line.clientWidth;
    reserve();
  }).observe(line);

  const show = () => {
    const { pattern, passes, under, cursor } = store.state,
      at = under >= 0 ? under : document.activeElement === chart ? cursor : -1;
    line.textContent = at < 0 ? calm : beadInWords(pattern, passes, beadsOf(store.state), at);
  };
  const say = () => {
    const { pattern, passes, cursor, under } = store.state;
    if (document.activeElement === chart && under < 0) heard.textContent = spoken(pattern, passes, beadsOf(store.state), cursor);
  };
  store.listen((state, before) => {
    if (["under", "cursor", "pattern", "passes"].some(name => state[name] !== before[name])) show();
    if (state.pattern.palette !== before.pattern.palette || state.passes !== before.passes ||
        state.pattern.beads.length !== before.pattern.beads.length) reserve();
    if (state.cursor !== before.cursor || state.pattern !== before.pattern) say();
  });
  for (const name of ["focus", "blur"]) chart.addEventListener(name, show);
}

/** Says a sentence aloud, and nothing else. */
export function announce(root, sentence) { root.querySelector("[data-heard]").textContent = sentence; }
