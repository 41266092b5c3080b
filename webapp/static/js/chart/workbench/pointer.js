// Mouse, pen and touch on the chart: tools draw, the wheel and two fingers pan and zoom, the space bar held down drags.

import { panned, pointAt, zoomed } from "../camera.js";
import { repeatedPlace } from "../craft/displayed.js";
import { beadAt } from "../craft/lattice.js";
import { copied, places } from "../edits/patch.js";
import { along } from "../edits/strokes.js";
import { beadsOf, drawnBeads, partShown, piecesOf } from "../state.js";
import { Stroke } from "../stroke.js";
import { flooded, floated, lineBetween, painted, putDown, selected, taken } from "../use.js";
import { borderAt, draggingBorder } from "./borders.js";
import { ratio } from "./canvas.js";
import { choosePart } from "./parts.js";

export function pointer(root, store) {
  const holder = root.querySelector("[data-chart]"), fingers = new Map();
  let act = null, pinch = null;

  const pixels = event => {
    const box = holder.getBoundingClientRect(), d = ratio();
    return { x: (event.clientX - box.left) * d, y: (event.clientY - box.top) * d };
  };
  const point = event => { const { x, y } = pixels(event); return pointAt(store.state.camera, x, y); };
  const total = () => beadsOf(store.state).length, drawnTotal = () => drawnBeads(store.state).length;
  const drawnBead = ({ x, half }) => {
    const { pattern: { around, hand } } = store.state, k = beadAt(around, hand, x, half);
    return k < drawnTotal() ? k : -1;
  };
  /** The displayed bead at a point; the passes that follow are none. */
  const bead = where => { const k = drawnBead(where); return k < total() ? k : -1; };

  holder.addEventListener("pointerdown", event => {
    fingers.set(event.pointerId, pixels(event));
    holder.setPointerCapture(event.pointerId);
    if (fingers.size === 2) return beginPinch();
    if (fingers.size > 2 || act) return;
    if (event.button === 1 || root.dataset.panning) { act = panning(event); event.preventDefault(); return; }
    if (event.button !== 0) return;
    holder.focus({ preventScroll: true, focusVisible: false });
    const at = drawnBead(point(event));
    if (at < 0) return;
    const side = borderAt(store.state, point(event));
    if (side) { act = draggingBorder(store, side); return; }
    if (elsewhere(at)) return choosePart(root, store, partShown(store.state, at));
    if (at >= total() && (store.state.floating || store.state.tool === "patch")) return;
    store.set({ cursor: repeatedPlace(piecesOf(store.state), at) });
    act = store.state.floating ? hanging(at) : ACTS[store.state.tool](at, point(event));
  });

  holder.addEventListener("pointermove", event => {
    if (fingers.has(event.pointerId)) fingers.set(event.pointerId, pixels(event));
    if (pinch) return movePinch();
    const at = bead(point(event));
    if (event.pointerType !== "touch") store.set({ under: drawnBead(point(event)) });
    if (!act) holder.classList.toggle("is-border", borderAt(store.state, point(event)) !== "");
    if (act) act.move?.(at, point(event), event);
    else if (store.state.floating && at >= 0) store.set({ floating: { ...store.state.floating, anchor: at } });
  });

  const lift = event => {
    fingers.delete(event.pointerId);
    if (pinch && fingers.size < 2) pinch = null;
    if (!act) return;
    const done = act;
    act = null;
    if (event.type === "pointercancel") done.cancel?.(); else done.end?.(bead(point(event)), point(event));
  };
  holder.addEventListener("pointerup", lift);
  holder.addEventListener("pointercancel", lift);
  holder.addEventListener("pointerleave", () => { if (!act) store.set({ under: -1 }); });

  /** Whether a bead belongs to another part than the chosen one, where the tool would draw. */
  const elsewhere = at => !store.state.floating && store.state.tool !== "take" && partShown(store.state, at) !== store.state.pattern.at;

  // what each tool does from press to release
  const ACTS = {
    place(at, from) {
      const stroke = new Stroke(store), { pattern, colour } = store.state, name = `Place ${pattern.palette[colour].code}`;
      let last = from;
      stroke.paint([at]);
      return {
        move(_, to, event) {
          const steps = event.getCoalescedEvents?.() ?? [];
          for (const step of steps.length ? steps.map(point) : [to]) {
            stroke.paint(along(pattern.around, pattern.hand, drawnTotal(), last, step));
            last = step;
          }
        },
        end(_, to) {
          stroke.paint(along(pattern.around, pattern.hand, drawnTotal(), last, to));
          stroke.end(name);
        },
        cancel: () => stroke.cancel(),
      };
    },
    line(at) {
      store.set({ from: at, under: at });
      return {
        move(_, to) { if (drawnBead(to) >= 0) store.set({ under: drawnBead(to) }); },
        end(_, to) {
          const end = drawnBead(to) >= 0 ? drawnBead(to) : store.state.under;
          store.set({ from: -1 });
          store.set(painted(store.state, "Line", lineBetween(store.state, at, end >= 0 ? end : at)));
        },
        cancel: () => store.set({ from: -1 }),
      };
    },
    flood() {
      const whole = root.querySelector("[name=flood]:checked").value === "all";
      store.set(painted(store.state, "Flood", flooded(store.state, store.state.cursor, whole)));
    },
    take() { store.set(taken(store.state, store.state.cursor)); },
    patch(at) {
      const { patch } = store.state;
      if (patch && places(patch).includes(at)) return moving(at, patch);
      store.set(selected(store.state, at, at));
      return { move: to => { if (to >= 0) store.set(selected(store.state, at, to)); } };
    },
    add: () => null,
    remove: () => null,
    slide(at) {
      const stroke = new Stroke(store);
      return { move(_, to) { if (drawnBead(to) >= 0) stroke.slide(drawnBead(to) - at); }, end: () => stroke.end("Slide"), cancel: () => stroke.cancel() };
    },
  };

  /** A patch that is dragged: it hangs until it is let go. */
  function moving(at, patch) {
    const copy = copied(patch, beadsOf(store.state));
    let moved = false;
    return {
      move(to) {
        if (to < 0 || (to === at && !moved)) return;
        moved = true;
        store.set(floated(copy, copy.anchor + to - at, patch));
      },
      end: () => { if (moved) store.set(putDown(store.state)); },
      cancel: () => store.set({ floating: null }),
    };
  }

  /** A copy that hangs follows the pointer and is put down where it is let go. */
  function hanging(at) {
    store.set({ floating: { ...store.state.floating, anchor: at } });
    return {
      move: to => { if (to >= 0) store.set({ floating: { ...store.state.floating, anchor: to } }); },
      end: () => store.set(putDown(store.state)),
    };
  }

  function panning(event) {
    let last = pixels(event);
    root.dataset.panned = "yes";
    return { move(_, __, now) { const to = pixels(now); pan(last.x - to.x, last.y - to.y); last = to; } };
  }

  function beginPinch() {
    act?.cancel?.();
    act = null;
    pinch = { ...middle(), pitch: store.state.camera.pitch };
  }

  function movePinch() {
    const now = middle(), { pattern, camera } = store.state, grown = pinch.apart > 0 ? now.apart / pinch.apart : 1;
    store.set({ camera: zoomed(pattern, total(), camera, pinch.pitch * grown, now.x, now.y) });
    pan(pinch.x - now.x, pinch.y - now.y);
    [pinch.x, pinch.y] = [now.x, now.y];
  }

  function middle() {
    const [a, b] = [...fingers.values()];
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, apart: Math.hypot(a.x - b.x, a.y - b.y) };
  }

  function pan(dx, dy) {
    const { pattern, camera } = store.state;
    store.set({ camera: panned(pattern, total(), camera, dx, dy) });
  }

  root.querySelector("[data-stage]").addEventListener("wheel", event => {
    event.preventDefault();
    const { pattern, camera } = store.state, { x, y } = pixels(event), d = ratio();
    if (event.ctrlKey) return store.set({ camera: zoomed(pattern, total(), camera, camera.pitch * 1.0015 ** -event.deltaY, x, y) });
    const by = (Math.abs(event.deltaX) > Math.abs(event.deltaY) ? event.deltaX : event.deltaY) * d;
    pan(event.shiftKey ? 0 : by, event.shiftKey ? by : 0);
  }, { passive: false });
}
