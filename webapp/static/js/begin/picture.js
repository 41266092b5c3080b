// Points on a picture that move with the pointer or the arrow keys; the fields that they are named after say where.

const STEP = 0.5;                 // per cent of the picture an arrow key moves a point
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

for (const marked of document.querySelectorAll("[data-marked]")) mark(marked);
document.addEventListener("input", (event) => slid(event.target.name));

function mark(marked) {
  const points = [...marked.querySelectorAll(".marked-point")];
  const place = () => {
    for (const point of points) {
      const [x, y] = lies(marked, point);
      point.style.left = `${x}%`;
      point.style.top = `${y}%`;
    }
    marked.querySelector("[data-outline]").setAttribute("d", outline(marked, points));
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
      const [x, y] = lies(marked, point);
      set(point, x + far * way[0], y + far * way[1]);
    });
  }
  marked.closest("form").addEventListener("input", place);
  document.addEventListener("htmx:oobAfterSwap", place);
  place();
}

/** Where a point is, per cent; one that was not pulled lies where the server says. */
function lies(marked, point) {
  if (field(point.dataset.x).value && field(point.dataset.y).value) return [at(point.dataset.x), at(point.dataset.y)];
  const places = marked.querySelector("[data-places]").dataset.places.split(" ");
  const place = places.find((said) => said.startsWith(`${point.dataset.x}=`));
  return place.split("=")[1].split(",").map(Number);
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

function outline(marked, points) {
  const corners = points.map((point) => lies(marked, point));
  if (marked.dataset.marked !== "box") return `M${corners.slice(0, 4).join("L")}Z`;
  const [[left, top], [right, bottom]] = corners;
  return `M${left},${top}H${right}V${bottom}H${left}Z`;
}

function slid(name) {
  for (const said of document.querySelectorAll("[data-slid]")) {
    if (said.dataset.slid === name) said.textContent = field(name).value + said.dataset.unit;
  }
}
