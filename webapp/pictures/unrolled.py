"""The chart lying, as a small plain picture: every bead a few pixels, as wide and high as it lies on the rope."""

from __future__ import annotations

from io import BytesIO

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from engine.drawing.charts import ROW
from engine.pattern import lattice
from engine.pattern.pattern import Pattern
from engine.pattern.rgb import rgb

WIDEST_PX, LARGEST_BEAD_PX, LEAST_BEAD_PX = 1400, 16, 3
GAPS_FROM_PX = 6  # smaller beads stand without a gap
GAP = 0.07  # of a bead, on each side of the line between two


def unrolled(pattern: Pattern) -> bytes:
    """PNG on a clear ground."""
    image = Image.fromarray(_places(pattern))
    colours = [*(rgb(entry.colour) for entry in pattern.palette), (255, 255, 255)]
    image.putpalette([part for colour in colours for part in colour])
    out = BytesIO()
    image.save(out, "PNG", transparency=len(pattern.palette), compress_level=3)
    return out.getvalue()


def _places(pattern: Pattern) -> NDArray[np.uint8]:
    """The place in the palette of every pixel, one more than it has between beads and beside them."""
    beads, around = np.frombuffer(pattern.chart, np.uint8), pattern.around
    rows = lattice.rows(around, len(beads))
    bead = min(LARGEST_BEAD_PX, max(LEAST_BEAD_PX, int(WIDEST_PX / (rows * ROW))))
    along, across = (np.arange(round(rows * ROW * bead)) + 0.5) / (ROW * bead), np.arange((around + 1) * bead) + 0.5
    row = along.astype(int)[None]
    shifted = across[:, None] / bead - row % 2 / 2
    place = np.floor(shifted).astype(int)
    k = row // 2 * (2 * around + 1) + row % 2 * (around + 1) + place
    there = (place >= 0) & (place < around + 1 - row % 2) & (k < len(beads))
    if bead >= GAPS_FROM_PX:
        there &= (np.abs(shifted % 1 - 0.5) < 0.5 - GAP) & (np.abs(along % 1 - 0.5) < 0.5 - GAP)[None]
    seen: NDArray[np.uint8] = np.where(there, beads[np.clip(k, 0, len(beads) - 1)], len(pattern.palette)).astype(
        np.uint8
    )
    return seen
