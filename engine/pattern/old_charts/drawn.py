"""How a chart is drawn on paper: how rows follow one another, and where in its box the middle of every bead is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import sqrt
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from engine.errors import EngineError
from engine.pattern.notation import MOST_BEADS

Array = NDArray[np.float64]

TURNS, SHIFTED, STRAIGHT = "turns", "shifted", "straight"
SQUARES, BRICKS, HEXAGONS = "squares", "bricks", "hexagons"
PITCH: Mapping[str, float] = MappingProxyType({SQUARES: 1.0, BRICKS: sqrt(3) / 2, HEXAGONS: sqrt(3) / 2})
OVERLAP = 1 / 3  # of hexagons, by which the outer row stands beyond its own pitch, in pitches


@dataclass(frozen=True)
class Drawn:
    """A chart on paper.

    Rows hold N + 1 and N beads by TURNS, N beads SHIFTED by half a bead in every other row, or N beads STRAIGHT over
    one another. `inset` says that the first row is the one that stands half a bead in, and of TURNS the shorter one.
    Upright, the first row is the lowest and is read from the left; `lying`, it is the left one and is read from the
    top; `backwards` from the other side. Raises EngineError.
    """

    around: int
    rows: int
    rowing: str = TURNS
    shape: str = BRICKS
    lying: bool = False
    inset: bool = False
    backwards: bool = False

    def __post_init__(self) -> None:
        if not 1 <= self.rows * self.around <= MOST_BEADS:
            raise EngineError(f"So many rows would be more than {MOST_BEADS:,} beads, or none.", "rows")

    @property
    def across(self) -> float:
        """Width of the box, in beads."""
        return self.around + {TURNS: 1.0, SHIFTED: 0.5, STRAIGHT: 0.0}[self.rowing]

    def middles(self) -> Array:
        """The middle of every bead (m, 2) in working order, shares of the box across and down."""
        overlap = OVERLAP if self.shape == HEXAGONS else 0.0
        lengths = np.array([self.row_length(row) for row in range(self.rows)])
        row = np.repeat(np.arange(self.rows), lengths)
        place = np.arange(len(row)) - np.repeat(np.cumsum(lengths) - lengths, lengths)
        along = (row + 0.5 + overlap / 2) / (self.rows + overlap)
        over = (place + 0.5 + np.where(self._in(row), 0.5, 0.0)) / self.across
        over = 1 - over if self.backwards else over
        return np.stack([along, over] if self.lying else [over, 1 - along], axis=1)

    def row_length(self, row: int) -> int:
        """How many beads a row holds."""
        return self.around + int(self.rowing == TURNS and not self._in(row))

    def bead(self) -> tuple[float, float]:
        """Width and height of a bead, shares of the box."""
        wide, high = 1 / self.across, 1 / (self.rows + (OVERLAP if self.shape == HEXAGONS else 0.0))
        return (high, wide) if self.lying else (wide, high)

    def _in(self, row: NDArray[np.int64] | int) -> NDArray[np.bool_]:
        """Whether a row stands half a bead in."""
        odd: NDArray[np.bool_] = (np.asarray(row) % 2 == 1) != self.inset
        return odd & (self.rowing != STRAIGHT)


def rows_in(across: float, shape: str, high_by_wide: float) -> int:
    """How many rows a box likely holds that is so many beads wide and so many times as high as it is wide."""
    overlap = OVERLAP if shape == HEXAGONS else 0.0
    return max(1, round(across * high_by_wide / PITCH[shape] - overlap))
