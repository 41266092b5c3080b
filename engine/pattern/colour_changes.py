"""How the colour of a bead would have to change so that no other bead of its palette looks like it."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from engine.pattern.colour import (
    TOO_NEAR,
    Array,
    LookAlike,
    hex_of,
    lab_of,
    least_apart,
    linear_of,
    linear_rgb,
    pairwise,
)
from engine.pattern.palette import Palette

# What is tried: every step of lightness, chroma from none to half as much again, hues of the same family.
LIGHTNESS = np.arange(6.0, 98.0, 2.0)
CHROMA = np.arange(0.0, 1.51, 0.1)
LEAST_CHROMA = 4.0  # below it a colour is a grey, whose chroma has no share to be taken of
HUES = np.radians((0.0, -10.0, 10.0, -20.0, 20.0))
AT_ONCE = 256
LIGHTER, STRONGER = 3.0, 4.0  # differences of lightness and chroma that are worth a word


class ColourChange(NamedTuple):
    """Another colour for an entry of a palette, and how it differs from its own: "darker", "lighter and greyer"."""

    entry: int
    colour: str
    words: str


@lru_cache(256)
def nearest_change(palette: Palette, pair: LookAlike) -> ColourChange | None:
    """The smallest change to one of the two after which it can be told from all others, by all eyes; None for none."""
    linear = linear_rgb([entry.colour for entry in palette])
    nearest = [(*change, entry) for entry in (pair.second, pair.first) if (change := _nearest(linear, entry))]
    if not nearest:
        return None
    _, colour, entry = min(nearest, key=lambda change: change[0])
    return ColourChange(entry, colour, in_words(palette[entry].colour, colour))


def in_words(old: str, new: str) -> str:
    """How the new colour differs: lighter or darker, stronger or greyer, else of another shade."""
    (old_light, *old_hue), (new_light, *new_hue) = lab_of(linear_rgb([old, new])).tolist()
    light, chroma = new_light - old_light, np.hypot(*new_hue) - np.hypot(*old_hue)
    words = []
    if abs(light) >= LIGHTER:
        words.append("lighter" if light > 0 else "darker")
    if abs(chroma) >= STRONGER:
        words.append("stronger" if chroma > 0 else "greyer")
    return " and ".join(words) or "of another shade"


def _nearest(linear: Array, entry: int) -> tuple[float, str] | None:
    """The nearest colour for that entry that no other looks like, and how far it is from its own."""
    own = lab_of(linear[entry : entry + 1])[0]
    others = np.delete(linear, entry, axis=0)
    tried = _family(own)
    far = pairwise(tried, own)
    order = np.argsort(far, kind="stable")
    for start in range(0, len(order), AT_ONCE):
        some = order[start : start + AT_ONCE]
        colours = hex_of(linear_of(tried[some]))
        apart = least_apart(linear_rgb(colours), others)
        if (clear := np.flatnonzero(apart >= TOO_NEAR)).size:
            return float(far[some[clear[0]]]), colours[clear[0]]
    return None


def _family(own: Array) -> Array:
    """CIELAB of colours of the same hue family that a screen can show."""
    light, chroma, turn = (part.ravel() for part in np.meshgrid(LIGHTNESS, CHROMA, HUES, indexing="ij"))
    reach, hue = max(LEAST_CHROMA, float(np.hypot(own[1], own[2]))), np.arctan2(own[2], own[1])
    tried = np.stack([light, chroma * reach * np.cos(hue + turn), chroma * reach * np.sin(hue + turn)], axis=1)
    linear = linear_of(tried)
    shown: Array = tried[((linear >= 0) & (linear <= 1)).all(axis=1)]
    return shown
