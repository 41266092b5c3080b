// Driven by tests/bench/chart.py on the page of the editor: frames, from press to pixels, and drawing bead by bead.

const { panned, zoomed } = await import("/static/js/chart/camera.js"), { beadsOf } = await import("/static/js/chart/state.js");
const { cell, firstOfRow } = await import("/static/js/chart/craft/lattice.js"), { ChartPicture, halfOf } = await import("/static/js/chart/pictures/chart-picture.js");
const store = document.querySelector("[data-draw]").store, total = () => beadsOf(store.state).length;
const afterFrame = () => new Promise(done => requestAnimationFrame(stamp => { const { port1, port2 } = new MessageChannel(); port1.onmessage = () => done({ stamp, now: performance.now() }); port2.postMessage(0); }));
const told = taken => { taken.sort((a, b) => a - b); return { middle: taken[taken.length >> 1], p95: taken[Math.floor(taken.length * 0.95)] }; };

const STEPS = {
  pan: i => store.set({ camera: panned(store.state.pattern, total(), store.state.camera, i % 120 < 60 ? 9 : -9, 0) }),
  zoom: i => store.set({ camera: zoomed(store.state.pattern, total(), store.state.camera, store.state.camera.pitch + (i % 12 < 6 ? 1 : -1), 600, 100) }),
  turn: i => store.set({ turn: (i * 3) % 360 }),
};

/** Opens the ring and turns it as a person does; gives its number of beads in words, and what draws it. */
export async function ring() {
  document.querySelector("[data-opens=ring]").click();
  const words = document.querySelector("[data-ring-words]"), yaw = document.querySelector("[data-ring-yaw]");
  while (!words.textContent) await afterFrame();
  STEPS.ring = i => { yaw.value = (i * 3) % 360; yaw.dispatchEvent(new Event("input")); };
  const gl = document.createElement("canvas").getContext("webgl2"), renderer = gl.getExtension("WEBGL_debug_renderer_info");
  return { beads: words.textContent.split(", ")[0], renderer: renderer ? gl.getParameter(renderer.UNMASKED_RENDERER_WEBGL) : "" };
}

/** A step a frame: how many frames come in a second, and how long the page works at one, in ms. */
export async function frames(name, many = 120) {
  const first = await afterFrame(), work = [];
  let last = first;
  for (let i = 0; i < many; i++) {
    STEPS[name](i);
    last = await afterFrame();
    work.push(last.now - last.stamp);
  }
  return { second: 1000 * many / (last.stamp - first.stamp), ...told(work) };
}

/** Listens to presses: how long from the event until the frame with the painted bead is handed over. */
export function listen() {
  const presses = [];
  document.querySelector("[data-chart]").addEventListener("pointerdown", async event => presses.push({ waited: performance.now() - event.timeStamp, pixels: (await afterFrame()).now - event.timeStamp }), { capture: true });
  return presses;
}

/** Redrawing what is in sight, by the colour map and bead by bead, until the pixels are there. */
export function redrawing(times = 20) {
  const { pattern, camera } = store.state, beads = beadsOf(store.state), holder = document.querySelector("[data-beads]");
  const canvas = new OffscreenCanvas(holder.width, holder.height), picture = new ChartPicture(canvas, "#ffffff"), pen = canvas.getContext("2d"), half = halfOf(camera.pitch);
  picture.palette(pattern.palette, []);
  const single = () => {
    pen.fillStyle = "#ffffff";
    pen.fillRect(0, 0, canvas.width, canvas.height);
    const first = firstOfRow(pattern.around, Math.floor(camera.left / camera.pitch)), last = firstOfRow(pattern.around, Math.ceil((camera.left + canvas.width) / camera.pitch));
    for (let k = first; k < Math.min(last, beads.length); k++) {
      const { column, half: down } = cell(pattern.around, pattern.hand, k), x = column * camera.pitch - camera.left;
      pen.beginPath();
      pen.roundRect(x + 0.5, down * half + 0.5 - camera.top, camera.pitch - 1, 2 * half - 1, half * 0.7);
      pen.fillStyle = pattern.palette[beads[k]].colour;
      pen.fill();
    }
  };
  const taken = draw => told(Array.from({ length: times }, () => { const begun = performance.now(); draw(); pen.getImageData(0, 0, 1, 1); return performance.now() - begun; })).middle;
  return { map: taken(() => picture.draw(pattern, beads, camera, { signs: false, mark: "#000" })), single: taken(single) };
}
