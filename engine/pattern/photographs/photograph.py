"""A photograph as a chart: what is chosen, and the beads and colours that come of it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from engine.pattern.colour import linear_rgb
from engine.pattern.photographs.few_colours import few_colours, those_at_hand
from engine.pattern.photographs.laid import Laid, Summed
from engine.pattern.photographs.nearest import carried_on, mixed_evenly, nearest
from engine.pattern.photographs.oklab import linear_of_oklab, oklab_of
from engine.pattern.photographs.speckles import without_speckles

Array = NDArray[np.float64]

UNMIXED, EVENLY, CARRIED = "unmixed", "evenly", "carried"
MIXINGS: Mapping[str, Callable[[int, Array, Array], NDArray[np.int64]]] = MappingProxyType(
    {
        UNMIXED: lambda around, linear, palette: nearest(linear, palette),
        EVENLY: mixed_evenly,
        CARRIED: carried_on,
    }
)


@dataclass(frozen=True)
class Wish:
    """What is wanted of a photograph.

    Its colours are those `given`; without any, `many` that are found in it; where something is `at_hand`, those of it
    that are nearest to the found ones. `contrast` is a factor. Colours are "#rrggbb".
    """

    given: tuple[str, ...] = ()
    many: int = 6
    at_hand: tuple[str, ...] = ()
    contrast: float = 1.0
    mixing: str = UNMIXED
    calm: bool = False
    ground: str = "#ffffff"


@dataclass(frozen=True)
class Charted:
    """Beads in working order, the colours "#rrggbb" of their palette, and the place of each among those at hand."""

    beads: bytes
    colours: tuple[str, ...]
    at_hand: tuple[int, ...] = ()


def charted(picture: Summed, laid: Laid, wish: Wish) -> Charted:
    """The chart of a picture; colours that were not given and that no bead has are left out."""
    linear = contrasted(picture.means(laid, linear_rgb([wish.ground])[0]), wish.contrast)
    colours, places = _colours(linear, wish)
    beads = bytes(MIXINGS[wish.mixing](laid.around, linear, linear_rgb(colours)).astype(np.uint8))
    if wish.calm:
        beads = without_speckles(laid.around, beads)
    if wish.given:
        return Charted(beads, colours)
    used = sorted(set(beads))
    return Charted(
        beads=beads.translate(bytes(used.index(place) if place in used else 0 for place in range(256))),
        colours=tuple(colours[place] for place in used),
        at_hand=tuple(places[place] for place in used) if places else (),
    )


def contrasted(linear: Array, factor: float) -> Array:
    """Linear RGB (m, 3) with every lightness so many times as far from the mean of all, in OKLab."""
    lab = oklab_of(linear)
    mean = lab[:, 0].mean()
    lab[:, 0] = np.clip(mean + (lab[:, 0] - mean) * factor, 0, 1)
    return linear if factor == 1 else linear_of_oklab(lab)


def _colours(linear: Array, wish: Wish) -> tuple[tuple[str, ...], tuple[int, ...]]:
    """The colours of the palette, and the place of each among those at hand, where they come from there."""
    if wish.given:
        return wish.given, ()
    found = few_colours(linear, wish.many)
    if not wish.at_hand:
        return found, ()
    places = those_at_hand(found, wish.at_hand)
    return tuple(wish.at_hand[place] for place in places), places
