// Beads in another colour: Place, Line and Flood come down to this. No page in here.

import { neighbours } from "../craft/lattice.js";
import { COLOUR } from "../craft/displayed.js";

/** The pattern with those drawn beads in that colour; itself where nothing would change. */
export function paint(pattern, places, colour) {
  const change = places.filter(k => pattern.beads[k] !== colour);
  if (!change.length) return pattern;
  const beads = pattern.beads.slice();
  for (const k of change) beads[k] = colour;
  return { ...pattern, beads };
}

/** The pattern with beads of their own colours: pairs of drawn bead and colour. */
export function place(pattern, pairs) {
  const beads = pattern.beads.slice();
  for (const [k, colour] of pairs) beads[k] = colour;
  return { ...pattern, beads };
}

/** The same places of the chosen part in every repeat of that many beads. */
export function inEveryRepeat({ from, to }, places, every) {
  const all = [];
  for (const rest of new Set(places.map(k => (k - from) % every))) for (let k = from + rest; k < to; k += every) all.push(k);
  return all;
}

/** Displayed places that hang together with a place and have its colour. */
export function connected(around, beads, at) {
  const colour = beads[at] & COLOUR, seen = new Uint8Array(beads.length), connectedPlaces = [], waiting = [at];
  seen[at] = 1;
  while (waiting.length) {
    const k = waiting.pop();
    connectedPlaces.push(k);
    for (const next of neighbours(around, k)) {
      if (next >= beads.length || seen[next] || (beads[next] & COLOUR) !== colour) continue;
      seen[next] = 1;
      waiting.push(next);
    }
  }
  return connectedPlaces.sort((a, b) => a - b);
}

/** Displayed places of the colour that stands at a place. */
export function ofThatColour(beads, at) {
  const colour = beads[at] & COLOUR, alike = [];
  for (let k = 0; k < beads.length; k++) if ((beads[k] & COLOUR) === colour) alike.push(k);
  return alike;
}
