"""A chart on which some beads are ringed and carry their symbols, all others being plain."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import replace

from engine.drawing.charts import SYMBOL, Cell, bead_outline, cells, chart
from engine.drawing.shapes import Drawing, Group, Paint, Stamp, moved
from engine.drawing.symbols import assigned
from engine.pattern.palette import PAPER, ink_on
from engine.pattern.pattern import Pattern
from engine.units import count

RING = "#c2185b"  # on a white edge, so that it stands out on beads of every colour
WHITE_MM, RING_MM = 0.42, 0.2  # widths of the white edge and the ring, in bead widths


def ringed(
    pattern: Pattern, marked: Collection[int], first: int = 0, last: int | None = None, bead_mm: float = 4.0
) -> Drawing:
    """Beads `first` to before `last` of the lying chart; `marked` are beads of the chart counted from nought."""
    last = len(pattern.main.beads) if last is None else last
    drawn = chart(pattern, first, last, bead_mm, upright=False, symbols=False)
    shown = zip(range(first, last), cells(pattern, first, last, bead_mm, upright=False), strict=True)
    ringed_cells = [cell for bead, cell in shown if bead in marked]
    edge = WHITE_MM / 2 * bead_mm
    return replace(
        drawn,
        width=drawn.width + 2 * edge,
        height=drawn.height + 2 * edge,
        left=drawn.left - edge,
        top=drawn.top - edge,
        shapes=(*drawn.shapes, *_rings(pattern, ringed_cells, bead_mm)),
        description=f"{count(len(ringed_cells))} beads that differ are ringed.\n{drawn.description}",
    )


def _rings(pattern: Pattern, ringed_cells: Sequence[Cell], bead_mm: float) -> Iterable[Group]:
    body, signs = bead_outline(bead_mm, upright=False), assigned(pattern.palette)
    where = tuple((cell.x, cell.y) for cell in ringed_cells)
    yield Group(
        "differs",
        tuple(
            Stamp(body, where, Paint("", colour, width * bead_mm))
            for colour, width in ((PAPER, WHITE_MM), (RING, RING_MM))
            if where
        ),
    )
    for index in sorted({cell.entry for cell in ringed_cells}):
        places = tuple((cell.x, cell.y) for cell in ringed_cells if cell.entry == index)
        paint = Paint(ink_on(pattern.palette[index].colour))
        yield Group("symbol", (Stamp(moved(signs[index].outline, SYMBOL * bead_mm), places, paint),))
