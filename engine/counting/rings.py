"""Where rings close in colour: every whole repeat, or with several parts every whole pass of those that fill.

Where the same chart fills both ends of a rope, they meet at the seam and close together after whole repeats.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import ceil, floor

from engine.pattern.pattern import Pattern
from engine.pattern.repeats import least_ring
from engine.pattern.shares import shared, whole_passes
from engine.units import whole

SAME = 1e-6  # whole steps within this share of one are those steps


def ring_step(pattern: Pattern) -> int:
    """By how many beads a ring grows from one that closes to the next; of several fills, beads among which one does.

    Nought of a rope that is worked in one size.
    """
    if not pattern.fills:
        return 0
    if len(pattern.parts) == 1 or meets_itself(pattern):
        return pattern.repeat
    return max(len(part.beads) for part in pattern.fills)


def meets_itself(pattern: Pattern) -> bool:
    """Whether the same chart fills both ends of a rope of several parts."""
    first, last = pattern.parts[0], pattern.parts[-1]
    return len(pattern.parts) > 1 and first.fills and last.fills and first.beads == last.beads


def ring_shares(
    pattern: Pattern,
    beads: float,
    rounded: Callable[[float], int] = whole,
    bead_mm: Sequence[float] | None = None,
) -> tuple[int, ...]:
    """Beads of every fill of the ring that closes nearest to so many beads in all; `rounded` may ask for the next.

    `bead_mm` as in `shared`.
    """
    least = least_ring(pattern.around)
    if not pattern.fills:
        return ()
    if len(pattern.parts) == 1:
        return (stepped(beads, 0, pattern.repeat, rounded, least),)
    if not meets_itself(pattern):
        return pass_shares(pattern, beads, rounded, bead_mm, least)
    inner = whole_passes(pattern.parts, beads - pattern.fixed_beads, rounded, bead_mm)[1:-1]
    others = pattern.fixed_beads + sum(inner)
    both = stepped(beads, others, pattern.repeat, rounded, least) - others
    return whole(both / 2), *inner, both - whole(both / 2)


def pass_shares(
    pattern: Pattern,
    beads: float,
    rounded: Callable[[float], int] = whole,
    bead_mm: Sequence[float] | None = None,
    least: int = 1,
) -> tuple[int, ...]:
    """Beads of every fill, whole passes each, of a rope of about so many beads in all, and `least` or more."""
    fixed = pattern.fixed_beads
    if len(pattern.fills) == 1:
        return (stepped(beads, fixed, len(pattern.main.beads), rounded, least) - fixed,)
    shares = whole_passes(pattern.parts, beads - fixed, rounded, bead_mm)
    while shares and fixed + sum(shares) < least:
        beads += pattern.around
        shares = whole_passes(pattern.parts, beads - fixed, rounded, bead_mm)
    return shares


def uneven_passes(
    pattern: Pattern, beads: float, rounded: Callable[[float], int] = whole, least: int = 1
) -> tuple[int, int]:
    """Beads of the two fills round a motif, whole passes that may be one more before it than behind it.

    Both have as many beads; with three passes or more, one at least stands on each side.
    """
    chart, fixed = len(pattern.main.beads), pattern.fixed_beads
    passes = max(2, (stepped(beads, fixed, chart, rounded, least) - fixed) // chart)
    return chart * (passes - passes // 2), chart * (passes // 2)


def shares_close(pattern: Pattern, shares: Sequence[int]) -> bool:
    """Whether the ring in which the fills have so many beads closes in colour; the half bead never prevents it."""
    if pattern.fixed_beads + sum(shares) < least_ring(pattern.around) or not all(shares):
        return False
    if len(pattern.parts) == 1:
        return sum(shares) % pattern.repeat == 0
    charts = [len(part.beads) for part in pattern.fills]
    if meets_itself(pattern):
        if (shares[0] + shares[-1]) % pattern.repeat:
            return False
        charts, shares = charts[1:-1], shares[1:-1]
    return all(share % chart == 0 for share, chart in zip(shares, charts, strict=True))


def closes(pattern: Pattern, beads: int) -> bool:
    """Whether a ring of so many beads in all closes in colour."""
    between = beads - pattern.fixed_beads
    shares = shared(pattern.parts, max(0, between))
    return sum(shares) == between and shares_close(pattern, shares)


def smallest_ring(pattern: Pattern) -> int:
    """The fewest beads at which a ring closes and is long enough to be whole (`least_ring`)."""
    return nearest_ring(pattern, 0.0)


def nearest_ring(pattern: Pattern, beads: float, rounded: Callable[[float], int] = whole) -> int:
    """Beads of the ring that closes nearest to so many; `rounded` may ask for the next (`round_up`) or last one."""
    return pattern.fixed_beads + sum(ring_shares(pattern, beads, rounded))


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
