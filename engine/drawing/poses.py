"""How a rope is laid for its picture, and where the camera stands: straight, winding, as a ring, as a necklace."""

from __future__ import annotations

from math import pi

import numpy as np

from engine.drawing.beadform import RADIUS, Array
from engine.drawing.camera import Camera, fitted
from engine.drawing.laying import ROW, LaidRope, lay, rope_length, rope_radius
from engine.pattern.lattice import angle
from engine.pattern.pattern import Pattern

LEAD = 6  # rows laid outside the picture, so that shadows and ends do not show


def straight(pattern: Pattern, beads: int | None, width: int, height: int) -> tuple[LaidRope, Camera]:
    """From left to right, the middle of the chart looking up: that many beads, or passes that run out of the picture.

    Of these, the first bead of a pass stands at the left edge of the picture.
    """
    if beads is None:
        return _running_through(pattern, width, height)
    half = rope_length(pattern.around, beads) / 2
    rope = _laid(pattern, pattern.worked(beads), _points(np.array([-half, half]), np.zeros(2)), facing=_middle(pattern))
    return rope, fitted(rope.centre, width, height, 0.90)


def _running_through(pattern: Pattern, width: int, height: int) -> tuple[LaidRope, Camera]:
    scale = 0.80 * height / _thickness(pattern)
    lead = -(-round(LEAD * (pattern.around + 0.5)) // len(pattern.main.beads)) * len(pattern.main.beads)
    beads = lead + round((width / scale / ROW + LEAD) * (pattern.around + 0.5))
    start = -width / 2 / scale - rope_length(pattern.around, lead) + ROW / 2
    path = _points(start + np.array([0, rope_length(pattern.around, beads)]), np.zeros(2))
    facing = angle(pattern.around, lead) + _middle(pattern)
    return _laid(pattern, _passes(pattern, beads), path, facing=facing), Camera(width, height, scale)


def winding(pattern: Pattern, width: int, height: int) -> tuple[LaidRope, Camera]:
    """Passes without end that wind through the picture from left to right."""
    scale = 0.30 * height / _thickness(pattern)
    across, down = width / scale, height / scale
    u = np.linspace(-0.72, 0.72, 1200)
    path = _points(across * u, 0.27 * down * np.sin(2 * pi * u * 0.80))
    return _filled(pattern, path), Camera(width, height, scale)


def closed(pattern: Pattern, beads: int | None, width: int, height: int, tilt: float = 0.75) -> tuple[LaidRope, Camera]:
    """A ring, its first bead at the back: of that many beads, or of whole repeats enough for a bangle.

    The camera sees it `tilt` radians off straight down.
    """
    worked = pattern.worked(beads) if beads else _bangle(pattern)
    middle = rope_length(pattern.around, len(worked)) / (2 * pi)
    turn = np.linspace(0, 2 * pi, max(721, len(worked) // 4)) + pi / 2
    path = _points(middle * np.cos(turn), middle * np.sin(turn))
    rope = _laid(pattern, worked, path, closed=True, facing=_motif(pattern, len(worked)))
    return rope, fitted(rope.centre, width, height, 0.86, tilt, 0.22 / (middle + rope.radius))


def draped(pattern: Pattern, beads: int | None, width: int, height: int) -> tuple[LaidRope, Camera]:
    """A necklace seen from above: of that many beads, whole, or its front, the ends running out of the picture."""
    if beads is None:
        return _front(pattern, width, height)
    gap = 0.11 * pi
    turn = np.linspace(pi / 2 + gap, 5 * pi / 2 - gap, 1200)
    path = _points(1.22 * np.cos(turn), np.sin(turn) - 0.10 * np.cos(2 * turn))
    path *= rope_length(pattern.around, beads) / _length(path)
    rope = _laid(pattern, pattern.worked(beads), path, facing=_motif(pattern, beads))
    return rope, fitted(rope.centre, width, height, 0.88)


def _front(pattern: Pattern, width: int, height: int) -> tuple[LaidRope, Camera]:
    scale = 0.115 * min(width, 4 / 3 * height) / _thickness(pattern)
    across, down = width / scale, height / scale
    u = np.linspace(-1, 1, 1200)
    path = _points(0.40 * across * np.sin(u * pi / 2 * 1.02), down * (1.05 * np.abs(u) ** 2.6 + 0.14 * u * u - 0.33))
    return _filled(pattern, path), Camera(width, height, scale)


def _laid(pattern: Pattern, beads: bytes, path: Array, closed: bool = False, facing: float = 0.0) -> LaidRope:
    return lay(pattern.around, np.frombuffer(beads, np.uint8), path, closed, pattern.hand == "left", facing)


def _filled(pattern: Pattern, path: Array) -> LaidRope:
    """As many beads as the path is long."""
    beads = round(_length(path) / ROW * (pattern.around + 0.5))
    rope = len(pattern.about(beads))
    facing = _motif(pattern, rope, max(0, rope - beads) // 2)
    return _laid(pattern, _passes(pattern, beads), path, facing=facing)


def _passes(pattern: Pattern, beads: int) -> bytes:
    """That many beads of the chart said again and again, without start and end; of several parts the middle."""
    if pattern.one_chart:
        return _again(pattern.main.beads, beads)
    rope = pattern.about(beads)
    before = max(0, len(rope) - beads) // 2
    return _again(rope[before:], beads)


def _again(beads: bytes, total: int) -> bytes:
    return (beads * -(-total // len(beads)))[:total]


def _bangle(pattern: Pattern) -> bytes:
    """A ring whose hole is about three and a half times as wide as the rope is thick: whole repeats, or all parts."""
    wanted = 2 * pi * 2.3 * _thickness(pattern) / ROW * (pattern.around + 0.5)
    if not pattern.one_chart:
        return pattern.about(round(wanted))
    return _again(pattern.main.beads, max(1, round(wanted / pattern.repeat)) * pattern.repeat)


def _motif(pattern: Pattern, beads: int, before: int = 0) -> float:
    """The angle at which the part in the middle of a rope of several stands up, the middle of its chart in front.

    `before` beads of the rope are not laid.
    """
    if pattern.one_chart:
        return 0.0
    part = next(part for part in pattern.laid(beads) if part.first <= beads // 2 < part.last)
    return angle(pattern.around, part.begin - before) + _middle(pattern)


def _middle(pattern: Pattern) -> float:
    """The angle that stands in the middle of the chart's width."""
    return angle(pattern.around, pattern.around / 2)


def _thickness(pattern: Pattern) -> float:
    return 2 * (rope_radius(pattern.around) + RADIUS)


def _points(x: Array, y: Array) -> Array:
    """Points on the table."""
    return np.column_stack([x, y, np.zeros(len(x))])


def _length(path: Array) -> float:
    return float(np.linalg.norm(np.diff(path, axis=0), axis=1).sum())
