// Every step of a visit with its name, back and again without end. No page in here.
//
// A step that only recolours beads keeps those beads; any other keeps the pattern before and after, which share most.

export const EMPTY = { done: [], undone: [] };

/** The history with one step more. */
export function record(history, name, before, after) {
  return { done: [...history.done, { name, ...difference(before, after) }], undone: [] };
}

/** History and pattern one step back; as they are where there is none. */
export function back({ done, undone }, pattern) {
  const step = done.at(-1);
  if (!step) return { history: { done, undone }, pattern };
  return { history: { done: done.slice(0, -1), undone: [step, ...undone] }, pattern: applied(pattern, step, step.was) };
}

/** History and pattern one step on again. */
export function again({ done, undone }, pattern) {
  const [step, ...rest] = undone;
  if (!step) return { history: { done, undone }, pattern };
  return { history: { done: [...done, step], undone: rest }, pattern: applied(pattern, step, step.now) };
}

/** Places at which two arrays of one length differ. */
export function changed(before, after) {
  const places = [];
  if (before !== after) for (let k = 0; k < after.length; k++) if (before[k] !== after[k]) places.push(k);
  return places;
}

/** Whether only beads were recoloured between two patterns. */
export const recoloured = (before, after) => before.around === after.around && before.palette === after.palette && before.words === after.words &&
  before.hand === after.hand && before.parts === after.parts && before.at === after.at && before.beads.length === after.beads.length;

function difference(before, after) {
  if (!recoloured(before, after)) return { was: before, now: after };
  const places = Uint32Array.from(changed(before.beads, after.beads)),
    pick = pattern => Uint8Array.from(places, k => pattern.beads[k]);
  return { places, was: pick(before), now: pick(after) };
}

function applied(pattern, step, state) {
  if (!step.places) return state;
  const beads = pattern.beads.slice();
  step.places.forEach((k, i) => { beads[k] = state[i]; });
  return { ...pattern, beads };
}
