"""How the six finishes take the light: the numbers of each, and the looks of a palette's beads."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from engine.drawing.beadform import Array
from engine.pattern.palette import Entry
from engine.pattern.rgb import rgb


class Finish(NamedTuple):
    """Shares from 0 up.

    `body`: light thrown back by the colour; `shine`: mirror of lamp and window; `glow`: light that goes through;
    `metal`: how far the mirror takes the bead's colour; `play`: pearl's change of colour with the angle; `clear`: how
    far one sees into the bead; `lining`: whether what one sees there is a coloured hole.
    """

    body: float
    shine: float
    glow: float
    metal: float
    play: float
    clear: float
    lining: float


FINISH = {
    "opaque": Finish(body=1.00, shine=0.85, glow=0.00, metal=0.00, play=0.0, clear=0.0, lining=0.0),
    "matte": Finish(body=1.06, shine=0.04, glow=0.05, metal=0.00, play=0.0, clear=0.0, lining=0.0),
    "transparent": Finish(body=0.62, shine=1.05, glow=1.05, metal=0.00, play=0.0, clear=1.0, lining=0.0),
    "metallic": Finish(body=0.80, shine=1.25, glow=0.00, metal=0.80, play=0.0, clear=0.0, lining=0.0),
    "pearl": Finish(body=0.94, shine=0.62, glow=0.20, metal=0.22, play=1.0, clear=0.0, lining=0.0),
    "lined": Finish(body=0.95, shine=1.05, glow=0.55, metal=0.00, play=0.0, clear=1.0, lining=1.0),
}
CLEAR_GLASS = np.array([0.80, 0.83, 0.84])  # linear


def looks(entries: tuple[Entry, ...]) -> Array:
    """(entries, 3 + 7): linear red, green and blue, then the numbers of the finish."""
    return np.array([(*linear(entry.colour), *FINISH[entry.finish]) for entry in entries])


def linear(colour: str) -> Array:
    """ "#rrggbb" as linear light, 0 to 1."""
    v = srgb(colour) / 255
    return np.asarray(np.where(v <= 0.04045, v / 12.92, ((v + 0.055) / 1.055) ** 2.4))


def srgb(colour: str) -> Array:
    """ "#rrggbb" as three numbers, 0 to 255."""
    return np.array(rgb(colour), float)


_LEVEL = np.linspace(0, 1, 4097)
_SRGB = (255 * np.where(_LEVEL <= 0.0031308, 12.92 * _LEVEL, 1.055 * _LEVEL ** (1 / 2.4) - 0.055)).astype(np.float32)


def to_srgb(light: Array) -> Array:
    """Linear light as sRGB, 0 to 255; what is out of range is cut off."""
    return np.asarray(_SRGB[(np.clip(light, 0, 1) * 4096).astype(np.int32)])
