"""Where a flat sheet lies in a picture: in perspective by its four corners, and bent by further points of it.

Places on the sheet are shares of a chart's box, 0 … 1, across and down; those in a picture are shares of its width and
height. Bent paper is followed by a thin plate that goes through every point (Duchon 1976; Bookstein 1989).
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from engine.errors import EngineError

Array = NDArray[np.float64]
Place = tuple[float, float]

CORNERS: tuple[Place, ...] = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))  # from the upper left, as a clock goes
LEAST_SIDE = 0.005


class Paper:
    """A sheet in a picture.

    `corners` are where its four CORNERS lie, `pulled` pairs of a place on the sheet and where that lies. Raises
    EngineError where the corners do not go round a sheet.
    """

    def __init__(self, corners: Sequence[Place], pulled: Sequence[tuple[Place, Place]] = ()) -> None:
        _check(corners)
        self._sheet = [sheet for sheet, _ in pulled]
        self.marked = np.array([*corners, *(place for _, place in pulled)], float)  # corners, then pulled points
        self._key = (tuple(corners), tuple(pulled))
        self._flat = perspective(CORNERS, corners)
        self._points, self._weights = np.zeros((0, 2)), np.zeros((3, 2))
        if pulled:
            fixed = [*((corner, place) for corner, place in zip(CORNERS, corners, strict=True)), *pulled]
            self._points = np.array([sheet for sheet, _ in fixed])
            self._weights = _plate(self._points, np.array([place for _, place in fixed]) - self.flat(self._points))

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Paper) and self._key == other._key

    def __hash__(self) -> int:
        return hash(self._key)

    def moved(self, marked: Array) -> Paper:
        """The sheet whose marked points lie there. Raises EngineError."""
        places = [(x, y) for x, y in marked.tolist()]
        return Paper(places[:4], list(zip(self._sheet, places[4:], strict=True)))

    def flat(self, sheet: Array) -> Array:
        """Where places (m, 2) would lie if the sheet were flat."""
        return projected(self._flat, sheet)

    def flat_places(self, sheet: Sequence[Place]) -> tuple[Place, ...]:
        """The same for a few places."""
        return tuple((x, y) for x, y in self.flat(np.array(sheet)).tolist())

    def places(self, sheet: Array) -> Array:
        """Where places (m, 2) of the sheet lie in the picture."""
        flat = self.flat(sheet)
        if not len(self._points):
            return flat
        bent: Array = flat + _near(sheet, self._points) @ self._weights
        return bent


def squared(first: Place, opposite: Place, along: Place) -> tuple[Place, Place]:
    """The corners after and before `first`, as a clock goes, of the box with those two opposite corners.

    One side of it goes from `first` through `along`. Places in pixels; raises EngineError where they lie together.
    """
    one, diagonal = np.subtract(along, first), np.subtract(opposite, first)
    if not np.hypot(*one) or not np.hypot(*diagonal):
        raise EngineError("The two corners and the point along a row lie on one another; move them apart.", "corners")
    side = one / np.hypot(*one) * (one @ diagonal) / np.hypot(*one)
    (x1, y1), (x2, y2) = (np.asarray(first) + side).tolist(), (np.asarray(opposite) - side).tolist()
    return ((x1, y1), (x2, y2)) if abs(one[0]) >= abs(one[1]) else ((x2, y2), (x1, y1))


def perspective(of: Sequence[Place], to: Sequence[Place]) -> Array:
    """The matrix (3, 3) of the perspective that takes four places to four others."""
    rows, sides = [], []
    for (x, y), (u, v) in zip(of, to, strict=True):
        rows += [(x, y, 1, 0, 0, 0, -u * x, -u * y), (0, 0, 0, x, y, 1, -v * x, -v * y)]
        sides += [u, v]
    return np.append(np.linalg.solve(np.array(rows, float), np.array(sides)), 1).reshape(3, 3)


def projected(matrix: Array, places: Array) -> Array:
    """Where that perspective takes places (m, 2)."""
    seen = places @ matrix[:, :2].T + matrix[:, 2]
    flat: Array = seen[:, :2] / seen[:, 2:]
    return flat


def _check(corners: Sequence[Place]) -> None:
    turns = []
    for (ax, ay), (bx, by), (cx, cy) in zip(
        corners, [*corners[1:], corners[0]], [*corners[2:], *corners[:2]], strict=True
    ):
        turns.append((bx - ax) * (cy - by) - (by - ay) * (cx - bx))
    if min(turns) < LEAST_SIDE**2 and max(turns) > -(LEAST_SIDE**2):
        raise EngineError("The four corners do not go round a chart; put each on its own corner.", "corners")


def _plate(points: Array, pulls: Array) -> Array:
    """The weights of every point, and of a plane, for pulls (m, 2)."""
    near = _near(points, points)
    whole = np.vstack([near, np.hstack([near[:, len(points) :].T, np.zeros((3, 3))])])
    return np.linalg.solve(whole, np.vstack([pulls, np.zeros((3, 2))]))


def _near(places: Array, points: Array) -> Array:
    """What a pull at each point does at places, r² log r; and the plane."""
    far2 = ((places[:, None] - points[None]) ** 2).sum(axis=-1)
    bend = np.where(far2 > 0, far2 * np.log(np.maximum(far2, 1e-300)), 0)
    return np.hstack([bend, np.ones((len(places), 1)), places])
