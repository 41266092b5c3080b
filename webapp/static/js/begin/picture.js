// Points on a picture that move with the pointer or the arrow keys; the fields that they are named after say where.

const STEP = 0.5;                 // per cent of the picture an arrow key moves a point
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

for (const marked of document.querySelectorAll("[data-marked]")) mark(marked);
document.addEventListener("input", (event) => slid(event.target.name));

function mark(marked) {
  const points = [...marked.querySelectorAll(".marked-point")];
  const place = () => {
    for (const point of points) {
      point.style.left = `${at(point.dataset.x)}%`;
      point.style.top = `${at(point.dataset.y)}%`;
    }
    marked.querySelector("[data-outline]").setAttribute("d", outline(marked.dataset.marked, points));
  };
  for (const point of points) {
    point.hidden = false;
    point.addEventListener("pointerdown", (event) => { point.setPointerCapture(event.pointerId); event.preventDefault(); point.focus(); });
    point.addEventListener("pointermove", (event) => {
      if (!point.hasPointerCapture(event.pointerId)) return;
      const frame = marked.getBoundingClientRect();
      set(point, (event.clientX - frame.left) / frame.width * 100, (event.clientY - frame.top) / frame.height * 100);
    });
    point.addEventListener("keydown", (event) => {
      const way = ARROWS[event.key];
      if (!way) return;
      event.preventDefault();
      const far = event.shiftKey ? 10 * STEP : STEP;
      set(point, at(point.dataset.x) + far * way[0], at(point.dataset.y) + far * way[1]);
    });
  }
  marked.closest("form").addEventListener("input", place);
  place();
}

function at(name) {
  return Number(field(name).value.replace(",", ".")) || 0;
}

function field(name) {
  return document.querySelector(`form [name="${name}"]`);
}

function set(point, x, y) {
  for (const [name, value] of [[point.dataset.x, x], [point.dataset.y, y]]) {
    field(name).value = Math.min(100, Math.max(0, value)).toFixed(1);
  }
  field(point.dataset.x).dispatchEvent(new Event("input", { bubbles: true }));
}

function outline(kind, points) {
  const corners = points.map((point) => [at(point.dataset.x), at(point.dataset.y)]);
  if (kind !== "box") return `M${corners.slice(0, 4).join("L")}Z`;
  const [[left, top], [right, bottom]] = corners;
  return `M${left},${top}H${right}V${bottom}H${left}Z`;
}

function slid(name) {
  for (const said of document.querySelectorAll("[data-slid]")) {
    if (said.dataset.slid === name) said.textContent = field(name).value + said.dataset.unit;
  }
}
