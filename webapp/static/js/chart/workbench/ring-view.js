// The ring in its own view: closed at a number of repeats, turned, tilted and rolled; says so where WebGL2 is missing.

import { chartOf, joined } from "../craft/pattern.js";
import { drift, leastRing, repeat } from "../craft/repeats.js";
import { counted, driftInWords } from "../craft/words.js";
import { RingPicture } from "../pictures/ring-picture.js";
import { onceAFrame, ratio } from "./canvas.js";
import { number } from "./dialogs.js";
import { save } from "./save-picture.js";

const PER_SECOND = 20, MOST_BEADS = 40_000, LEAST_WORN = 400;
const still = matchMedia("(prefers-reduced-motion: reduce)");

export function ringView(root, store) {
  const dialog = document.getElementById("ring"), find = name => dialog.querySelector(`[data-${name}]`), canvas = find("ring");
  const repeats = find("ring-repeats"), yaw = find("ring-yaw"), tilt = find("ring-tilt"), roll = find("ring-roll"),
    spin = find("ring-spin");
  let picture = null;

  const drawNow = () => {
    const [yawed, tilted, turn] = [yaw, tilt, roll].map(slider => (slider.value * Math.PI) / 180);
    if (dialog.open && picture) picture.draw({ yaw: yawed, tilt: tilted, turn, zoom: filling(canvas.width / canvas.height, tilted) });
  };
  const draw = onceAFrame(drawNow);
  const load = () => {
    const beads = ringBeads(store.state.pattern, number(repeats));
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
    repeats.max = Math.max(1, Math.floor(MOST_BEADS / unit(store.state.pattern)));
    repeats.value = usual(store.state.pattern);
    requestAnimationFrame(() => {
      const [width, height] = [canvas.clientWidth, canvas.clientHeight].map(side => Math.max(1, Math.round(side * ratio())));
      Object.assign(canvas, { width, height });
      load();
    });
  });
  repeats.addEventListener("change", () => { repeats.value = number(repeats); load(); });
  for (const slider of [yaw, tilt, roll]) slider.addEventListener("input", draw);
  find("save-ring").addEventListener("click", () => {
    drawNow();      // what a canvas of WebGL shows can only be read while it is drawn
    if (picture) save(canvas, `${store.state.pattern.words.title} ring`);
  });

  const turned = (dx, dy) => {
    yaw.value = (Number(yaw.value) + dx + 360) % 360;
    tilt.value = Number(tilt.value) + dy;
    draw();
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
      draw();
      spinning(now, next);
    });
  }
}

/** How much nearer one may come so that a ring of that tilt still fits a canvas of those proportions. */
const filling = (wide, tilt) => 0.95 * Math.max(1, Math.min(wide, 1 / Math.max(0.5, Math.sin(tilt) + 0.2)));

/** What a ring repeats: the repeat of the chart, or with a start or end a whole pass. */
const unit = pattern => (pattern.from || pattern.to < pattern.beads.length ? pattern.to - pattern.from : repeat(chartOf(pattern)));

/** Repeats that close to a ring one can wear: at least one pass, wider than the rope is thick, and no mere knot of beads. */
function usual(pattern) {
  const least = Math.max(leastRing(pattern.around), pattern.to - pattern.from, LEAST_WORN, 3.2 * pattern.around * (pattern.around + 0.5));
  return Math.max(1, Math.min(Math.ceil(least / unit(pattern)), Math.floor(MOST_BEADS / unit(pattern))));
}

function ringBeads(pattern, repeats) {
  const { beads, from, to } = pattern, stretch = beads.subarray(from, from + unit(pattern)),
    enough = Math.max(repeats, Math.ceil(leastRing(pattern.around) / stretch.length));
  return joined(beads.subarray(0, from), ...new Array(enough).fill(stretch), beads.subarray(to));
}
