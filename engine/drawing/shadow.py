"""The shadow of a rope on the table: contact, lamp and sky, soft, worked out at low resolution."""

from __future__ import annotations

import numpy as np

from engine.drawing.beadform import RADIUS, Array
from engine.drawing.camera import Camera
from engine.drawing.laying import LaidRope
from engine.drawing.shading import KEY

RIM = 9  # bead widths round the picture, for ropes that run out of it
FADE = 0.06  # share of the picture's height over which a shadow on a clear ground runs out at its edges
SHADOWS = ((0.35, 0.40, 0.45, 1.6), (0.8, 0.85, 0.28, np.inf), (0.2, 2.4, 0.18, np.inf))
"""Contact, lamp and sky: lean, blur, strength, and the height above the table from which a bead no longer counts."""


class Shadow:
    """The shadow of a rope, and of points of other things beside it, in a picture: given out band by band."""

    def __init__(self, rope: LaidRope, camera: Camera, fading: bool = False, also: Array | None = None) -> None:
        self._step = int(np.clip(camera.scale / 8, 2, 8))
        self._rim = int(RIM * camera.scale / self._step)
        self._kept = _kept(rope, camera, self._step, self._rim, also)
        self._width = camera.width
        self._fade = (_fade(camera.height, camera.height), _fade(camera.width, camera.height)) if fading else None

    def rows(self, top: int, rows: int) -> Array:
        """Share of the light that the rope keeps from the table, (rows, width) in 0 to 1, from row `top` down."""
        (i, u), (j, v) = (self._cells(top, rows), self._cells(0, self._width))
        kept = self._kept[i] + (self._kept[i + 1] - self._kept[i]) * u[:, None]
        light = np.asarray(kept[:, j] + (kept[:, j + 1] - kept[:, j]) * v)
        return light if self._fade is None else light * self._fade[0][top : top + rows, None] * self._fade[1]

    def _cells(self, first: int, many: int) -> tuple[Array, Array]:
        """The cell of each px, and how far it lies towards the next."""
        px = np.arange(first, first + many)
        return px // self._step + self._rim, (px % self._step / self._step).astype(np.float32)


def _fade(length: int, height: int) -> Array:
    """Rises from 0 at both edges to 1: a shadow cut off straight would show where the picture ends."""
    px = np.arange(length, dtype=np.float32)
    return np.asarray(np.clip(np.minimum(px, length - 1 - px) / max(1.0, FADE * height), 0, 1), np.float32)


def _kept(rope: LaidRope, camera: Camera, step: int, rim: int, also: Array | None) -> Array:
    """As `Shadow.rows`, one value a cell of `step` px, with `rim` more cells all round."""
    points = rope.centre if also is None else np.concatenate([rope.centre, also])
    per = camera.scale / step  # cells in a bead width
    rows, columns = (-(-size // step) + 2 + 2 * rim for size in (camera.height, camera.width))
    lamp, flat = camera.turn(np.eye(3)) @ KEY, max(abs(float(np.cos(camera.tilt))), 0.2)
    height = points[:, 2] + rope.radius + RADIUS
    light = np.ones((rows, columns))
    for lean, blur, strength, highest in SHADOWS:
        low = height < highest
        fall = height[low, None] * [lamp[0] / lamp[2] * lean, lamp[1] / lamp[2] * lean, 1.0]
        mass = _counted(camera, points[low] - fall, step, rim, (rows, columns))
        light *= 1 - strength * (1 - np.exp(-0.8 * flat * per * per * _blurred(mass, (blur * per * flat, blur * per))))
    return np.asarray(1 - light, np.float32)


def _counted(camera: Camera, points: Array, step: int, rim: int, shape: tuple[int, int]) -> Array:
    """How many points fall into each cell."""
    seen = camera.project(points)
    column, row = (np.round(v / step).astype(int) + rim for v in (seen.x, seen.y))
    inside = (column >= 0) & (column < shape[1]) & (row >= 0) & (row < shape[0])
    cells = row[inside] * shape[1] + column[inside]
    return np.bincount(cells, minlength=shape[0] * shape[1]).reshape(shape).astype(float)


def _blurred(cells: Array, radii: tuple[float, float]) -> Array:
    """Three box blurs each way (rows, columns): close to a Gaussian."""
    for radius in radii:
        w = max(1, round(radius))
        for _ in range(3):
            sums = np.cumsum(np.pad(cells, ((w + 1, w), (0, 0))), axis=0)
            cells = (sums[2 * w + 1 :] - sums[: -2 * w - 1]) * (1 / (2 * w + 1))
        cells = np.ascontiguousarray(cells.T)
    return cells
