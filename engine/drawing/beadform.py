"""The form of a bead, a rounded cylinder turned about its hole, and pictures of its depth from every side.

Lengths are in bead widths: the working diameter, the distance of two touching beads. The outline of such a bead depends
on one angle only, that between hole and line of sight, so 40 depth pictures show it from everywhere.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

Array = NDArray[Any]

HALF_LENGTH, RADIUS = 0.470, 0.570  # along the hole, across it
CORNER = 0.76 * min(HALF_LENGTH, RADIUS)
CORE_LENGTH, CORE_RADIUS = HALF_LENGTH - CORNER, RADIUS - CORNER  # the cylinder that the corner radius is wrapped round
BOUND = float(np.hypot(CORE_LENGTH, CORE_RADIUS)) + CORNER  # the sphere that holds the bead

ANGLES, SIDE, REACH = 40, 112, 1.50 * BOUND  # depth pictures: how many, half their size, half their extent
STEPS = 1 << 14  # depth steps in a bead width
NUMBER_BITS = 21  # a depth key holds the depth above these bits and the bead's number in them
FAR = -1 << 60


def walk(
    along: Array, lean: Array, beside: Array, square: Array, way: Array, steps: int, limit: float = 9.0
) -> tuple[Array, Array]:
    """How far to go from points p along rays v to the bead's surface, and how far off that still is.

    Given are p·hole, v·hole, p·v, p·p and a first guess. The distance to a convex body is convex along a ray, so from
    outside Newton's method cannot overshoot.
    """
    miss = way
    for _ in range(steps):
        t, m = along + way * lean, way + beside
        rho = np.sqrt(np.maximum(square + way * (m + beside) - t * t, 1e-9))
        over_end, over_side = np.maximum(np.abs(t) - CORE_LENGTH, 0), np.maximum(rho - CORE_RADIUS, 0)
        distance = np.sqrt(over_end * over_end + over_side * over_side) + 1e-9
        miss = distance - CORNER
        slope = (np.copysign(over_end, t) * lean + over_side * (m - t * lean) / rho) / distance
        way = way - np.clip(miss / np.maximum(slope, 0.06), -limit, limit)
    return way, miss


@lru_cache(1)
def depth_pictures() -> Array:
    """Depth keys of a bead over its middle, flat: (ANGLES, 2 × SIDE along the hole, SIDE across it)."""
    angle = np.arange(ANGLES, dtype=np.float32)[:, None] * np.float32(np.pi / 2 / (ANGLES - 1))
    u, w = np.mgrid[-SIDE:SIDE, :SIDE].reshape(2, -1).astype(np.float32) * (REACH / SIDE) + REACH / SIDE / 2
    inside = np.flatnonzero(u * u + w * w < BOUND * BOUND)
    u, square = u[inside], (u * u + w * w)[inside]
    start = np.sqrt(BOUND * BOUND - square)
    way, miss = walk(u * np.sin(angle), np.cos(angle), np.zeros(1, np.float32), square, start, 5)
    pictures = np.full((ANGLES, 2 * SIDE * SIDE), FAR, np.int64)
    pictures[:, inside] = np.where(miss < 0.006, (way * STEPS).astype(np.int64) << NUMBER_BITS, FAR)
    return pictures.ravel()
