// How the six finishes answer the light, and look-up tables of a palette for the rope. No page in here.

import { linear, mixed, rgb, screen } from "./colour.js";
import { DIM } from "../craft/displayed.js";

/** body: light thrown back; shine: mirror of lamp and window; glow: light that goes through; metal: how far the mirror
 *  takes the bead's colour; play: pearl's change of colour with the angle; lining: a coloured hole in clear glass. */
export const FINISH = {
  opaque: { body: 1, shine: 0.85, glow: 0, metal: 0, play: 0, lining: 0 },
  matte: { body: 1.05, shine: 0.06, glow: 0, metal: 0, play: 0, lining: 0 },
  transparent: { body: 0.6, shine: 1.05, glow: 1, metal: 0, play: 0, lining: 0 },
  metallic: { body: 0.66, shine: 1.2, glow: 0, metal: 0.8, play: 0, lining: 0 },
  pearl: { body: 0.96, shine: 0.6, glow: 0.2, metal: 0.2, play: 1, lining: 0 },
  lined: { body: 0.95, shine: 1.05, glow: 0, metal: 0, play: 0, lining: 1 },
};
const GLASS = [214, 218, 220], PEARL_EDGE = [214, 196, 232], FADED = 0.58;

/** Tables for `shadeOf`: every palette entry, and at DIM and above the same entries faded into the ground. */
export function tables(palette, ground) {
  const size = DIM + palette.length, made = { entries: palette.length,
    body: new Uint8ClampedArray(size * 768), shine: new Float32Array(size * 4), glow: new Float32Array(size * 4), deep: new Float32Array(size * 5) };
  palette.forEach((entry, index) => {
    fill(made, index, entry, 0, ground);
    fill(made, DIM + index, entry, FADED, ground);
  });
  return made;
}

function fill(made, value, { colour, finish }, fade, ground) {
  const form = FINISH[finish], own = rgb(colour), faded = parts => mixed(parts, ground, fade);
  const lit = form.lining ? mixed(GLASS, own, 0.25) : own;
  for (let light = 0; light < 256; light++)
    made.body.set(faded(lit.map(part => screen(Math.min(1, linear(part) * (light / 205) * form.body + 0.00003 * light)))), (value * 256 + light) * 3);
  const mirror = mixed([255, 255, 255], own.map(part => Math.min(255, part * 1.25 + 50)), form.metal);
  made.shine.set([...faded(mirror), form.shine * (1 - fade)], value * 4);
  made.glow.set([...faded(own.map(part => Math.min(255, part * 1.18 + 26))), form.glow], value * 4);
  // seen in the depth of a lined bead, at the edge of a pearl; the last number tells which: 1 and 2, 0 for neither
  made.deep.set([...faded(form.lining ? own : PEARL_EDGE), form.lining ? 0.95 : form.play * 0.5, form.lining ? 1 : form.play ? 2 : 0], value * 5);
}

