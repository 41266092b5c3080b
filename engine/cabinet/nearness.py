"""The beads whose colour is nearest to another, and beads in the order of their hues."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from engine.cabinet.bead import Bead
from engine.pattern.colour import TOO_NEAR, Array, lab_of, least_apart, linear_rgb, pairwise

GREY = 8.0  # chroma in CIELAB below which a bead is called grey rather than by a hue (our judgement)
HUE_STEP = 15.0  # degrees that stand together, so that light and dark of a hue are beside each other
AT_ONCE = 256


class Near(NamedTuple):
    """A bead and its CIEDE2000 difference from the colour that was asked for."""

    bead: Bead
    difference: float


def nearest(colour: str, beads: Sequence[Bead], most: int | None = None) -> tuple[Near, ...]:
    """The beads by their difference from a colour "#rrggbb", the nearest first; `most` of them, or all."""
    if not beads:
        return ()
    apart = differences_from(colour, [bead.colour for bead in beads])
    order = np.argsort(apart, kind="stable")[:most]
    return tuple(Near(beads[place], float(apart[place])) for place in order.tolist())


def nearest_apart(colour: str, beads: Sequence[Bead], others: Iterable[str]) -> Near | None:
    """The nearest bead to a colour that none of the other colours looks like, to any eyes; None where none is so."""
    near, rest = nearest(colour, beads), list(others)
    if not rest:
        return near[0] if near else None
    apart_from = linear_rgb(rest)
    for first in range(0, len(near), AT_ONCE):
        some = near[first : first + AT_ONCE]
        apart = least_apart(linear_rgb([one.bead.colour for one in some]), apart_from)
        if (clear := np.flatnonzero(apart >= TOO_NEAR)).size:
            return some[int(clear[0])]
    return None


def differences_from(colour: str, colours: Sequence[str]) -> Array:
    """CIEDE2000 differences (m,) of colours "#rrggbb" from one."""
    return pairwise(_lab_of_all(tuple(colours)), _lab_of_all((colour,)))


@lru_cache(16)
def _lab_of_all(colours: tuple[str, ...]) -> Array:
    """CIELAB (m, 3) of colours, which are those of the same cabinet again and again."""
    found = lab_of(linear_rgb(colours))
    found.flags.writeable = False
    return found


def by_hue(beads: Sequence[Bead]) -> tuple[Bead, ...]:
    """The beads round the circle of hues from red on, the light before the dark of each; greys come last."""
    if not beads:
        return ()
    light, a, b = _lab_of_all(tuple(bead.colour for bead in beads)).T
    hue = np.floor(np.degrees(np.arctan2(b, a)) % 360 / HUE_STEP)
    family = np.where(np.hypot(a, b) < GREY, 360, hue)
    order = np.lexsort((-light, family))
    return tuple(beads[place] for place in order.tolist())
