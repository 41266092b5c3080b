// Parts that come, go, move and meet elsewhere. Each gives the pattern itself where that cannot be. No page in here.

import { joined, MOST_BEADS } from "../craft/pattern.js";
import { chosen, END, FILL, LONGEST_NAME, parted, spans, START, wrongWith } from "../craft/parts.js";

const FRESH_PAIRS = 5;      // pairs of rows, so that what follows stays straight

/** The pattern with a new part of one colour after the chosen one, which is then chosen. */
export function addPart(pattern, colour) {
  const name = freeName(pattern, number => `Part ${number}`, pattern.parts.length + 1);
  return inserted(pattern, { name, times: 1 }, new Uint8Array(FRESH_PAIRS * (2 * pattern.around + 1)).fill(colour));
}

/** The pattern with the chosen part once more after itself, worked once where it fills. */
export function copyPart(pattern) {
  const { name, times } = chosen(pattern), copies = number => `${number > 1 ? `Copy ${number}` : "Copy"} of ${name}`.slice(0, LONGEST_NAME);
  return inserted(pattern, { name: freeName(pattern, copies, 1), times: times === FILL ? 1 : times }, pattern.beads.slice(pattern.from, pattern.to));
}

/** The pattern without the chosen part. */
export function removePart(pattern) {
  const parts = pattern.parts.toSpliced(pattern.at, 1);
  if (!parts.length || wrongWith(parts)) return pattern;
  const beads = joined(pattern.beads.subarray(0, pattern.from), pattern.beads.subarray(pattern.to));
  return parted({ ...pattern, beads }, parts, Math.max(0, pattern.at - 1));
}

/** The pattern with the chosen part as many places later, or earlier below nought. */
export function movePart(pattern, by) {
  const at = pattern.at + by;
  if (at < 0 || at >= pattern.parts.length) return pattern;
  const order = spans(pattern).toSpliced(pattern.at, 1).toSpliced(at, 0, spans(pattern)[pattern.at]);
  const parts = order.map(({ name, times, length }) => ({ name, times, length }));
  if (wrongWith(parts)) return pattern;
  return parted({ ...pattern, beads: joined(...order.map(({ from, to }) => pattern.beads.subarray(from, to))) }, parts, at);
}

/** The pattern whose chosen part is called so and worked so often. */
export function describePart(pattern, { name, times }) {
  const part = chosen(pattern);
  if (part.name === name && part.times === times) return pattern;
  const parts = pattern.parts.with(pattern.at, { ...part, name, times });
  return wrongWith(parts) ? pattern : parted(pattern, parts);
}

/** The pattern whose chosen part runs from a drawn bead until before another. The beads stay where they are: neighbours give
 *  and take them, one that has none left is gone, and where there is none, a start or an end begins. */
export function setBorders(pattern, from, to) {
  const all = spans(pattern), [before, part, after] = [-1, 0, 1].map(by => all[pattern.at + by]);
  const first = Math.max(before?.from ?? 0, Math.min(from, pattern.to - 1)),
    last = Math.max(first + 1, Math.min(to, after?.to ?? pattern.beads.length));
  if (first === pattern.from && last === pattern.to) return pattern;
  const row = [
    { ...(before ?? { name: START, times: 1 }), length: first - (before?.from ?? 0) },
    { ...part, length: last - first },
    { ...(after ?? { name: END, times: 1 }), length: (after?.to ?? pattern.beads.length) - last },
  ].map(({ name, times, length }) => ({ name, times, length }));
  const left = row.filter(({ length }) => length);
  const at = pattern.at - (before ? 1 : 0), parts = [...pattern.parts.slice(0, at), ...left, ...pattern.parts.slice(pattern.at + (after ? 2 : 1))];
  return wrongWith(parts) ? pattern : parted(pattern, parts, at + left.indexOf(row[1]));
}

function inserted(pattern, { name, times }, beads) {
  const parts = pattern.parts.toSpliced(pattern.at + 1, 0, { name, times, length: beads.length });
  if (wrongWith(parts) || pattern.beads.length + beads.length > MOST_BEADS) return pattern;
  return parted({ ...pattern, beads: joined(pattern.beads.subarray(0, pattern.to), beads, pattern.beads.subarray(pattern.to)) }, parts, pattern.at + 1);
}

function freeName({ parts }, named, number) {
  const taken = new Set(parts.map(({ name }) => name));
  while (taken.has(named(number))) number++;
  return named(number);
}
