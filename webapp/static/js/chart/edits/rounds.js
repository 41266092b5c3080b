// Rounds and pairs of rows that come in or go, and how long the chart is. No page in here.
//
// N beads are a round and move what follows half a bead across; 2N + 1 are a pair of rows and leave it where it is.

import { joined, MOST_BEADS } from "../craft/pattern.js";
import { partOf } from "../craft/displayed.js";

export const UNITS = { rounds: around => around, pairs: around => 2 * around + 1 };

/** Adds beads before drawn bead `at`, or after it; they belong to its part. Copies of the beads before, or one colour.
 *  The pattern itself where it would become too long. */
export function add(pattern, at, length, { after = false, colour = null } = {}) {
  if (pattern.beads.length + length > MOST_BEADS) return pattern;
  const cut = at + (after ? 1 : 0), part = partOf(pattern, at), { beads, from, to } = pattern;
  const fresh = new Uint8Array(length).fill(colour ?? 0);
  if (colour === null) for (let i = 0; i < length; i++) fresh[i] = beads[before(cut, i, length, beads.length)];
  return { ...pattern, beads: joined(beads.subarray(0, cut), fresh, beads.subarray(cut)),
           from: from + (part === "start" ? length : 0), to: to + (part === "end" ? 0 : length) };
}

// copies of the stretch before the cut; where there is none, of the stretch behind it
const before = (cut, i, length, total) => (cut >= length ? cut - length + i : Math.min(total - 1, cut + i));

/** Removes beads from drawn bead `at` on, as many as there are. The pattern itself where no chart would be left. */
export function remove(pattern, at, length) {
  const { beads, from, to } = pattern, end = Math.min(beads.length, at + length);
  const gone = mark => Math.max(0, Math.min(mark, end) - Math.min(mark, at));
  const marks = { from: from - gone(from), to: to - gone(to) };
  if (marks.to - marks.from < 1) return pattern;
  return { ...pattern, beads: joined(beads.subarray(0, at), beads.subarray(end)), ...marks };
}

/** The pattern whose chart has that many beads: cut at its end, or longer by beads of a colour. */
export function setLength(pattern, length, colour) {
  const { from, to } = pattern, now = to - from;
  if (length < now) return remove(pattern, from + length, now - length);
  return length > now ? add(pattern, to - 1, length - now, { after: true, colour }) : pattern;
}

/** The pattern whose chart runs from a drawn bead until before another; the beads stay where they are. */
export function setMarks(pattern, from, to) {
  const first = Math.max(0, Math.min(from, pattern.beads.length - 1)),
    last = Math.max(first + 1, Math.min(to, pattern.beads.length));
  return first === pattern.from && last === pattern.to ? pattern : { ...pattern, from: first, to: last };
}
