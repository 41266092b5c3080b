// The steps of a visit as text and back, so that they outlive a reload of the page. No page in here.

import { EMPTY } from "./history.js";
import { fromDocument, same, toDocument } from "./pattern.js";

export const MOST_LETTERS = 2_000_000;      // beyond it the oldest steps are left out

/** The text of a history and of the pattern that it leads to. */
export function writeHistory({ done, undone }, pattern) {
  const [back, on] = [done, undone].map(steps => steps.map(step => JSON.stringify(packed(step)))), kept = [];
  let letters = on.join().length;
  for (let i = back.length - 1; i >= 0 && letters + back[i].length <= MOST_LETTERS; i--) {
    letters += back[i].length + 1;
    kept.unshift(back[i]);
  }
  return `{"pattern":${JSON.stringify(toDocument(pattern))},"done":[${kept.join()}],"undone":[${on.join()}]}`;
}

/** The history of a text; empty where the text is none, or leads to another pattern than this. */
export function readHistory(text, pattern) {
  try {
    const kept = JSON.parse(text);
    if (!same(fromDocument(kept.pattern), pattern)) return EMPTY;
    return { done: kept.done.map(unpacked), undone: kept.undone.map(unpacked) };
  } catch {
    return EMPTY;
  }
}

function packed({ name, places, was, now }) {
  if (!places) return { name, was: toDocument(was), now: toDocument(now) };
  return { name, places: [...places], was: [...was], now: [...now] };
}

function unpacked({ name, places, was, now }) {
  if (!places) return { name, was: fromDocument(was), now: fromDocument(now) };
  return { name, places: Uint32Array.from(places), was: Uint8Array.from(was), now: Uint8Array.from(now) };
}
