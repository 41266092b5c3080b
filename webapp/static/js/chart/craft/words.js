// Numbers and beads in words, as people read them: counted from one, thousands apart. No page in here.

import { drawnPlace, partOf, COLOUR } from "./displayed.js";
import { place } from "./lattice.js";

export const count = number => number.toLocaleString("en", { maximumFractionDigits: 0 });
export const plain = (number, places) => number.toLocaleString("en", { maximumFractionDigits: places });
export const counted = (number, one, many = `${one}s`) => `${count(number)} ${number === 1 ? one : many}`;
const signed = number => (number < 0 ? `−${plain(-number, 1)}` : `+${plain(number, 1)}`);

/** The drift of a pass in words. */
export const driftInWords = ({ beads, degrees }) => 
  (beads ? `${signed(beads)} ${Math.abs(beads) === 1 ? "bead" : "beads"}, ${signed(Math.round(degrees))}°` : "none");

/** A bead by its code, its number in its part, and its round and place in the round along the rope. */
export function beadInWords(pattern, passes, beads, at) {
  const k = drawnPlace(pattern, passes, at), entry = pattern.palette[beads[at] & COLOUR], part = partOf(pattern, k);
  const { from, to, beads: { length: all } } = pattern;
  const [first, length] = { start: [0, from], chart: [from, to - from], end: [to, all - to] }[part];
  const pass = part === "chart" && passes > 1 ? ` · pass ${Math.floor((at - from) / length) + 1}` : "";
  const whole = part === "chart" && from === 0 && to === all ? "" : ` of the ${part}`;
  const round = `round ${count(Math.floor(at / pattern.around) + 1)}, place ${(at % pattern.around) + 1}`;
  return `${wordsOf(entry)} · bead ${count(k - first + 1)} of ${count(length)}${whole} · ${round}${pass}`;
}

/** Words at least as long as those of any bead: the longest name at the bead with the longest numbers. */
export function longestInWords(pattern, passes, beads) {
  const longest = pattern.palette.reduce((most, entry) => (wordsOf(entry).length > wordsOf(most).length ? entry : most));
  const at = Math.max(0, (passes > 1 ? beads.length - (pattern.beads.length - pattern.to) : beads.length) - 1);
  const words = beadInWords(pattern, passes, beads, at);
  return wordsOf(longest) + words.slice(words.indexOf(" · bead "));
}

const wordsOf = ({ code, name }) => `${code} ${name}`;

/** The bead under the cursor with its row, and the six it touches, as it is said. */
export function spoken(pattern, passes, beads, at) {
  const { around, hand } = pattern, code = k => (k >= 0 && k < beads.length ? pattern.palette[beads[k] & COLOUR].code : "none");
  const [up, down] = hand === "left" ? [1, -1] : [-1, 1],
    [near, far] = hand === "left" ? [around, around + 1] : [around + 1, around];
  const bead = beadInWords(pattern, passes, beads, at).replaceAll(" · ", ", "), row = count(place(around, at).row + 1);
  return `${bead}, row ${row}. Above ${code(at + up)}, below ${code(at + down)}, ` +
    `left ${code(at - near)} and ${code(at - far)}, right ${code(at + far)} and ${code(at + near)}.`;
}
