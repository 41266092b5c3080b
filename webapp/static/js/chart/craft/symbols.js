// Which symbol each entry of a palette takes: the one it names, else the next that is free. No page in here.

/** Outlines in palette order; `symbols` are pairs of name and outline in order of assignment. */
export function assigned(palette, symbols) {
  const outlines = new Map(symbols), named = new Map();
  palette.forEach((entry, i) => { if (outlines.has(entry.symbol) && !named.has(entry.symbol)) named.set(entry.symbol, i); });
  const free = symbols.filter(([name]) => !named.has(name)).map(([, outline]) => outline);
  return palette.map((entry, i) => (named.get(entry.symbol) === i ? outlines.get(entry.symbol) : free.shift()));
}
