"""The chart as a PNG: coloured beads, a bar where each round starts, on a clear ground."""

from __future__ import annotations

from io import BytesIO

from PIL import Image, ImageDraw

from engine.drawing.charts import CORNER, FILL, HAIRLINE, ROW, cells, extent, round_starts
from engine.pattern.palette import INK, PAPER
from engine.pattern.pattern import Pattern

BEAD_PX = 24
LEAST_PX = 4
MOST_PIXELS = 24_000_000
FINE = 2  # drawn this much larger, then made smaller, so that corners are smooth
EDGE = 0.15  # of a bead, all round: room for the bars


def chart_png(pattern: Pattern, upright: bool = False, last: int | None = None) -> bytes:
    """Beads of the chart up to `last`, all of them otherwise; beads are smaller where there are very many."""
    width, height = extent(pattern, 0, last, 1.0, upright)
    bead = min(BEAD_PX, max(LEAST_PX, int((MOST_PIXELS / FINE**2 / ((width + 1) * (height + 1))) ** 0.5))) * FINE
    size = (round((width + 2 * EDGE) * bead), round((height + 2 * EDGE) * bead))
    image = Image.new("RGBA", size, (255, 255, 255, 0))
    brush = ImageDraw.Draw(image)
    across, along = FILL * bead / 2, FILL * ROW * bead / 2
    x_half, y_half = (across, along) if upright else (along, across)
    line = max(1, round(HAIRLINE * bead))
    for cell in cells(pattern, 0, last, 1.0, upright):
        x, y = (cell.x + EDGE) * bead, (cell.y + EDGE) * bead
        brush.rounded_rectangle(
            (x - x_half, y - y_half, x + x_half, y + y_half),
            CORNER * ROW * bead,
            pattern.palette[cell.entry].colour,
            INK,
            line,
        )
    _bars(brush, pattern, upright, last, bead)
    out = BytesIO()
    image.resize((size[0] // FINE, size[1] // FINE), Image.Resampling.BOX).save(out, "PNG")
    return out.getvalue()


def _bars(brush: ImageDraw.ImageDraw, pattern: Pattern, upright: bool, last: int | None, bead: int) -> None:
    reach = 0.42 * ROW * bead
    dx, dy = (0.0, reach) if upright else (reach, 0.0)
    for start in round_starts(pattern, 0, last, 1.0, upright):
        x, y = ((of + EDGE) * bead for of in start.edge)
        for colour, share in ((PAPER, 0.2), (INK, 0.09)):
            brush.line((x - dx, y - dy, x + dx, y + dy), colour, max(1, round(share * bead)))
