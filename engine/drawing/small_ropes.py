"""A short stretch of rope from the side as a small line drawing, quick enough for a page full of them.

Beads on the near half of the flat model's cylinder, the axis from left to right, first bead at the left; beads at the
edge are narrow and lie behind.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace
from math import cos, sin, sqrt, tau

from engine.drawing.shapes import Drawing, Outline, Paint, Stamp, rounded_box
from engine.pattern.lattice import turns
from engine.pattern.palette import Palette

STEPS = 4  # widths of a bead between the edge and the middle
EDGE = 0.92  # beads beyond this share of the radius are not drawn
LINE = Paint(line="#3a342a", line_mm=0.06)


def small_rope(around: int, hand: str, palette: Palette, beads: bytes, bead_mm: float = 2.0) -> Drawing:
    """The drawing of those beads in working order, as wide as they need."""
    radius = (around + 0.5) / tau * bead_mm
    rise = sqrt(3) / 2 / sqrt(around * around + around + 1) * bead_mm
    places: dict[tuple[int, int], list[tuple[float, float]]] = defaultdict(list)
    for k, entry in enumerate(beads):
        turn = tau * turns(around, k) * (1 if hand == "right" else -1)
        if cos(turn) > 1 - EDGE:
            depth = min(STEPS - 1, int(cos(turn) * STEPS))
            places[depth, entry].append((bead_mm / 2 + k * rise, radius + bead_mm / 2 + radius * sin(turn)))
    shapes = tuple(
        Stamp(_bead(bead_mm, depth), tuple(found), replace(LINE, fill=palette[entry].colour))
        for (depth, entry), found in sorted(places.items())
    )
    return Drawing(len(beads) * rise + bead_mm, 2 * radius + bead_mm, shapes, title="Rope")


def _bead(bead_mm: float, depth: int) -> Outline:
    high = bead_mm * (0.55 + 0.45 * (depth + 0.5) / STEPS)
    return rounded_box(bead_mm * 0.95, high * 0.95, min(bead_mm, high) * 0.36)
