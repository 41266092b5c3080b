// Runs as text, "3A B 12C", and back: the form in which the server keeps beads. No page in here.

/** The text of the beads in working order; a count of one is left out. */
export function write(beads, codes) {
  const entries = [];
  for (const [index, count] of runs(beads)) entries.push(count === 1 ? codes[index] : count + codes[index]);
  return entries.join(" ");
}

/** Palette indices of a text of runs. */
export function read(text, codes) {
  const index = new Map(codes.map((code, i) => [code, i])), entries = [];
  let length = 0;
  for (const [, count, code] of text.matchAll(/(\d*)([A-Z]+)/g)) {
    entries.push([index.get(code), Number(count || 1)]);
    length += entries.at(-1)[1];
  }
  const beads = new Uint8Array(length);
  let at = 0;
  for (const [colour, count] of entries) beads.fill(colour, at, at += count);
  return beads;
}

/** Consecutive beads of one colour: [palette index, count]. */
export function* runs(beads) {
  for (let at = 0; at < beads.length;) {
    let end = at + 1;
    while (end < beads.length && beads[end] === beads[at]) end++;
    yield [beads[at], end - at];
    at = end;
  }
}
