"""The eye above the table: where a point of the table stands in the picture, and how near it is.

Table space has x to the right, y away from the maker and z up; view space has z towards the eye. Lengths are in bead
widths.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from engine.drawing.beadform import BOUND, Array


class Seen(NamedTuple):
    """View position (m, 3), picture x and y in px, local scale in px per bead width."""

    view: Array
    x: Array
    y: Array
    scale: Array


@dataclass(frozen=True)
class Camera:
    """Picture size in px and `scale` in px per bead width at the table's middle.

    `tilt` of 0 looks straight down; `nearness` is one over the distance of the eye, 0 for a parallel view; `right` and
    `down` move the table's middle in the picture, in px.
    """

    width: int
    height: int
    scale: float
    tilt: float = 0.0
    nearness: float = 0.0
    right: float = 0.0
    down: float = 0.0

    def turn(self, vectors: Array) -> Array:
        """From table space to view space."""
        c, s = np.cos(self.tilt), np.sin(self.tilt)
        return np.asarray(vectors @ np.array([[1, 0, 0], [0, c, -s], [0, s, c]]))

    def project(self, points: Array) -> Seen:
        view = self.turn(points)
        scale = self.scale / (1 - view[:, 2] * self.nearness)
        x = self.width / 2 + self.right + view[:, 0] * scale
        return Seen(view, x, self.height / 2 + self.down - view[:, 1] * scale, scale)

    def near(self, view: Array) -> Array:
        """Closeness to the eye; only differences mean something."""
        if not self.nearness:
            return np.asarray(view[:, 2])
        return np.asarray(1 / self.nearness - np.linalg.norm(view - [0, 0, 1 / self.nearness], axis=1))

    def lines_of_sight(self, view: Array) -> Array:
        """Unit vectors from the points to the eye."""
        eye = np.column_stack([-view[:, :2] * self.nearness, 1 - view[:, 2] * self.nearness])
        return np.asarray(eye / np.linalg.norm(eye, axis=1, keepdims=True))


def fitted(points: Array, width: int, height: int, fill: float, tilt: float = 0.0, nearness: float = 0.0) -> Camera:
    """The camera that has beads at all the points in the middle of the picture and fills that share of it."""
    seen = Camera(width=0, height=0, scale=1.0, tilt=tilt, nearness=nearness).project(points)
    edge = 2 * BOUND * float(seen.scale.max())
    scale = fill * min(width / (float(np.ptp(seen.x)) + edge), height / (float(np.ptp(seen.y)) + edge))
    right, down = (-scale * float(v.max() + v.min()) / 2 for v in (seen.x, seen.y))
    return Camera(width=width, height=height, scale=scale, tilt=tilt, nearness=nearness, right=right, down=down)
