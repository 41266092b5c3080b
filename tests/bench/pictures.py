"""Shaded pictures of the studio."""

from __future__ import annotations

from engine.drawing.studio import VIEWS, picture
from tests.bench.charts import pattern
from tests.bench.figures import Figures, best_ms, ms


def figures() -> Figures:
    """Every view at 1600 × 1200."""
    drawn = pattern(1_500, 14, 5)
    for view in VIEWS:
        yield f"studio picture 1600 × 1200, {view}", ms(best_ms(lambda view=view: picture(drawn, view), 3)), "1 s"
