"""The ring solver: all lengths near a wanted girth at which a ring closes in colour."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import pi

from engine.counting.sizes import Question, Size, Workshop, size
from engine.pattern.pattern import Pattern
from engine.pattern.repeats import Drift, drift, least_ring

MOST_SHOWN = 9


@dataclass(frozen=True)
class Closing:
    """A ring that closes: its beads, passes and rope, the room inside in mm, and how far its seam turns."""

    beads: int
    passes: float
    rope_mm: float
    girth_mm: float
    drift: Drift

    @property
    def diameter_mm(self) -> float:
        return self.girth_mm / pi


def closings(
    pattern: Pattern, question: Question, workshop: Workshop | None = None, most: int = MOST_SHOWN
) -> tuple[Closing, ...]:
    """The rings nearest to the length asked for as inner girth, the smallest first. Raises SizeError as a size does."""
    wanted = size(pattern, replace(question, closure="ring"), workshop)
    fixed = len(pattern.start) + len(pattern.end)
    step = len(pattern.chart) if fixed else pattern.repeat
    fewest = fixed + step * max(1, -(-(least_ring(pattern.around) - fixed) // step))
    near = range(max(fewest, wanted.beads - step * (most // 2)), wanted.beads + step * most, step)
    rings = (_closing(pattern, wanted, beads) for beads in near)
    return tuple(ring for ring in rings if ring.girth_mm > 0)[:most]


def _closing(pattern: Pattern, wanted: Size, beads: int) -> Closing:
    rope_mm = beads * wanted.rope.bead_mm
    passes = (beads - len(pattern.start) - len(pattern.end)) / len(pattern.chart)
    return Closing(beads, passes, rope_mm, rope_mm - pi * wanted.thickness_mm, drift(pattern.around, beads))
