// Above the chart rounds and beads are counted, and parts named; under the rope lies a rule in centimetres.

import { cell } from "../craft/lattice.js";
import { helix } from "../craft/helix.js";
import { count } from "../craft/words.js";
import { follows, isOneOfPasses, passAt } from "../craft/displayed.js";
import { timesInWords } from "../craft/parts.js";
import { beadsOf, displaysAnew, drawnBeads, drawnPieces, piecesOf } from "../state.js";
import { ACCENT, fit, FONT, ink, onceAFrame, SOFT, whenInksChange } from "./canvas.js";

const ROUNDS = 40, RULE = 30, FOLLOWING = 0.55, NARROW = 12, LABEL = 116, FIRST = 10;

export function rulers(root, store) {
  const rounds = root.querySelector("[data-rounds]"), rule = root.querySelector("[data-rule]");

  const draw = () => {
    drawRounds();
    drawRule();
  };
  const later = onceAFrame(draw);
  store.listen((state, before) => {
    if (state.camera !== before.camera || displaysAnew(state, before)) later();
  });
  whenInksChange(later);
  document.fonts.ready.then(draw);
  draw();

  function drawRounds() {
    const { pattern: { around, hand }, camera: { left, pitch, width, ratio: d } } = store.state,
      total = drawnBeads(store.state).length, own = beadsOf(store.state).length;
    const pen = rounds.getContext("2d"), high = ROUNDS * d, apart = pitch * (around / (around + 0.5));
    fit(rounds, width, Math.round(high));
    pen.clearRect(0, 0, width, high);
    drawParts(pen);
    const step = [10, 20, 50, 100, 200, 500, 1000].find(many => many * apart > LABEL * d) ?? 2000;
    const first = Math.max(0, Math.floor(left / apart) - 1),
      last = Math.min(Math.ceil(total / around), Math.ceil((left + width) / apart) + 2);
    for (let round = first; round < last; round++) {
      const x = Math.round((cell(around, hand, round * around).column + 0.5) * pitch - left),
        labelled = (round + 1) % step === 0 || round === 0;
      if (!labelled && apart < 4 * d) continue;
      const long = labelled ? 9 : (round + 1) % 10 ? 4 : 6;
      pen.fillStyle = SOFT;
      pen.globalAlpha = round * around < own ? 1 : FOLLOWING;
      pen.fillRect(x, high - long * d, Math.max(1, Math.round(d)), long * d);
      if (labelled) label(pen, x, round, (round ? step * apart : (step - 1) * apart - FIRST * d) > LABEL * d, high);
    }
    pen.globalAlpha = 1;
  }

  /** The round, and where there is room its first bead: the second label stands a round nearer to the first than others do. */
  function label(pen, x, round, roomy, high) {
    const { pattern: { around }, camera: { ratio: d } } = store.state;
    const at = Math.max(x, 4 * d), words = round ? count(round + 1) : "round 1";
    pen.textAlign = round ? "center" : "left";
    pen.font = `${14 * d}px ${FONT}`;
    pen.fillText(words, at, high - 12 * d);
    const wide = pen.measureText(words).width;
    if (!roomy) return;
    pen.font = `${11.5 * d}px ${FONT}`;
    pen.textAlign = "left";
    pen.fillText(`bead ${count(round * around + 1)}`, round ? at + wide / 2 + 6 * d : at + wide + 6 * d, high - 12 * d);
  }

  function drawParts(pen) {
    const { pattern, whole, camera: { left, pitch, ratio: d } } = store.state, { around, parts, at: chosen } = pattern;
    const row = piecesOf(store.state), drawn = drawnPieces(store.state);
    for (const { part, at, beads, length } of whole ? drawn : drawn.flatMap(passes)) {
      const x = (at / (around + 0.5)) * pitch - left + 1.5 * d, wide = (beads / (around + 0.5)) * pitch - 3 * d;
      if (x > pen.canvas.width || x + wide < 0) continue;
      pen.fillStyle = part === chosen && !follows(row, at) ? ACCENT : SOFT;
      pen.fillRect(x, 0, wide, (follows(row, at) ? 1 : 3) * d);
      pen.font = `700 ${11.5 * d}px ${FONT}`;
      pen.textAlign = "left";
      if (!whole && beads > length) continue;
      const words = named(parts[part], at), room = Math.max(1, x + wide - Math.max(x, 4 * d));
      if (!isPass(at) || pen.measureText(words).width <= room) pen.fillText(words, Math.max(x, 4 * d), 14 * d, room);
    }

    function isPass(at) { return !whole && isOneOfPasses(row, at); }

    function named({ name, times }, at) {
      if (follows(row, at) || parts.length === 1) return drawn.length > 1 ? `pass ${count(passAt(row, at))}` : "";
      if (isPass(at)) return `${name}, pass ${count(passAt(row, at))}`;
      return times === 1 ? name : `${name} ${timesInWords(times)}`;
    }
  }

  /** A piece pass by pass, the last as far as it goes; in one where passes are too narrow to be told apart. */
  function passes(piece) {
    const { pattern: { around }, camera: { pitch, ratio: d } } = store.state;
    if ((piece.length / (around + 0.5)) * pitch < NARROW * d) return [piece];
    return Array.from({ length: Math.ceil(piece.beads / piece.length) }, (_, i) => (
      { ...piece, at: piece.at + i * piece.length, beads: Math.min(piece.length, piece.beads - i * piece.length) }));
  }

  function drawRule() {
    const { pattern: { around }, camera: { left, pitch, width, ratio: d }, context } = store.state,
      total = beadsOf(store.state).length;
    const pen = rule.getContext("2d"), high = RULE * d, mm = pitch / (helix(around).rise * (around + 0.5) * context.workingMm);
    const end = Math.min(width, (total / (around + 0.5)) * pitch - left), wash = ink("--brass-wash"), dark = ink("--brass-ink");
    fit(rule, width, Math.round(high));
    pen.clearRect(0, 0, width, high);
    pen.fillStyle = wash;
    pen.fillRect(0, 0, end, high);
    pen.fillStyle = dark;
    pen.fillRect(0, 0, end, Math.max(1, d));
    pen.font = `${14 * d}px ${FONT}`;
    const step = [10, 20, 50, 100, 200, 500].find(many => many * mm > 40 * d) ?? 1000;
    for (let i = Math.max(0, Math.floor(left / mm / step) * step); i * mm - left < end; i += mm >= 4 * d ? 1 : step > 10 ? step / 2 : 5) {
      const x = Math.round(i * mm - left);
      pen.fillRect(x, 0, Math.max(1, Math.round(d)), (i % step ? (i % 5 ? 6 : 10) : 16) * d);
      if (i % step === 0) pen.fillText(i ? count(i / 10) : "0 cm", x + 5 * d, high - 9 * d);
    }
  }
}
