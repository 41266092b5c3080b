"""How the lines of a short repeat lean: a colour runs along the shortest way to the same place of the repeat.

The flat model of touching beads: a bead on is one width along a1, a round on one width along a2 at 120 degrees to it;
once round the rope is N·a1 − a2 (Baker and Goldstine's bead plane, from memory).
"""

from __future__ import annotations

from math import atan2, degrees, hypot, sqrt
from typing import NamedTuple

from engine.units import degrees as degrees_in_words

STRAIGHT = 12.0  # degrees off the axis that are nearly along the rope
FLAT = 60.0  # and those from which a line goes round it


class Lean(NamedTuple):
    """The line of a repeat: from a bead to the one `step` beads on, at `degrees` from the rope's axis.

    Right-handed work seen from outside, working end up: above nought it leans to the right.
    """

    step: int
    degrees: float


def lean(around: int, repeat: int) -> Lean:
    """The lean of a repeat of that many beads.

    >>> lean(6, 7).step, round(lean(6, 7).degrees, 2), round(lean(6, 6).degrees, 2)
    (7, 22.41, -37.59)
    """
    reach = range(-repeat - 1, repeat + 2)
    ways = ((x, y) for x in reach for y in range(repeat + 2) if x + around * y > 0 and (x + around * y) % repeat == 0)
    x, y = min(ways, key=lambda way: (round(_length(*way), 9), way[0] + around * way[1]))
    return Lean(x + around * y, _off_axis(around, x, y))


def lean_in_words(around: int, repeat: int) -> str:
    """What the lines of a repeat do: "lines lean to the right, 22°"."""
    off = lean(around, repeat).degrees
    if abs(off) <= STRAIGHT:
        return f"lines run nearly along the rope, {degrees_in_words(abs(off)).lstrip('+')} off"
    if abs(off) >= FLAT:
        return "lines go round the rope"
    return f"lines lean to the {'right' if off > 0 else 'left'}, {degrees_in_words(abs(off)).lstrip('+')}"


def _length(x: int, y: int) -> float:
    return hypot(x - y / 2, y * sqrt(3) / 2)


def _off_axis(around: int, x: int, y: int) -> float:
    """Degrees from the axis, which stands upright on the way round the rope."""
    own = atan2(y * sqrt(3) / 2, x - y / 2)
    round_rope = atan2(-sqrt(3) / 2, around + 0.5)
    off = 90 - degrees(own - round_rope)
    return off if off <= 90 else off - 180
