"""How a chart repeats: its shortest repeat, the drift of a pass, whether a ring closes."""

from __future__ import annotations

from typing import NamedTuple


class Drift(NamedTuple):
    """How far a pass turns round the rope: signed beads in (−(N + ½)/2, (N + ½)/2], and the same in degrees."""

    beads: float
    degrees: float


def repeat(beads: bytes) -> int:
    """Length of the shortest stretch that divides the chart and, said again and again, gives it.

    >>> repeat(b"ABCABC"), repeat(b"AABAA")
    (3, 5)
    """
    return (beads + beads).find(beads, 1) if beads else 0


def drift(around: int, beads: int) -> Drift:
    """How far that many beads turn round the rope."""
    halves = 2 * around + 1
    rest = 2 * beads % halves
    signed = rest if 2 * rest <= halves else rest - halves
    return Drift(signed / 2, signed / halves * 360)


def least_ring(around: int) -> int:
    """From how many beads on every ring is whole: six different neighbours a bead, 3T edges, 2T triangles (2N + 3).

    Some smaller rings have six neighbours a bead too (6 around: 9 to 11 beads), but not all of these.
    """
    return 2 * around + 3


def closes(around: int, repeat_beads: int, total: int) -> bool:
    """Whether a ring of that many beads closes in colour; the half bead never prevents it."""
    return total >= least_ring(around) and total % repeat_beads == 0
