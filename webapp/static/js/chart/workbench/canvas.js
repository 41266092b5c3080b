// Canvases: the page counts in CSS pixels, drawings in those of the screen; colours come from the style sheet.

export const ratio = () => devicePixelRatio || 1;
export const FONT = '"Atkinson Hyperlegible Next", system-ui, sans-serif';

export function fit(canvas, width, height) {
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
  shown(canvas, width, height);
}

/** Its size on the page; on paper, which is narrower than the window, the style sheet goes by the proportions. */
function shown(canvas, width, height) {
  canvas.style.width = `${width / ratio()}px`;
  canvas.style.height = `${height / ratio()}px`;
  canvas.style.aspectRatio = `${width} / ${height}`;
}

const SPARE = 256;

/** As `fit`, for a canvas that the style sheet crops: it may stay higher than it shows, because a new size costs more than a drawing. */
export function fitCropped(canvas, width, height) {
  const kept = canvas.height >= height && canvas.height <= height + SPARE;
  if (canvas.width !== width) canvas.width = width;
  if (!kept) canvas.height = Math.ceil((height + 1) / (SPARE / 2)) * (SPARE / 2);
  shown(canvas, width, height);
}

const known = new Map();
/** What is drawn in inks is drawn anew when the looks change, or the system begins or ends to choose the colours. */
export function whenInksChange(draw) {
  for (const look of ["(prefers-color-scheme: dark)", "(forced-colors: active)"]) {
    matchMedia(look).addEventListener("change", () => { known.clear(); draw(); });
  }
}

/** A colour of the style sheet as a canvas understands it; asked once, because asking costs a layout. */
export function ink(name) {
  if (!known.has(name)) {
    const probe = document.createElement("i");
    probe.style.cssText = `color: var(${name}); forced-color-adjust: none`;
    document.body.append(probe);
    known.set(name, getComputedStyle(probe).color);
    probe.remove();
  }
  return known.get(name);
}

/** The function, at most once a frame however often it is asked for. */
export function onceAFrame(draw) {
  let waiting = false;
  return () => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => { waiting = false; draw(); });
  };
}

/** The function, once the next frame is on the screen: for what may follow a moment after what was drawn. */
export function afterAFrame(draw) {
  let waiting = false;
  return () => {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => setTimeout(() => { waiting = false; draw(); }));
  };
}

/** The chart's ground and mark: it is drawn in ink on white in both looks. */
export const GROUND = "#fdfbf6", MARK = "#26221c", SOFT = "#5c5446", ACCENT = "#17635c";
