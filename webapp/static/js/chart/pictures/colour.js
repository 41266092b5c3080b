// Colours as numbers: hexadecimal text, linear light, and the ink that reads on a colour. No page in here.

export const clamp = value => (value < 0 ? 0 : value > 1 ? 1 : value);
export const rgb = hex => [1, 3, 5].map(i => Number.parseInt(hex.slice(i, i + 2), 16));
export const packed = ([r, g, b]) => ((255 << 24) | (b << 16) | (g << 8) | r) >>> 0;      // as an image keeps it
export const mixed = (one, other, share) => one.map((part, i) => part + (other[i] - part) * share);
export const linear = part => (part <= 10.31475 ? part / 3294.6 : ((part / 255 + 0.055) / 1.055) ** 2.4);
export const screen = light => 255 * (light <= 0.0031308 ? light * 12.92 : 1.055 * clamp(light) ** (1 / 2.4) - 0.055);

const INK = "#20242a", PAPER = "#ffffff", BLACK = "#000000", LEAST_CONTRAST = 4.5;
const luminance = hex => rgb(hex).map(linear).reduce((sum, light, i) => sum + light * [0.2126, 0.7152, 0.0722][i], 0);

export function contrast(one, other) {
  const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}

/** The ink that reads on a colour: dark or white, black where neither is enough. */
export function inkOn(colour) {
  const ink = contrast(INK, colour) >= contrast(PAPER, colour) ? INK : PAPER;
  return contrast(ink, colour) >= LEAST_CONTRAST || contrast(ink, colour) >= contrast(BLACK, colour) ? ink : BLACK;
}
