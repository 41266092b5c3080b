"""How far apart two bead colours look, in plain sight and to colour-blind eyes.

Differences are CIEDE2000 (Sharma, Wu, Dalal 2005). coloraide is the authority for a single pair; the numpy form serves
whole palettes and is tested against it. Colour-blind sight is simulated after Machado, Oliveira and Fernandes (2009),
severity 1, on linear RGB.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import combinations
from types import MappingProxyType
from typing import NamedTuple

import numpy as np
from coloraide import Color
from numpy.typing import NDArray

from engine.pattern.palette import Palette

Array = NDArray[np.float64]

TOO_NEAR = 7.0  # two beads of a palette nearer than this are questioned (our judgement for beads of 2 mm)
PLAIN = "plain"
DEFICIENCIES = MappingProxyType(
    {
        "protan": ((0.152286, 1.052583, -0.204868), (0.114503, 0.786281, 0.099216), (-0.003882, -0.048116, 1.051998)),
        "deutan": ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.011820, 0.042940, 0.968881)),
        "tritan": ((1.255528, -0.076749, -0.178779), (-0.078411, 0.930809, 0.147602), (0.004733, 0.691367, 0.303900)),
    }
)
SIGHTS = (PLAIN, *DEFICIENCIES)

_TO_XYZ = np.array(
    (
        (0.4123907993, 0.3575843394, 0.1804807884),
        (0.2126390059, 0.7151686788, 0.0721923154),
        (0.0193308187, 0.1191947798, 0.9505321522),
    )
)
_WHITE = _TO_XYZ.sum(axis=1)


class LookAlike(NamedTuple):
    """Two palette entries that look alike, to whom most, and how far apart they are to those eyes."""

    first: int
    second: int
    sight: str
    difference: float


def difference(one: str, other: str) -> float:
    """CIEDE2000 difference of two colours "#rrggbb", D65; 1 is just seen side by side."""
    return float(Color(one).convert("lab-d65").delta_e(Color(other), method="2000", space="lab-d65"))


@lru_cache(64)
def look_alikes(palette: Palette) -> tuple[LookAlike, ...]:
    """Pairs of the palette nearer than TOO_NEAR to some eyes, the nearest first."""
    linear = _linear([entry.colour for entry in palette])
    apart = {sight: differences(_lab(seen_by(linear, sight))) for sight in SIGHTS}
    found = []
    for first, second in combinations(range(len(palette)), 2):
        near = {sight: float(matrix[first, second]) for sight, matrix in apart.items()}
        sight = PLAIN if near[PLAIN] < TOO_NEAR else min(near, key=near.__getitem__)
        if near[sight] < TOO_NEAR:
            found.append(LookAlike(first, second, sight, near[sight]))
    return tuple(sorted(found, key=lambda pair: (pair.difference, pair.first, pair.second)))


def lab(colours: Sequence[str]) -> tuple[tuple[float, float, float], ...]:
    """CIELAB (D65) of colours "#rrggbb": lightness, a, b."""
    return tuple((float(light), float(a), float(b)) for light, a, b in _lab(_linear(list(colours)))) if colours else ()


def simulated(colour: str, sight: str) -> str:
    """The colour "#rrggbb" as those eyes see it."""
    linear = seen_by(_linear([colour]), sight)[0]
    encoded = np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055)
    return "#" + "".join(f"{int(value * 255 + 0.5):02x}" for value in encoded)


def seen_by(linear: Array, sight: str) -> Array:
    """Linear RGB (m, 3) as those eyes see it, clipped to 0 … 1."""
    if sight == PLAIN:
        return linear
    seen: Array = np.clip(linear @ np.array(DEFICIENCIES[sight]).T, 0, 1)
    return seen


def _linear(colours: list[str]) -> Array:
    coded = np.array([[int(colour[i : i + 2], 16) for i in (1, 3, 5)] for colour in colours]) / 255
    linear: Array = np.where(coded <= 0.04045, coded / 12.92, ((coded + 0.055) / 1.055) ** 2.4)
    return linear


def _lab(linear: Array) -> Array:
    ratio = linear @ _TO_XYZ.T / _WHITE
    f = np.where(ratio > 216 / 24389, np.cbrt(ratio), (24389 / 27 * ratio + 16) / 116)
    return np.stack([116 * f[:, 1] - 16, 500 * (f[:, 0] - f[:, 1]), 200 * (f[:, 1] - f[:, 2])], axis=1)


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
