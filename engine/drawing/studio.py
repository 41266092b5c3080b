"""Shaded pictures of a rope, as a maker would photograph it: lying straight, closed to a ring, laid as a necklace.

Pictures are uint8, (height, width, 3) on a background "#rrggbb"; or, with background None, (height, width, 4) with a
soft shadow on a clear ground, so that one file lies on a light and on a dark table. The same call gives the same bytes.
"""

from __future__ import annotations

from collections.abc import Sequence

from engine.drawing.beadform import Array
from engine.drawing.photograph import photograph
from engine.drawing.poses import closed, draped, straight, winding
from engine.errors import ChoiceError
from engine.pattern.pattern import Pattern

VIEWS = ("rope", "ring", "necklace")
TABLE = "#f3f0eb"
WINDS_ABOVE = 0.45  # height over width from which on an endless rope winds through the picture


def picture(
    pattern: Pattern,
    view: str = "rope",
    beads: int | None = None,
    width: int = 1600,
    height: int = 1200,
    background: str | None = TABLE,
    sizes: Sequence[float] = (),
) -> Array:
    """The picture of that name in VIEWS: of a rope of that many beads, or of as many as the view wants.

    `sizes` are diameters by palette index, in any unit: beads of other kinds then stand out. Raises ChoiceError for a
    view that is not in VIEWS.
    """
    if view not in VIEWS:
        raise ChoiceError("View", view, VIEWS, "view")
    return {"rope": rope, "ring": ring, "necklace": necklace}[view](pattern, beads, width, height, background, sizes)


def rope(
    pattern: Pattern,
    beads: int | None = None,
    width: int = 1600,
    height: int = 1200,
    background: str | None = TABLE,
    sizes: Sequence[float] = (),
) -> Array:
    """A rope from left to right: straight, or, endless in a picture too high for that, winding."""
    if beads is None and height > WINDS_ABOVE * width:
        laid, camera = winding(pattern, width, height, sizes)
        return photograph(laid, pattern.palette, camera, background)
    return rope_strip(pattern, beads, width, height, background, sizes)


def rope_strip(
    pattern: Pattern,
    beads: int | None = None,
    width: int = 2000,
    height: int = 300,
    background: str | None = TABLE,
    sizes: Sequence[float] = (),
) -> Array:
    """A straight rope, first bead at the left: of that many beads, whole, or of passes that run out of the picture.

    The middle of the chart looks at the eye.
    """
    laid, camera = straight(pattern, beads, width, height, sizes)
    return photograph(laid, pattern.palette, camera, background)


def ring(
    pattern: Pattern,
    beads: int | None = None,
    width: int = 1600,
    height: int = 1200,
    background: str | None = TABLE,
    sizes: Sequence[float] = (),
) -> Array:
    """The rope closed to a ring on a table: of that many beads, or of whole repeats enough for a bangle."""
    laid, camera = closed(pattern, beads, width, height, sizes)
    return photograph(laid, pattern.palette, camera, background)


def necklace(
    pattern: Pattern,
    beads: int | None = None,
    width: int = 1600,
    height: int = 1200,
    background: str | None = TABLE,
    sizes: Sequence[float] = (),
) -> Array:
    """The rope laid as a necklace: of that many beads, whole, or its front, the ends running out of the picture."""
    laid, camera = draped(pattern, beads, width, height, sizes)
    return photograph(laid, pattern.palette, camera, background)
