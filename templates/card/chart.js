
// Draws the rows of the chart round the bead that comes next, opened out flat and read from the bottom.

const ROW = 0.866, CELL = 15, MARGIN = 32, GROUND = "#fdfbf6", INK = "#20242a";

/** Row and left edge of a bead in bead widths, as the lattice has it: even rows hold one bead more. */
function lattice(around, bead) {
  const pair = Math.floor(bead / (2 * around + 1)), rest = bead - pair * (2 * around + 1);
  return rest <= around ? { row: 2 * pair, x: rest } : { row: 2 * pair + 1, x: rest - around - 0.5 };
}

const firstOfRow = (around, row) => Math.floor(row / 2) * (2 * around + 1) + (row % 2) * (around + 1);

/** Draws the chart with the beads from `worked` to before `next` ringed. */
function drawChart(canvas, card, worked, next) {
  const box = canvas.getBoundingClientRect(), sharp = window.devicePixelRatio || 1, { around, rope } = card;
  canvas.width = Math.round(box.width * sharp);
  canvas.height = Math.round(box.height * sharp);
  const pen = canvas.getContext("2d");
  const cell = Math.max(CELL, Math.min(44, (box.width - MARGIN) / (around + 1)));
  const here = lattice(around, Math.min(worked, rope.length - 1));
  const rows = Math.floor(box.height / (cell * ROW)), bottom = Math.max(0, here.row - Math.floor(rows / 3));
  const wide = (around + 1) * cell, free = box.width - MARGIN - wide;
  const across = x => (card.left ? around + 1 - x - 0.5 : x + 0.5) * cell;
  const aside = free >= 0 ? free / 2 : Math.min(0, Math.max(free, (box.width - MARGIN) / 2 - across(here.x)));
  const shift = aside + (card.left ? 0 : MARGIN);
  pen.scale(sharp, sharp);
  pen.fillStyle = GROUND;
  pen.fillRect(0, 0, box.width, box.height);
  const last = Math.min(rope.length, firstOfRow(around, bottom + rows));
  for (let bead = firstOfRow(around, bottom); bead < last; bead++) {
    const { row, x } = lattice(around, bead);
    const middle = { x: shift + across(x), y: box.height - (row - bottom + 0.5) * cell * ROW };
    drawBead(pen, card.entries[rope[bead]], middle, cell, bead < worked);
    if (bead >= worked && bead < next) ringBead(pen, middle, cell);
    if (bead % around) continue;
    markRound(pen, middle, cell, card.left);
    if (bead - around < firstOfRow(around, row)) numberRound(pen, middle, bead / around + 1, card.left, box.width);
  }
}

/** A box with round corners, or with square ones where an older phone draws no others. */
function outline(pen, x, y, width, height, corner) {
  if (pen.roundRect) pen.roundRect(x, y, width, height, corner);
  else pen.rect(x, y, width, height);
}

function drawBead(pen, entry, middle, cell, pale) {
  pen.save();
  pen.globalAlpha = pale ? 0.3 : 1;
  pen.translate(middle.x, middle.y);
  pen.fillStyle = entry.colour;
  pen.strokeStyle = INK;
  pen.lineWidth = 0.6;
  pen.beginPath();
  outline(pen, -cell * 0.47, -cell * 0.407, cell * 0.94, cell * 0.814, cell * 0.25);
  pen.fill();
  pen.stroke();
  pen.scale(cell * 0.29, cell * 0.29);
  pen.fillStyle = entry.ink;
  pen.fill(entry.symbol, "evenodd");
  pen.restore();
}

function ringBead(pen, middle, cell) {
  for (const [colour, width] of [[GROUND, 5], ["#9c3a28", 2.5]]) {
    pen.strokeStyle = colour;
    pen.lineWidth = width;
    pen.beginPath();
    outline(pen, middle.x - cell * 0.44, middle.y - cell * 0.38, cell * 0.88, cell * 0.76, cell * 0.24);
    pen.stroke();
  }
}

/** A bar at the bead's leading edge. */
function markRound(pen, middle, cell, left) {
  const edge = middle.x + (left ? cell / 2 : -cell / 2);
  for (const [colour, wide] of [[GROUND, 5], [INK, 2.5]]) {
    pen.strokeStyle = colour;
    pen.lineWidth = wide;
    pen.beginPath();
    pen.moveTo(edge, middle.y - cell * 0.36);
    pen.lineTo(edge, middle.y + cell * 0.36);
    pen.stroke();
  }
}

/** The number of the round that begins in a row, the first of two, in the margin. */
function numberRound(pen, middle, number, left, width) {
  pen.font = "12px system-ui, sans-serif";
  pen.textBaseline = "middle";
  pen.textAlign = left ? "right" : "left";
  pen.fillStyle = GROUND;
  pen.fillRect(left ? width - MARGIN : 0, middle.y - 8, MARGIN, 16);
  pen.fillStyle = INK;
  pen.fillText(String(number), left ? width - 4 : 4, middle.y);
}
