"""The rings near a wanted girth that close in colour, as a table."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from engine.counting.rings import nearest_ring, ring_step, smallest_ring
from engine.counting.sizes import Size
from engine.pattern.repeats import Drift, drift

MOST_RINGS = 9


@dataclass(frozen=True)
class Ring:
    """A ring that closes: its beads, passes and rope, the room inside in mm, and how far its seam turns."""

    beads: int
    passes: float
    rope_mm: float
    girth_mm: float
    drift: Drift

    @property
    def diameter_mm(self) -> float:
        return self.girth_mm / pi


def rings_near(size: Size, most: int = MOST_RINGS) -> tuple[Ring, ...]:
    """The rings nearest to that size, the smallest first; none for a rope that is not worked shut."""
    if not size.closure.worked_shut:
        return ()
    pattern, step = size.pattern, ring_step(size.pattern)
    nearest = nearest_ring(pattern, size.beads)
    beads_near = range(max(smallest_ring(pattern), nearest - step * (most // 2)), nearest + step * most, step)
    rings = (_ring(size, beads) for beads in beads_near)
    return tuple(ring for ring in rings if ring.girth_mm > 0)[:most]


def _ring(size: Size, beads: int) -> Ring:
    rope_mm = size.rope_of(beads)
    return Ring(
        beads=beads,
        passes=(beads - size.pattern.fixed_beads) / len(size.pattern.main.beads),
        rope_mm=rope_mm,
        girth_mm=size.finished_of(rope_mm),
        drift=drift(size.around, beads),
    )
