
// Keeps places and looks on this device, and works on without where that is refused.

const MOST_STEPS_BACK = 60;

/** What is kept under a name; the value given where nothing is, or nothing that can be read. */
function kept(name, otherwise) {
  try {
    const value = JSON.parse(localStorage.getItem(name));
    return value !== null && typeof value === "object" ? value : otherwise;
  } catch {
    return otherwise;
  }
}

/** Keeps a value under a name; whether that was allowed. */
function keep(name, value) {
  try {
    localStorage.setItem(name, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

/**
 * Keeps a value where none is kept yet; whether keeping is allowed. What is there is not written again: it may be older
 * than what the page that was left a moment ago has kept, of which this one is still to hear.
 */
function keepFirst(name, value) {
  try {
    return localStorage.getItem(name) !== null || keep(name, value);
  } catch {
    return false;
  }
}

const within = (value, most) => Number.isInteger(value) ? Math.min(Math.max(value, 0), most) : 0;

/** A place inside the card: a thread, the items strung on it, the beads crocheted. */
function placeIn(card, place) {
  const thread = within(place?.thread, card.threads.length - 1);
  return { thread, step: within(place?.step, card.threads[thread].list.items.length), worked: within(place?.worked, card.rope.length) };
}

const today = () => new Date().toLocaleDateString("en-GB", { dateStyle: "medium" });

const newPiece = name => ({ name, begun: today(), place: { thread: 0, step: 0, worked: 0 }, rest: null, past: [] });

/** The pieces as they were kept, every place of them inside the card; at least one. */
function keptPieces(card, name) {
  const found = kept(name, {});
  const pieces = (Array.isArray(found.pieces) ? found.pieces : []).filter(piece => piece !== null && typeof piece === "object").map(piece => ({
    name: String(piece.name ?? "").slice(0, 60) || "Piece", begun: String(piece.begun ?? "").slice(0, 20),
    place: placeIn(card, piece.place), rest: piece.rest ? { ...placeIn(card, piece.rest), on: String(piece.rest.on ?? "") } : null,
    past: (Array.isArray(piece.past) ? piece.past : []).slice(-MOST_STEPS_BACK).map(place => placeIn(card, place)),
  }));
  if (!pieces.length) pieces.push(newPiece("Piece 1"));
  return { pieces, chosen: within(found.chosen, pieces.length - 1) };
}
