"""How far apart two bead colours look, in plain sight and to colour-blind eyes.

Differences are CIEDE2000 (Sharma, Wu, Dalal 2005). coloraide is the authority for a single pair; the numpy form serves
whole palettes and is tested against it. Colour-blind sight is simulated on linear RGB: protan and deutan after Machado,
Oliveira and Fernandes (2009), severity 1; tritan after Brettel, Viénot and Mollon (1997), who draw colours onto two
half planes, because Machado's single matrix is only an approximation there.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import combinations
from types import MappingProxyType
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from engine.pattern.palette import Palette
from engine.pattern.rgb import rgb

Array = NDArray[np.float64]

TOO_NEAR = 7.0  # two beads of a palette nearer than this are questioned (our judgement for beads of 2 mm)
PLAIN = "plain"
PROTAN_AND_DEUTAN = MappingProxyType(
    {
        "protan": ((0.152286, 1.052583, -0.204868), (0.114503, 0.786281, 0.099216), (-0.003882, -0.048116, 1.051998)),
        "deutan": ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.011820, 0.042940, 0.968881)),
    }
)
# Of a tritan eye: the half plane of colours above `TRITAN_DIVIDE` and that of all others.
TRITAN_ABOVE = (
    (1.012773345, 0.135484110, -0.148257455),
    (-0.012433453, 0.868121047, 0.144312407),
    (0.075894787, 0.804999605, 0.119105608),
)
TRITAN_BELOW = (
    (0.936783928, 0.189787938, -0.126571866),
    (0.061533928, 0.815262213, 0.123203859),
    (-0.375607982, 1.127654123, 0.247953859),
)
TRITAN_DIVIDE = (0.039014608, -0.027880758, -0.01113385)
DEFICIENCIES = (*PROTAN_AND_DEUTAN, "tritan")
SIGHTS = (PLAIN, *DEFICIENCIES)

_TO_XYZ = np.array(
    (
        (0.4123907993, 0.3575843394, 0.1804807884),
        (0.2126390059, 0.7151686788, 0.0721923154),
        (0.0193308187, 0.1191947798, 0.9505321522),
    )
)
_FROM_XYZ = np.linalg.inv(_TO_XYZ)
_WHITE = _TO_XYZ.sum(axis=1)


class ColourPair(NamedTuple):
    """Two palette entries and how far apart they are to the eyes of SIGHTS, in that order."""

    first: int
    second: int
    apart: tuple[float, ...]

    @property
    def least(self) -> float:
        """How far apart they are to the eyes that see least of the difference."""
        return min(self.apart)


class LookAlike(NamedTuple):
    """Two palette entries that look alike, to whom most, and how far apart they are to those eyes."""

    first: int
    second: int
    sight: str
    difference: float


def difference(one: str, other: str) -> float:
    """CIEDE2000 difference of two colours "#rrggbb", D65; 1 is just seen side by side."""
    from coloraide import Color  # late: it works out tables as it is loaded, and whoever only shows pages needs none

    return float(Color(one).convert("lab-d65").delta_e(Color(other), method="2000", space="lab-d65"))


@lru_cache(64)
def look_alikes(palette: Palette) -> tuple[LookAlike, ...]:
    """Pairs of the palette nearer than TOO_NEAR to some eyes, the nearest first."""
    found = []
    for first, second, apart in colour_pairs(palette):
        near = dict(zip(SIGHTS, apart, strict=True))
        sight = PLAIN if near[PLAIN] < TOO_NEAR else min(near, key=near.__getitem__)
        if near[sight] < TOO_NEAR:
            found.append(LookAlike(first, second, sight, near[sight]))
    return tuple(sorted(found, key=lambda pair: (pair.difference, pair.first, pair.second)))


@lru_cache(64)
def colour_pairs(palette: Palette) -> tuple[ColourPair, ...]:
    """Every pair of the palette, in its order."""
    linear = linear_rgb([entry.colour for entry in palette])
    apart = np.stack([differences(lab_of(seen_by(linear, sight))) for sight in SIGHTS], axis=-1)
    return tuple(
        ColourPair(first, second, tuple(apart[first, second].tolist()))
        for first, second in combinations(range(len(palette)), 2)
    )


def lab(colours: Sequence[str]) -> tuple[tuple[float, float, float], ...]:
    """CIELAB (D65) of colours "#rrggbb": lightness, a, b."""
    return tuple((float(light), float(a), float(b)) for light, a, b in lab_of(linear_rgb(colours))) if colours else ()


def simulated(colour: str, sight: str) -> str:
    """The colour "#rrggbb" as those eyes see it."""
    return hex_of(seen_by(linear_rgb([colour]), sight))[0]


def seen_by(linear: Array, sight: str) -> Array:
    """Linear RGB (m, 3) as those eyes see it, clipped to 0 … 1."""
    if sight == PLAIN:
        return linear
    if sight == "tritan":
        above = (linear @ np.array(TRITAN_DIVIDE) > 0)[:, None]
        drawn = np.where(above, linear @ np.array(TRITAN_ABOVE).T, linear @ np.array(TRITAN_BELOW).T)
    else:
        drawn = linear @ np.array(PROTAN_AND_DEUTAN[sight]).T
    seen: Array = np.clip(drawn, 0, 1)
    return seen


def linear_rgb(colours: Sequence[str]) -> Array:
    """Linear RGB (m, 3) of colours "#rrggbb", 0 … 1."""
    return decoded(np.array([rgb(colour) for colour in colours]) / 255)


def decoded(coded: Array) -> Array:
    """Linear RGB of sRGB values, both 0 … 1."""
    linear: Array = np.where(coded <= 0.04045, coded / 12.92, ((coded + 0.055) / 1.055) ** 2.4)
    return linear


def hex_of(linear: Array) -> tuple[str, ...]:
    """Linear RGB (m, 3) as "#rrggbb"."""
    coded = np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * np.maximum(linear, 0) ** (1 / 2.4) - 0.055)
    return tuple("#" + "".join(f"{value:02x}" for value in row) for row in (coded * 255 + 0.5).astype(int).tolist())


def lab_of(linear: Array) -> Array:
    """CIELAB (D65) of linear RGB (m, 3)."""
    ratio = linear @ _TO_XYZ.T / _WHITE
    f = np.where(ratio > 216 / 24389, np.cbrt(ratio), (24389 / 27 * ratio + 16) / 116)
    return np.stack([116 * f[:, 1] - 16, 500 * (f[:, 0] - f[:, 1]), 200 * (f[:, 1] - f[:, 2])], axis=1)


def linear_of(lab: Array) -> Array:
    """Linear RGB of CIELAB (m, 3); outside 0 … 1 where no screen shows the colour."""
    light = (lab[:, 0] + 16) / 116
    f = np.stack([light + lab[:, 1] / 500, light, light - lab[:, 2] / 200], axis=1)
    linear: Array = np.where(f**3 > 216 / 24389, f**3, (116 * f - 16) * 27 / 24389) * _WHITE @ _FROM_XYZ.T
    return linear


def least_apart(linear: Array, others: Array) -> Array:
    """How far each colour (m, 3) is from the nearest of the others (n, 3), to the eyes that see least of it; n ≥ 1.

    Both are linear RGB; gives (m,).
    """
    least: Array = apart_by_sight(linear, others).min(axis=(0, 2))
    return least


def apart_by_sight(linear: Array, others: Array) -> Array:
    """CIEDE2000 differences (sights, m, n) of colours (m, 3) from others (n, 3), both linear RGB, to each of SIGHTS."""
    return np.stack(
        [pairwise(lab_of(seen_by(linear, sight))[:, None], lab_of(seen_by(others, sight))[None]) for sight in SIGHTS]
    )


def differences(lab: Array) -> Array:
    """CIEDE2000 differences (m, m) of Lab colours (m, 3), each against each."""
    return pairwise(lab[:, None, :], lab[None, :, :])


def pairwise(one: Array, other: Array) -> Array:
    """CIEDE2000 differences of Lab colours, the last axis L, a, b; the rest is broadcast."""
    (l1, a1, b1), (l2, a2, b2) = np.moveaxis(one, -1, 0), np.moveaxis(other, -1, 0)
    mean_chroma = (np.hypot(a1, b1) + np.hypot(a2, b2)) / 2
    grow = 1.5 - 0.5 * np.sqrt(mean_chroma**7 / (mean_chroma**7 + 25.0**7))
    c1, c2 = np.hypot(a1 * grow, b1), np.hypot(a2 * grow, b2)
    h1, h2 = np.degrees(np.arctan2(b1, a1 * grow)) % 360, np.degrees(np.arctan2(b2, a2 * grow)) % 360
    grey = c1 * c2 == 0
    turn = np.where(grey, 0, (h2 - h1 + 180) % 360 - 180)
    hue = np.where(grey, h1 + h2, _mean_hue(h1, h2))
    lightness, chroma = (l1 + l2) / 2, (c1 + c2) / 2
    weigh = 1 - 0.17 * _cos(hue - 30) + 0.24 * _cos(2 * hue) + 0.32 * _cos(3 * hue + 6) - 0.20 * _cos(4 * hue - 63)
    far = (lightness - 50) ** 2
    dl = (l2 - l1) / (1 + 0.015 * far / np.sqrt(20 + far))
    dc = (c2 - c1) / (1 + 0.045 * chroma)
    dh = 2 * np.sqrt(c1 * c2) * np.sin(np.radians(turn / 2)) / (1 + 0.015 * chroma * weigh)
    blue = np.sin(np.radians(60 * np.exp(-(((hue - 275) / 25) ** 2))))
    rotate = -2 * np.sqrt(chroma**7 / (chroma**7 + 25.0**7)) * blue
    apart: Array = np.sqrt(dl**2 + dc**2 + dh**2 + rotate * dc * dh)
    return apart


def _mean_hue(h1: Array, h2: Array) -> Array:
    wide = np.abs(h1 - h2) > 180
    mean: Array = (h1 + h2) / 2 + np.where(wide, np.where(h1 + h2 < 360, 180, -180), 0)
    return mean


def _cos(degrees: Array) -> Array:
    value: Array = np.cos(np.radians(degrees))
    return value
