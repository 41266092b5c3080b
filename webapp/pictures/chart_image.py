"""The chart as a PNG on a clear ground: coloured beads, with symbols where wanted, a bar where each round starts."""

from __future__ import annotations

from io import BytesIO

from PIL import Image, ImageChops, ImageDraw

from engine.drawing.charts import CORNER, FILL, HAIRLINE, ROW, SYMBOL, cells, extent, round_starts
from engine.drawing.shapes import Outline
from engine.drawing.symbols import assigned
from engine.pattern.palette import INK, PAPER, Palette, ink_on
from engine.pattern.pattern import Pattern
from webapp.pictures.drawn import paths

BEAD_PX = 24
LEAST_PX = 4
MOST_PIXELS = 24_000_000
FINE = 2  # drawn this much larger, then made smaller, so that corners are smooth
SMOOTH = 4  # symbols are drawn this much larger again
EDGE = 0.15  # of a bead, all round: room for the bars


def chart_png(pattern: Pattern, upright: bool = False, last: int | None = None, symbols: bool = False) -> bytes:
    """Beads of the chart up to `last`, all of them otherwise; beads are smaller where there are very many."""
    width, height = extent(pattern, 0, last, 1.0, upright)
    bead = min(BEAD_PX, max(LEAST_PX, int((MOST_PIXELS / FINE**2 / ((width + 1) * (height + 1))) ** 0.5))) * FINE
    size = (round((width + 2 * EDGE) * bead), round((height + 2 * EDGE) * bead))
    image = Image.new("RGBA", size, (255, 255, 255, 0))
    brush = ImageDraw.Draw(image)
    across, along = FILL * bead / 2, FILL * ROW * bead / 2
    x_half, y_half = (across, along) if upright else (along, across)
    line = max(1, round(HAIRLINE * bead))
    stamps = _stamps(pattern.palette, bead) if symbols else ()
    for cell in cells(pattern, 0, last, 1.0, upright):
        x, y = (cell.x + EDGE) * bead, (cell.y + EDGE) * bead
        brush.rounded_rectangle(
            (x - x_half, y - y_half, x + x_half, y + y_half),
            CORNER * ROW * bead,
            pattern.palette[cell.entry].colour,
            INK,
            line,
        )
        if stamps:
            mask, ink = stamps[cell.entry]
            image.paste(ink, (round(x - mask.width / 2), round(y - mask.height / 2)), mask)
    _bars(brush, pattern, upright, last, bead)
    out = BytesIO()
    image.resize((size[0] // FINE, size[1] // FINE), Image.Resampling.BOX).save(out, "PNG")
    return out.getvalue()


def _stamps(palette: Palette, bead: int) -> tuple[tuple[Image.Image, str], ...]:
    """What the symbol of every entry covers, and the ink that reads on its colour."""
    entries = zip(palette, assigned(palette), strict=True)
    return tuple((_covered(symbol.outline, SYMBOL * bead), ink_on(entry.colour)) for entry, symbol in entries)


def _covered(outline: Outline, half: float) -> Image.Image:
    """How far an outline on a square from −1 to 1 covers each pixel, by the even-odd rule."""
    side = max(1, round(2 * half))
    fine = side * SMOOTH
    covered = Image.new("1", (fine, fine))
    for path in paths(outline):
        inside = Image.new("1", (fine, fine))
        ImageDraw.Draw(inside).polygon([((x + 1) * fine / 2, (y + 1) * fine / 2) for x, y in path], fill=1)
        covered = ImageChops.logical_xor(covered, inside)
    return covered.convert("L").resize((side, side), Image.Resampling.BOX)


def _bars(brush: ImageDraw.ImageDraw, pattern: Pattern, upright: bool, last: int | None, bead: int) -> None:
    reach = 0.42 * ROW * bead
    dx, dy = (0.0, reach) if upright else (reach, 0.0)
    for start in round_starts(pattern, 0, last, 1.0, upright):
        x, y = ((of + EDGE) * bead for of in start.edge)
        for colour, share in ((PAPER, 0.2), (INK, 0.09)):
            brush.line((x - dx, y - dy, x + dx, y + dy), colour, max(1, round(share * bead)))
