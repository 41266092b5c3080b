// Rounds and pairs of rows that come in or go, and how long the chosen part is. No page in here.
//
// N beads are a round and move what follows half a bead across; 2N + 1 are a pair of rows and leave it where it is.

import { joined, MOST_BEADS } from "../craft/pattern.js";
import { chosen, partAt, parted, spans, wrongWith } from "../craft/parts.js";

export const UNITS = { rounds: around => around, pairs: around => 2 * around + 1 };

/** Adds beads before drawn bead `at`, or after it; they belong to its part. Copies of the beads before, or one colour.
 *  The pattern itself where it would become too long. */
export function add(pattern, at, length, { after = false, colour = null } = {}) {
  if (pattern.beads.length + length > MOST_BEADS) return pattern;
  const cut = at + (after ? 1 : 0), grown = partAt(pattern, at), { beads } = pattern;
  const fresh = new Uint8Array(length).fill(colour ?? 0);
  if (colour === null) for (let i = 0; i < length; i++) fresh[i] = beads[before(cut, i, length, beads.length)];
  const parts = pattern.parts.map((part, i) => (i === grown ? { ...part, length: part.length + length } : part));
  return parted({ ...pattern, beads: joined(beads.subarray(0, cut), fresh, beads.subarray(cut)) }, parts);
}

// copies of the stretch before the cut; where there is none, of the stretch behind it
const before = (cut, i, length, total) => (cut >= length ? cut - length + i : Math.min(total - 1, cut + i));

/** Removes beads from drawn bead `at` on, as many as there are; a part that has none left is gone. The pattern itself where
 *  nothing would be left of the chosen part. */
export function remove(pattern, at, length) {
  const { beads } = pattern, end = Math.min(beads.length, at + length);
  const shorter = spans(pattern).map(({ name, times, from, to }) => {
    const gone = Math.max(0, Math.min(to, end) - Math.max(from, at));
    return { name, times, length: to - from - gone };
  });
  const left = shorter.filter(part => part.length), place = left.indexOf(shorter[pattern.at]);
  if (place < 0 || wrongWith(left)) return pattern;
  return parted({ ...pattern, beads: joined(beads.subarray(0, at), beads.subarray(end)) }, left, place);
}

/** The pattern whose chosen part has that many beads: cut at its end, or longer by beads of a colour. */
export function setLength(pattern, length, colour) {
  const { from, to } = pattern, now = chosen(pattern).length;
  if (length < now) return remove(pattern, from + length, now - length);
  return length > now ? add(pattern, to - 1, length - now, { after: true, colour }) : pattern;
}
