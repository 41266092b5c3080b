"""OKLab (Ottosson 2020; the values of CSS Color 4), in which equal steps look alike: colours are gathered in it."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

_TO_CONES = np.array(
    (
        (0.4122214708, 0.5363325363, 0.0514459929),
        (0.2119034982, 0.6806995451, 0.1073969566),
        (0.0883024619, 0.2817188376, 0.6299787005),
    )
)
_TO_LAB = np.array(
    (
        (0.2104542553, 0.7936177850, -0.0040720468),
        (1.9779984951, -2.4285922050, 0.4505937099),
        (0.0259040371, 0.7827717662, -0.8086757660),
    )
)
_FROM_CONES, _FROM_LAB = np.linalg.inv(_TO_CONES), np.linalg.inv(_TO_LAB)


def oklab_of(linear: Array) -> Array:
    """OKLab (m, 3), lightness 0 … 1 first, of linear RGB (m, 3)."""
    lab: Array = np.cbrt(linear @ _TO_CONES.T) @ _TO_LAB.T
    return lab


def linear_of_oklab(lab: Array) -> Array:
    """Linear RGB (m, 3) of OKLab (m, 3), clipped to what a screen shows, 0 … 1."""
    linear: Array = np.clip((lab @ _FROM_LAB.T) ** 3 @ _FROM_CONES.T, 0, 1)
    return linear
