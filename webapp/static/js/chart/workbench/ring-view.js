// The ring in its own view: closed at a number of repeats, turned, tilted and rolled; says so where WebGL2 is missing.

import { ringStep } from "../craft/facts.js";
import { displayed, pieces } from "../craft/displayed.js";
import { FILL, spans } from "../craft/parts.js";
import { drift, leastRing } from "../craft/repeats.js";
import { counted, driftInWords } from "../craft/words.js";
import { Pace, REST } from "../pictures/pace.js";
import { RingPicture } from "../pictures/ring-picture.js";
import { onceAFrame, ratio } from "./canvas.js";
import { number } from "./dialogs.js";
import { save } from "./save-picture.js";

const PER_SECOND = 20, MOST_BEADS = 40_000, LEAST_WORN = 400;
const still = matchMedia("(prefers-reduced-motion: reduce)");

export function ringView(root, store) {
  const dialog = document.getElementById("ring"), find = name => dialog.querySelector(`[data-${name}]`), canvas = find("ring");
  const repeats = find("ring-repeats"), yaw = find("ring-yaw"), tilt = find("ring-tilt"), roll = find("ring-roll"),
    spin = find("ring-spin"), mark = find("ring-mark");
  const pace = new Pace();
  let picture = null, movedAt = 0, resting = 0;

  const drawNow = () => {
    const [yawed, tilted, turn] = [yaw, tilt, roll].map(slider => (slider.value * Math.PI) / 180);
    if (dialog.open && picture) picture.draw({ yaw: yawed, tilt: tilted, turn, zoom: filling(canvas.width / canvas.height, tilted) });
  };
  const size = pixels => {
    const [width, height] = [canvas.clientWidth, canvas.clientHeight].map(side => Math.max(1, Math.round((side * ratio()) / pixels)));
    if (canvas.width !== width || canvas.height !== height) Object.assign(canvas, { width, height });
  };
  const drawFine = () => { size(1); drawNow(); };
  const draw = onceAFrame(drawFine);

  /** While it moves it may be drawn coarser; it is fine again once it rests. */
  const drawMoving = onceAFrame(() => {
    const now = performance.now();
    pace.frame(now - movedAt);
    movedAt = now;
    size(pace.coarse);
    drawNow();
    clearTimeout(resting);
    resting = setTimeout(drawFine, REST);
  });
  const load = () => {
    const beads = ringBeads(store.state, number(repeats), mark.checked);
    const turn = driftInWords(drift(store.state.pattern.around, beads.length));
    find("ring-words").textContent = `${counted(beads.length, "bead")}, closing turn ${turn}`;
    picture?.load(store.state.pattern, beads);
    draw();
  };

  dialog.addEventListener("opening", () => {
    try {
      picture ??= new RingPicture(canvas);
    } catch {
      canvas.hidden = true;
      find("no-ring").hidden = false;
    }
    repeats.max = mostRepeats(store.state.pattern);
    repeats.value = usual(store.state.pattern);
    mark.closest("label").hidden = store.state.pattern.parts.length === 1;
    mark.checked = mark.checked && !mark.closest("label").hidden;
    repeats.disabled = Boolean(store.state.whole) || repeats.max === "1";
    requestAnimationFrame(load);
  });
  repeats.addEventListener("change", () => { repeats.value = number(repeats); load(); });
  mark.addEventListener("change", load);
  for (const slider of [yaw, tilt, roll]) slider.addEventListener("input", drawMoving);
  find("save-ring").addEventListener("click", () => {
    drawFine();      // what a canvas of WebGL shows can only be read while it is drawn
    if (picture) save(canvas, `${store.state.pattern.words.title} ring`);
  });

  const turned = (dx, dy) => {
    yaw.value = (Number(yaw.value) + dx + 360) % 360;
    tilt.value = Number(tilt.value) + dy;
    drawMoving();
  };
  let held = null;
  canvas.addEventListener("pointerdown", event => { canvas.setPointerCapture(event.pointerId); held = [event.clientX, event.clientY]; });
  canvas.addEventListener("pointermove", event => {
    if (!held) return;
    turned((event.clientX - held[0]) / 3, (event.clientY - held[1]) / 3);
    held = [event.clientX, event.clientY];
  });
  for (const name of ["pointerup", "pointercancel"]) canvas.addEventListener(name, () => { held = null; });
  canvas.addEventListener("keydown", event => {
    const [dx, dy] = { ArrowLeft: [-5, 0], ArrowRight: [5, 0], ArrowUp: [0, 4], ArrowDown: [0, -4] }[event.key] ?? [0, 0];
    if (!dx && !dy) return;
    turned(dx, dy);
    event.preventDefault();
  });

  spin.addEventListener("click", () => {
    if (still.matches) return turned(15, 0);
    const on = spin.getAttribute("aria-pressed") !== "true";
    spin.setAttribute("aria-pressed", String(on));
    if (on) requestAnimationFrame(at => spinning(at, Number(yaw.value)));
  });
  dialog.addEventListener("close", () => spin.setAttribute("aria-pressed", "false"));
  function spinning(last, angle) {
    requestAnimationFrame(now => {
      if (spin.getAttribute("aria-pressed") !== "true") return;
      const next = (angle + ((now - last) / 1000) * PER_SECOND) % 360;
      yaw.value = next;
      drawMoving();
      spinning(now, next);
    });
  }
}

/** How much nearer one may come so that a ring of that tilt still fits a canvas of those proportions. */
const filling = (wide, tilt) => 0.95 * Math.max(1, Math.min(wide, 1 / Math.max(0.5, Math.sin(tilt) + 0.2)));

function mostRepeats(pattern) {
  const { step, once } = ringStep(pattern);
  return step ? Math.max(1, Math.floor((MOST_BEADS - once) / step)) : 1;
}

/** Repeats that close to a ring one can wear: at least one pass, wider than the rope is thick, and no mere knot of beads. */
function usual(pattern) {
  const { step, once } = ringStep(pattern), { around } = pattern;
  const least = Math.max(leastRing(around), pattern.to - pattern.from, LEAST_WORN, 3.2 * around * (around + 0.5));
  return step ? Math.max(1, Math.min(Math.ceil((least - once) / step), mostRepeats(pattern))) : 1;
}

/** The beads of a ring: the whole piece where it is displayed, else fixed parts as they are and as many repeats of what fills.
 *  Where the chosen part is to be marked, the others are dimmed. */
function ringBeads({ pattern, whole }, repeats, marked) {
  const { step, once } = ringStep(pattern), enough = Math.max(repeats, Math.ceil((leastRing(pattern.around) - once) / step));
  const beadsOf = ({ times, length }) => (pattern.parts.length === 1 && times === FILL ? step * enough : length * (times === FILL ? enough : times));
  const row = whole ?? spans(pattern).map((part, i) => ({ part: i, first: 0, beads: beadsOf(part) }));
  return displayed(pattern, pieces(pattern, 1, row).map(piece => ({ ...piece, dim: marked && piece.part !== pattern.at }))).slice();
}
