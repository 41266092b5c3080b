"""A rope closed to a small ring and seen from above, as a line drawing, quick enough for a page full of them.

Beads lie on the flat model's cylinder bent to a ring; those that are not hidden below are drawn, the lower ones first.
The half bead by which a round is too short to close is spread over the whole ring.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace
from math import cos, sin, sqrt, tau

from engine.drawing.shapes import Drawing, Outline, Stamp, polygon
from engine.drawing.small_ropes import LINE
from engine.pattern.palette import Palette
from engine.pattern.repeats import least_ring

HOLE = 1.9  # radius of the ring's middle line, in radii of the rope
STEPS = 5  # heights that are told apart
EDGE = -0.6  # beads lower than this share of the rope's radius are not drawn


def small_ring(around: int, hand: str, palette: Palette, repeat: bytes, bead_mm: float = 2.0) -> Drawing:
    """The drawing of whole repeats, as many as make a ring with a hole of about the rope's own thickness."""
    radius = (around + 0.5) / tau * bead_mm
    rise = sqrt(3) / 2 / sqrt(around * around + around + 1) * bead_mm
    times = max(1, -(-least_ring(around) // len(repeat)), round(tau * HOLE * radius / rise / len(repeat)))
    beads = repeat * times
    middle = max(HOLE * radius, len(beads) * rise / tau)
    turns = round(len(beads) / (around + 0.5)) or 1
    reach = middle + radius + bead_mm / 2
    places: dict[tuple[int, int], list[tuple[float, float]]] = defaultdict(list)
    for k, entry in enumerate(beads):
        share = k / len(beads)
        height = -sin(tau * share * turns)
        if height > EDGE:
            out = middle + radius * cos(tau * share * turns)
            y = -out * sin(tau * share) * (1 if hand == "right" else -1)
            step = min(STEPS - 1, int((height - EDGE) / (1 - EDGE) * STEPS))
            places[step, entry].append((reach + out * cos(tau * share), reach + y))
    shapes = tuple(
        Stamp(_bead(bead_mm), tuple(upper), replace(LINE, fill=palette[entry].colour))
        for (_, entry), upper in sorted(places.items())
    )
    return Drawing(2 * reach, 2 * reach, shapes, title="Ring")


def _bead(bead_mm: float) -> Outline:
    """Eight corners, which are round at that size."""
    far = bead_mm * 0.48
    return polygon(*((far * cos(tau * (side + 0.5) / 8), far * sin(tau * (side + 0.5) / 8)) for side in range(8)))
