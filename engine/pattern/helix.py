"""The rope as touching spheres on a helix.

Centres of beads of diameter 1 stand at (R cos kθ, R sin kθ, kh); each touches k ± 1, k ± N and k ± (N + 1), so that
2R²(1 − cos mθ) + (mh)² = 1 for m = 1, N, N + 1: the packing [N + 1, N, 1] of equal spheres on a cylinder.
"""

from __future__ import annotations

from functools import lru_cache
from math import cos, sqrt, tau
from typing import NamedTuple

from engine.errors import PatternError


class Helix(NamedTuple):
    """Radius and rise per bead in bead diameters, twist per bead in radians."""

    radius: float
    twist: float
    rise: float


@lru_cache(128)
def helix(around: int) -> Helix:
    """The helix of spheres of diameter 1 for that many beads around, 2 or more.

    Once θ is known the equations for 1 and N are linear in R² and h²; the one for N + 1 finds θ by halving the stretch
    between a bead N + 1 that stands straight above and a bead N that does.

    >>> [round(value, 6) for value in helix(6)]
    [1.083185, 0.950651, 0.130934]
    """
    if around < 2:
        raise PatternError(f"{around} around makes no rope; the least is 2.", "around")
    low, high = tau / (around + 1), tau / around
    while low < (middle := (low + high) / 2) < high:
        low, high = (middle, high) if _gap(around, middle) < 0 else (low, middle)
    radius_squared, rise_squared = _solve(around, low)
    return Helix(sqrt(radius_squared), low, sqrt(rise_squared))


def _solve(around: int, twist: float) -> tuple[float, float]:
    """R² and h² for which beads 1 and N steps apart touch at that twist."""
    one, below = 2 * (1 - cos(twist)), 2 * (1 - cos(around * twist))
    scale = one * around**2 - below
    return (around**2 - 1) / scale, (one - below) / scale


def _gap(around: int, twist: float) -> float:
    """Squared distance of beads N + 1 steps apart, less 1."""
    radius_squared, rise_squared = _solve(around, twist)
    step = around + 1
    return 2 * radius_squared * (1 - cos(step * twist)) + step**2 * rise_squared - 1
