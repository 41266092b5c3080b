"""The rings near a wanted girth that close in colour, as a table."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from engine.counting.rings import nearest_ring, ring_shares, ring_step, smallest_ring
from engine.counting.sizes import Size, laid_mm, passes_of
from engine.pattern.repeats import Drift, drift
from engine.pattern.shares import lay

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
    rings = (_ring(size, shares) for shares in _shares_near(size, most))
    return tuple(ring for ring in rings if ring.girth_mm > 0)[:most]


def _shares_near(size: Size, most: int) -> tuple[tuple[int, ...], ...]:
    """Beads of the parts that fill, of rings from some smaller than that size on, the smallest first."""
    pattern, step, bead_mm = size.pattern, ring_step(size.pattern), size.fill_mm
    begin = max(smallest_ring(pattern), nearest_ring(pattern, size.beads) - step * (most // 2))
    near = range(begin, begin + 2 * most * max(1, step), max(1, step))
    by_beads = {sum(shares): shares for shares in (ring_shares(pattern, beads, bead_mm=bead_mm) for beads in near)}
    return tuple(by_beads[beads] for beads in sorted(by_beads))


def _ring(size: Size, shares: tuple[int, ...]) -> Ring:
    laid = lay(size.pattern.parts, shares)
    rope_mm = laid_mm(laid, size.ropes)
    return Ring(
        beads=laid[-1].last,
        passes=passes_of(size.pattern, laid),
        rope_mm=rope_mm,
        girth_mm=size.finished_of(rope_mm),
        drift=drift(size.around, laid[-1].last),
    )
