// Patterns told in letters.

export const LETTERS = "ABCDEFGHIJ";

export function pattern(letters, around, others = {}) {
  const beads = Uint8Array.from(letters, letter => LETTERS.indexOf(letter)), used = Math.max(2, ...beads);
  const palette = [...LETTERS.slice(0, used + 1)].map(code => ({ code, name: `Bead ${code}`, colour: "#336699", finish: "opaque", kind: "11/0 round", symbol: "", maker_code: "" }));
  const words = { title: "Trial", stitch: "", designer: "", notes: "", tags: [] };
  return { words, hand: "right", around, palette, beads, from: 0, to: beads.length, ...others };
}

export const letters = beads => [...beads].map(bead => LETTERS[bead]).join("");
