"""A bead's colour out of a photograph: the middle of an area, averaged in linear light, highlights left out."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from engine.pattern.colour import decoded, hex_of

BRIGHT = 1.6  # times the middle luminance of the area; what is brighter is a highlight (our judgement)
CLIPPED = 250  # of 255 in all three: the camera saw more light than it can tell
LEAST_SHARE = 0.1  # of the area that must be left; below it nothing is taken for a highlight


def sampled_colour(area: NDArray[np.uint8]) -> str:
    """The colour "#rrggbb" of an area (height, width, 3) of a photograph in sRGB, at least a pixel each way.

    Of the area its middle counts: the disc that touches its sides. Of that the highlights are left out, which show the
    lamp and not the bead.
    """
    pixels = area[_disc(*area.shape[:2])]
    linear = decoded(pixels / 255)
    luminance = linear @ np.array((0.2126, 0.7152, 0.0722))
    dull = (luminance <= BRIGHT * max(float(np.median(luminance)), 1e-4)) & (pixels.min(axis=1) < CLIPPED)
    kept = linear[dull] if dull.mean() >= LEAST_SHARE else linear
    return hex_of(kept.mean(axis=0, keepdims=True))[0]


def _disc(height: int, width: int) -> NDArray[np.bool_]:
    y, x = np.ogrid[:height, :width]
    inside: NDArray[np.bool_] = ((2 * y + 1) / height - 1) ** 2 + ((2 * x + 1) / width - 1) ** 2 <= 1
    return inside if inside.any() else np.ones((height, width), bool)
