// Patterns told in letters.

import { parted } from "/static/js/chart/craft/parts.js";

export const LETTERS = "ABCDEFGHIJ";

export function pattern(letters, around, others = {}) {
  const beads = Uint8Array.from(letters, letter => LETTERS.indexOf(letter)), used = Math.max(2, ...beads);
  const palette = [...LETTERS.slice(0, used + 1)].map(code => ({ code, name: `Bead ${code}`, colour: "#336699", finish: "opaque", kind: "11/0 round", symbol: "", maker_code: "", bead: "" }));
  const words = { title: "Trial", stitch: "", designer: "", notes: "", tags: [] };
  return { ...parted({ words, hand: "right", around, palette, beads, short: true }, [{ name: "Chart", times: "fill", length: beads.length }], 0), ...others };
}

/** Start, chart and end told as "AA|BBB|C", the chart chosen; either of the others may be empty. */
export function threeParts(text, around) {
  const all = text.split("|").map((part, i) => ({ name: ["Start", "Chart", "End"][i], times: i === 1 ? "fill" : 1, length: part.length }));
  const parts = all.filter(({ length }) => length);
  return parted(pattern(text.replaceAll("|", ""), around), parts, parts.findIndex(({ name }) => name === "Chart"));
}

/** Parts by name, told as { Head: ["ABC", 2], Body: ["AB", "fill"] }, the first chosen. */
export function inParts(told, around) {
  const parts = Object.entries(told).map(([name, [text, times]]) => ({ name, times, length: text.length }));
  return parted({ ...pattern(Object.values(told).map(([text]) => text).join(""), around), short: false }, parts, 0);
}

/** Names, times and letters of every part, and which is chosen: "Head 2 ABC | *Body fill AB". */
export function told({ parts, beads, at }) {
  let from = 0;
  return parts.map(({ name, times, length }, i) => `${i === at ? "*" : ""}${name} ${times} ${letters(beads.subarray(from, from += length))}`).join(" | ");
}

export const letters = beads => [...beads].map(bead => LETTERS[bead]).join("");
