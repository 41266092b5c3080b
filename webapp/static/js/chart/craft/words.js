// Numbers and beads in words, as people read them: counted from one, thousands apart. No page in here.

import { COLOUR, drawnPlace, follows, isOneOfPasses, passAt, pieceAt } from "./displayed.js";
import { place } from "./lattice.js";
import { nameInWords } from "./parts.js";

// made once: what toLocaleString makes anew costs more than the rest of a ruler
const FORMATS = [0, 1, 2].map(places => new Intl.NumberFormat("en", { maximumFractionDigits: places }));

export const count = number => FORMATS[0].format(number);
export const plain = (number, places) => FORMATS[places].format(number);
export const counted = (number, one, many = `${one}s`) => `${count(number)} ${number === 1 ? one : many}`;
const signed = number => (number < 0 ? `−${plain(-number, 1)}` : `+${plain(number, 1)}`);

/** The drift of a pass in words. */
export const driftInWords = ({ beads, degrees }) => 
  (beads ? `${signed(beads)} ${Math.abs(beads) === 1 ? "bead" : "beads"}, ${signed(Math.round(degrees))}°` : "none");

/** A bead by its code, its number in its part, and its round and place in the round along the rope; `row` are the displayed
 *  pieces. One that follows them is told by the bead that it says again, and its pass. */
export function beadInWords(pattern, row, at) {
  const { part, from, length } = pieceAt(row, at), drawn = drawnPlace(row, at), entry = pattern.palette[pattern.beads[drawn]];
  const pass = isOneOfPasses(row, at) ? ` · pass ${count(passAt(row, at))}` : "";
  const whole = pattern.parts.length > 1 ? ` of ${nameInWords(pattern, pattern.parts[part])}` : "";
  const round = follows(row, at) ? "" : ` · round ${count(Math.floor(at / pattern.around) + 1)}, place ${(at % pattern.around) + 1}`;
  return `${wordsOf(entry)} · bead ${count(drawn - from + 1)} of ${count(length)}${whole}${round}${pass}`;
}

/** Words at least as long as those of any bead: the longest name at the last bead of the piece that needs most. */
export function longestInWords(pattern, row) {
  const longer = (one, other) => (other.length > one.length ? other : one);
  const name = pattern.palette.map(wordsOf).reduce(longer);
  const words = row.map(piece => beadInWords(pattern, row, piece.at + piece.beads - 1));
  return name + words.map(one => one.slice(one.indexOf(" · bead "))).reduce(longer);
}

const wordsOf = ({ code, name }) => `${code} ${name}`;

/** The bead under the cursor with its row, and the six it touches, as it is said. */
export function spoken(pattern, pieces, beads, at) {
  const { around, hand } = pattern, code = k => (k >= 0 && k < beads.length ? pattern.palette[beads[k] & COLOUR].code : "none");
  const [up, down] = hand === "left" ? [1, -1] : [-1, 1],
    [near, far] = hand === "left" ? [around, around + 1] : [around + 1, around];
  const bead = beadInWords(pattern, pieces, at).replaceAll(" · ", ", "), row = count(place(around, at).row + 1);
  return `${bead}, row ${row}. Above ${code(at + up)}, below ${code(at + down)}, ` +
    `left ${code(at - near)} and ${code(at - far)}, right ${code(at + far)} and ${code(at + near)}.`;
}
