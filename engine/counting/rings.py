"""Where a ring closes in colour: every whole repeat, or with a start or an end every whole pass."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil, floor

from engine.pattern.pattern import Pattern
from engine.pattern.repeats import least_ring
from engine.units import whole

SAME = 1e-6  # whole steps within this share of one are those steps


def ring_step(pattern: Pattern) -> int:
    """By how many beads a ring grows from one that closes to the next."""
    return len(pattern.main.beads) if pattern.fixed_beads else pattern.repeat


def closes(pattern: Pattern, beads: int) -> bool:
    """Whether a ring of that many beads closes in colour; the half bead never prevents it."""
    return beads >= smallest_ring(pattern) and (beads - pattern.fixed_beads) % ring_step(pattern) == 0


def smallest_ring(pattern: Pattern) -> int:
    """The fewest beads at which a ring closes and is long enough to be whole (`least_ring`)."""
    return stepped(0.0, pattern.fixed_beads, ring_step(pattern), least=least_ring(pattern.around))


def nearest_ring(pattern: Pattern, beads: float, rounded: Callable[[float], int] = whole) -> int:
    """The ring that closes nearest to so many beads; `rounded` may ask for the next (`round_up`) or last one."""
    return stepped(beads, pattern.fixed_beads, ring_step(pattern), rounded, least_ring(pattern.around))


def stepped(beads: float, fixed: int, step: int, rounded: Callable[[float], int] = whole, least: int = 1) -> int:
    """`fixed` beads and whole steps near `beads`: one step or more, and `least` beads or more."""
    fewest = max(1, -(-(least - fixed) // step))
    return fixed + step * max(fewest, whole_steps((beads - fixed) / step, rounded))


def whole_steps(steps: float, rounded: Callable[[float], int]) -> int:
    """Whole steps, rounded so; what is whole within the error of the sum stays what it is.

    >>> whole_steps(4.9999999999, floor)
    5
    """
    nearest = whole(steps)
    return nearest if abs(steps - nearest) < SAME else rounded(steps)


round_up, round_down = ceil, floor
