"""The spiral in bead units: where bead k sits and which beads it touches.

Bead k sits at angle 2πk/(N + ½) and k/(N + ½) rows along. Even rows hold N + 1 beads, odd rows N, half a bead across.
Right-handed work, seen from outside with the working end up, runs from left to right and from bottom to top.
"""

from __future__ import annotations

from math import tau
from typing import NamedTuple


class Place(NamedTuple):
    """Drawn row, counted from nought at the first bead, and left edge in bead widths (whole on even rows)."""

    row: int
    x: float


def place(around: int, k: int) -> Place:
    """Where bead k is drawn.

    >>> place(6, 6), place(6, 7)
    (Place(row=0, x=6.0), Place(row=1, x=0.5))
    """
    pair, rest = divmod(k, 2 * around + 1)
    return Place(2 * pair, float(rest)) if rest <= around else Place(2 * pair + 1, rest - around - 0.5)


def first_of_row(around: int, row: int) -> int:
    """The bead at the left of a drawn row."""
    pair, odd = divmod(row, 2)
    return pair * (2 * around + 1) + odd * (around + 1)


def row_length(around: int, row: int) -> int:
    """N + 1 beads on even rows, N on odd ones."""
    return around if row % 2 else around + 1


def rows(around: int, beads: int) -> int:
    """How many drawn rows that many beads begin."""
    return place(around, beads - 1).row + 1 if beads else 0


def turns(around: int, k: float) -> float:
    """How often the spiral has gone round, and how many rows along it has come, at bead k."""
    return k / (around + 0.5)


def angle(around: int, k: float) -> float:
    """Angle of bead k round the rope's axis, radians, growing from left to right as seen from outside."""
    return tau * turns(around, k)


def neighbours(around: int, k: int, total: int | None = None) -> tuple[int, ...]:
    """The beads that bead k touches, sorted: k ± 1, k ± N, k ± (N + 1).

    With `total` the rope is a ring of that many beads and neighbours are taken modulo `total`; without it the rope is
    open at its start and runs on without end.
    """
    steps = (1, around, around + 1)
    reached = {k + sign * step for step in steps for sign in (-1, 1)}
    if total is None:
        return tuple(sorted(bead for bead in reached if bead >= 0))
    return tuple(sorted({bead % total for bead in reached} - {k % total}))
