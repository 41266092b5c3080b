// The whole piece: asks the server how the parts lie in a size, shows it in chart and rope, and says what a seam turns.

import { ask } from "../../server.js";
import { within } from "../camera.js";
import { chosen } from "../craft/parts.js";
import { counted, plain } from "../craft/words.js";
import { beadsOf } from "../state.js";

const PAUSE = 250;

export function piece(root, store) {
  const strip = root.querySelector("[data-parts]"), find = name => strip.querySelector(`[data-${name}]`),
    whole = find("whole"), length = find("piece-length"), closure = find("piece-closure"), words = find("piece-words"), seams = find("seams");
  let known = null, asked = 0, waiting = 0;

  const sooner = () => { clearTimeout(waiting); waiting = setTimeout(look, PAUSE); };

  async function look() {
    const { pattern } = store.state, mine = ++asked;
    if (pattern.parts.length === 1) return show(null, pattern);
    await root.saving.settled();
    const query = new URLSearchParams({ length: length.value.trim(), closure: closure.value });
    try {
      const { status, body } = await ask(`${root.dataset.piece}?${query}`);
      if (mine !== asked) return;
      if (store.state.pattern.parts !== pattern.parts) return sooner();
      show(status === 200 ? body : null, pattern, status === 200 ? "" : body?.error?.message);
    } catch {
      if (mine === asked) show(null, pattern, "The server does not answer; the whole piece is shown when it does.");
    }
  }

  function show(body, pattern, sentence = "") {
    known = body && { body, parts: pattern.parts };
    words.textContent = sentence || (body ? `${counted(body.beads, "bead")}, ${plain(body.finished_mm / 10, 1)} cm. ${body.words}` : "");
    words.classList.toggle("wrong", Boolean(sentence));
    tell();
    lay();
  }

  /** What the seam before the chosen part turns. */
  function tell() {
    const { pattern } = store.state, parts = known?.parts === pattern.parts ? known.body.parts : [];
    const before = parts[pattern.at]?.seam;
    seams.textContent = before ? `“${chosen(pattern).name}” begins ${before.words}.` : "";
  }

  function lay() {
    const { state } = store, fits = whole.checked && known?.parts === state.pattern.parts;
    const row = fits ? known.body.parts.map(({ begins, beads }, part) => ({ part, first: begins, beads })).filter(({ beads }) => beads) : null;
    if (!row && !state.whole) return;
    const total = beadsOf({ ...state, whole: row }).length, cursor = Math.min(state.cursor, total - 1);
    store.set({ whole: row, under: -1, from: -1, patch: null, floating: null, cursor, camera: within(state.pattern, total, state.camera) });
  }

  whole.addEventListener("change", lay);
  for (const field of [length, closure]) field.addEventListener("input", sooner);
  store.listen((state, before) => {
    if (state.pattern.parts !== before.pattern.parts || state.pattern.around !== before.pattern.around) sooner();
    else if (state.pattern.at !== before.pattern.at) tell();
  });
  sooner();
}
