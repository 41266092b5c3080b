"""A picture laid round the rope: along it from left to right, round it from top to bottom, as the lying chart is drawn.

A bead stands in a field one bead wide and a row high, and its colour is the mean of the picture in that field. Fields
go on across the seam, where the top of the picture meets its foot, and from the end of the chart to its next beginning.
What the picture does not cover is ground.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, sqrt

import numpy as np
from numpy.typing import NDArray

from engine.errors import EngineError
from engine.pattern.notation import MOST_BEADS

Array = NDArray[np.float64]

ROW = sqrt(3) / 2  # height of a row of touching beads, in bead widths


@dataclass(frozen=True)
class Laid:
    """Where a picture lies: an even number of `rows`; `high` beads round the rope and `wide` bead widths along it."""

    around: int
    rows: int
    high: float
    wide: float

    @property
    def beads(self) -> int:
        return self.rows // 2 * (2 * self.around + 1)

    @property
    def girth(self) -> float:
        """Round the rope, in bead widths."""
        return self.around + 0.5

    @property
    def length(self) -> float:
        """Of the chart along the rope, in bead widths."""
        return self.rows * ROW


def lay(around: int, shape: float, high: float = 0, rows: int = 0, gap: int = 0) -> Laid:
    """A picture that is `shape` times as wide as it is high, in its own proportions.

    `high` beads of the round are for the picture, all where that is 0. It is stretched to so many `rows` where they are
    given; `gap` rows of ground follow. Without a gap it is stretched by less than a row, so that it meets itself and
    stands straight. Raises EngineError naming the field.
    """
    girth = around + 0.5
    tall = high if 0 < high < around else girth
    wide = rows * ROW if rows else tall * shape
    pairs = (wide / ROW + gap) / 2
    whole = 2 * max(1, ceil(pairs) if gap else round(pairs))
    laid = Laid(around, whole, tall, wide if gap else whole * ROW)
    if laid.beads > MOST_BEADS:
        raise EngineError(
            f"The picture would take {laid.beads:,} beads; a chart has at most {MOST_BEADS:,}.",
            "rows" if rows else "high",
        )
    return laid


class Summed:
    """A picture that is ready to be averaged over any field: RGB in linear light times cover, and cover, (h, w, 4)."""

    def __init__(self, picture: NDArray[np.float32]) -> None:
        self.height, self.width = int(picture.shape[0]), int(picture.shape[1])
        self._sums = np.zeros((self.height + 1, self.width + 1, 4))
        np.cumsum(picture, axis=0, dtype=np.float64, out=self._sums[1:, 1:])
        np.cumsum(self._sums[1:, 1:], axis=1, out=self._sums[1:, 1:])

    @property
    def shape(self) -> float:
        """How many times as wide as high it is."""
        return self.width / self.height

    def means(self, laid: Laid, ground: Array) -> Array:
        """Linear RGB (beads, 3) of every bead in working order, over a ground (3,)."""
        turns = np.arange(laid.beads) / laid.girth
        x, y = turns * ROW, turns % 1 * laid.girth
        total = self._within(x + ROW, y + 1, laid) - self._within(x, y + 1, laid)
        total += self._within(x, y, laid) - self._within(x + ROW, y, laid)
        mean = total * (laid.wide / self.width) * (laid.high / self.height) / ROW
        over: Array = np.clip(mean[:, :3] + (1 - mean[:, 3:]) * ground, 0, 1)
        return over

    def _within(self, x: Array, y: Array, laid: Laid) -> Array:
        """The sum from the corner of the first chart to a place on charts that follow one another both ways."""
        across, along = np.divmod(y, laid.girth), np.divmod(x, laid.length)
        top = (laid.girth - laid.high) / 2
        down = np.clip((across[1] - top) / laid.high, 0, 1) * self.height
        right = np.clip(along[1] / laid.wide, 0, 1) * self.width
        foot, edge = np.full_like(down, self.height), np.full_like(right, self.width)
        over, on = across[0][:, None], along[0][:, None]
        total: Array = (
            self._up_to(right, down)
            + on * self._up_to(edge, down)
            + over * self._up_to(right, foot)
            + on * over * self._sums[-1, -1]
        )
        return total

    def _up_to(self, x: Array, y: Array) -> Array:
        """The sum over the picture left of x and above y, pixels; within a pixel by its part."""
        column, row = np.minimum(x.astype(int), self.width - 1), np.minimum(y.astype(int), self.height - 1)
        right, down = (x - column)[:, None], (y - row)[:, None]
        above = self._sums[row, column] * (1 - right) + self._sums[row, column + 1] * right
        below = self._sums[row + 1, column] * (1 - right) + self._sums[row + 1, column + 1] * right
        partly: Array = above * (1 - down) + below * down
        return partly
