"""Beads of a rope laid along a path on the table: right-handed work, or left-handed as its mirror image.

Bead k stands at angle 2πk/(N + ½) round the rope's axis and k/(N + ½) rows along it. Radius and row height are those of
touching beads opened out flat, within 2 % of the exact sphere model from 5 around up. Lengths in bead widths.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from engine.drawing.beadform import Array
from engine.drawing.relief import Relief

ROW = 0.866
DRAWN_IN = 0.30  # how far the last beads of an open end are drawn together, share of the radius
LEAST_SIZE, MOST_SIZE = 0.80, 1.08  # of beads on the inside and outside of a bend
THREAD = 0.86  # radius of the thread inside, share of the rope's
UNEVEN = 0.012  # how far a hand places a bead off, bead widths


@dataclass(frozen=True)
class LaidRope:
    """Beads as rows of arrays: `centre`, `out` (unit, away from the axis), `hole` (unit, along it), each (beads, 3).

    `size` (beads,) is each bead's share of full size, `colours` (beads,) its palette index; `thread` (m, 3) are points
    on the axis half a row apart and `room` (m,) the radius of the thread there; `radius` is that of the circle on which
    bead centres stand.
    """

    centre: Array
    out: Array
    hole: Array
    size: Array
    colours: Array
    thread: Array
    room: Array
    radius: float


def rope_radius(around: int) -> float:
    """LaidRope axis to bead centres."""
    return float(1 / (2 * np.sin(np.pi / (around + 0.5))))


def rope_length(around: int, beads: float) -> float:
    return ROW * beads / (around + 0.5)


def lay(
    around: int,
    colours: Array,
    path: Array,
    closed: bool = False,
    left: bool = False,
    facing: float = 0.0,
    uneven: float = 1.0,
    relief: Relief | None = None,
) -> LaidRope:
    """Beads along the middle of `path` ((m, 3) points), the first at its start; closed, the path ends where it begins.

    The side of the rope that has the angle `facing` (radians) at bead 0 looks up from the table. `uneven` is the share
    of hand-made unevenness; `relief` is that of beads of several sizes.
    """
    total, radius = len(colours), rope_radius(around)
    walk = _Walk(path, closed)
    turns = total / (around + 0.5)
    if closed:
        theta = np.arange(total) * (2 * np.pi * round(turns) / total)  # a ring closes on a whole turn
        along = np.arange(total) * (walk.length / total)
    else:
        theta = np.arange(total) * (2 * np.pi / (around + 0.5))
        along = np.arange(total) * (ROW / (around + 0.5)) + (walk.length - ROW * turns) / 2
    far: Array | float = 1.0
    if relief is not None:
        theta, far = theta + relief.turned, relief.out
        along = along[0] + relief.along * (walk.length if closed else ROW * turns)
    mirror = -1 if left else 1
    theta = (theta - facing) * mirror
    tangent, side, up = walk.frame(along)
    c, s = np.cos(theta)[:, None], np.sin(theta)[:, None]
    out = up * c + side * s
    hole = (side * c - up * s) * mirror + tangent * (ROW / (2 * np.pi * radius))
    noise = np.random.default_rng(7).standard_normal((total, 6)) * uneven
    hole = _unit(hole + 0.05 * noise[:, :1] * tangent + 0.05 * noise[:, 1:2] * out)
    narrow = np.ones(total) if closed else _drawn_in(along - along[0], along[-1] - along)
    room = np.clip(1 - radius * (walk.bend(along) * out).sum(1), LEAST_SIZE**2, MOST_SIZE**2)
    size = np.sqrt(room) * (1 + UNEVEN * noise[:, 5]) * (1.0 if relief is None else relief.size)
    off = noise[:, 2:3] * tangent + mirror * noise[:, 3:4] * side + noise[:, 4:5] * up
    centre = walk.at(along) + radius * (narrow * far)[:, None] * out + UNEVEN * off
    first, last = (0.0, walk.length) if closed else (along[0], along[-1])
    cuts, inner = np.arange(first, last, 0.45), THREAD * radius * (1.0 if relief is None else float(relief.out.min()))
    room = np.full(len(cuts), inner) if closed else _rounded_off(cuts - first, last - cuts, inner)
    return LaidRope(
        centre=centre,
        out=out,
        hole=hole,
        size=size,
        colours=np.asarray(colours),
        thread=walk.at(cuts),
        room=room,
        radius=radius,
    )


def _drawn_in(from_start: Array, to_end: Array) -> Array:
    """Share of the radius that is left near an open end."""
    gone = np.clip(1 - np.minimum(from_start, to_end) / 1.1, 0, 1)
    return np.asarray(1 - DRAWN_IN * gone * gone)


def _rounded_off(from_start: Array, to_end: Array, radius: float) -> Array:
    """Radii of spheres on the axis that stay inside an open end."""
    return np.asarray(np.clip(np.minimum(from_start, to_end) - 0.1, 0.05, radius))


class _Walk:
    """A path told by the length walked along it."""

    def __init__(self, path: Array, closed: bool) -> None:
        self.path = path
        self.run = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(path, axis=0), axis=1))])
        self.slope = self._gradient(path, closed)
        self.curve = self._gradient(_unit(self.slope), closed)
        self.length = float(self.run[-1])

    def _gradient(self, table: Array, closed: bool) -> Array:
        slope = np.gradient(table, self.run, axis=0)
        if closed:
            slope[0] = slope[-1] = (slope[0] + slope[-1]) / 2
        return slope

    def at(self, s: Array) -> Array:
        return self._look_up(self.path, s)

    def bend(self, s: Array) -> Array:
        """Towards the middle of the bend, as long as one over its radius."""
        return self._look_up(self.curve, s)

    def frame(self, s: Array) -> tuple[Array, Array, Array]:
        """Unit vectors along the rope, to its right on the table, and up."""
        tangent = _unit(self._look_up(self.slope, s))
        side = _unit(np.cross(tangent, [0.0, 0.0, 1.0]))
        return tangent, side, np.cross(side, tangent)

    def _look_up(self, table: Array, s: Array) -> Array:
        return np.column_stack([np.interp(s, self.run, column) for column in table.T])


def _unit(vectors: Array) -> Array:
    return np.asarray(vectors / np.linalg.norm(vectors, axis=1, keepdims=True))
