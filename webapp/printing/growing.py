"""The rope as it grows: its last rows lying on their side, and a bar that shows how much of it is worked."""

from __future__ import annotations

from collections.abc import Iterable

from engine.booklet.guides.growth import WIDTH_MM, Grown
from engine.drawing.charts import bead_outline, cells, extent
from engine.drawing.operators import operators
from engine.pattern.palette import INK
from webapp.printing.figures import ACCENT, HAIRLINE_MM, Figure, colour, stamped

BAR_MM, GAP_MM = 2.0, 2.4
EDGED_MM = 0.9  # smaller beads have no line round them, which would darken them


class GrownFigure(Figure):
    """Rows and bar after one thread; the bar is as long as the whole rope, with a mark at every join."""

    def __init__(self, grown: Grown) -> None:
        self.grown = grown
        self.rows = extent(grown.end, bead_mm=grown.bead_mm, upright=False)
        super().__init__(WIDTH_MM, self.rows[1] + GAP_MM + BAR_MM + 0.4)

    def lines(self, scale: float) -> Iterable[str]:
        yield f"{scale:.4f} 0 0 {scale:.4f} 0 0 cm"
        yield from self._rows()
        yield from self._bar(self.rows[1] + GAP_MM)

    def _rows(self) -> Iterable[str]:
        grown, palette = self.grown, self.grown.end.palette
        drawn = "B" if grown.bead_mm >= EDGED_MM else "f"
        body = f"{operators(bead_outline(grown.bead_mm, upright=False))} {drawn}"
        places: dict[int, list[tuple[float, float]]] = {}
        for cell in cells(grown.end, bead_mm=grown.bead_mm, upright=False):
            places.setdefault(cell.entry, []).append((cell.x, cell.y))
        yield f"{colour(INK, 'RG')} {HAIRLINE_MM:.3f} w"
        for entry in sorted(places):
            yield colour(palette[entry].colour)
            yield from stamped(body, places[entry])

    def _bar(self, top: float) -> Iterable[str]:
        done = WIDTH_MM * self.grown.share
        yield f"{colour(ACCENT)} 0 {top:.2f} {done:.2f} {BAR_MM:.2f} re f"
        yield f"{colour(INK, 'RG')} 0.25 w 0.12 {top:.2f} {WIDTH_MM - 0.24:.2f} {BAR_MM:.2f} re S"
        for join in self.grown.joins:
            x = WIDTH_MM * join
            ink = "#ffffff" if x < done - 0.2 else INK
            yield f"{colour(ink, 'RG')} {x:.2f} {top + 0.2:.2f} m {x:.2f} {top + BAR_MM - 0.2:.2f} l S"
