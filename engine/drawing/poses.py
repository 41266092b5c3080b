"""How a rope is laid for its picture, and where the camera stands: straight, winding, as a ring, as a necklace."""

from __future__ import annotations

from collections.abc import Sequence
from math import pi
from typing import NamedTuple

import numpy as np

from engine.drawing.beadform import RADIUS, Array
from engine.drawing.camera import Camera, fitted
from engine.drawing.laying import ROW, LaidRope, lay, rope_length, rope_radius
from engine.drawing.relief import Relief, relief
from engine.pattern.lattice import angle
from engine.pattern.pattern import Pattern
from engine.pattern.shares import LaidPart

LEAD = 6  # rows laid outside the picture, so that shadows and ends do not show


class _Piece(NamedTuple):
    """The beads of a picture: so many of a rope whose parts lie so, behind the first `before`."""

    laid: tuple[LaidPart, ...]
    before: int
    beads: int

    @property
    def worked(self) -> bytes:
        return b"".join(part.worked for part in self.laid)[self.before :][: self.beads]

    def relief(self, around: int, sizes: Sequence[float]) -> Relief | None:
        """That of its beads, `sizes` by palette index; None where there are no sizes, or all are alike."""
        whole = relief(around, self.laid, sizes) if sizes else None
        return whole.part(self.before, self.beads) if whole else None


def straight(
    pattern: Pattern, beads: int | None, width: int, height: int, sizes: Sequence[float] = (), turned: float = 0.0
) -> tuple[LaidRope, Camera]:
    """From left to right, the middle of the chart looking up: that many beads, or passes that run out of the picture.

    Of these, the first bead of a pass stands at the left edge of the picture; they may be `turned` about the axis of
    the rope by so many radians.
    """
    if beads is None:
        return _running_through(pattern, width, height, sizes, turned)
    half = rope_length(pattern.around, beads) / 2
    path = points_on_table(np.array([-half, half]), np.zeros(2))
    piece = _worked(pattern, beads)
    rope = _laid(pattern, piece, path, sizes, facing=_motif(pattern, piece))
    return rope, fitted(rope.centre, width, height, 0.90)


def _running_through(
    pattern: Pattern, width: int, height: int, sizes: Sequence[float], turned: float
) -> tuple[LaidRope, Camera]:
    scale = 0.80 * height / thickness(pattern)
    lead = -(-round(LEAD * (pattern.around + 0.5)) // len(pattern.main.beads)) * len(pattern.main.beads)
    beads = lead + round((width / scale / ROW + LEAD) * (pattern.around + 0.5))
    start = -width / 2 / scale - rope_length(pattern.around, lead) + ROW / 2
    path = points_on_table(start + np.array([0, rope_length(pattern.around, beads)]), np.zeros(2))
    piece = _passes(pattern, beads)
    facing = angle(pattern.around, lead) + _middle(pattern) if pattern.one_chart else _motif(pattern, piece)
    return _laid(pattern, piece, path, sizes, facing=facing + turned), Camera(width, height, scale)


def winding(pattern: Pattern, width: int, height: int, sizes: Sequence[float] = ()) -> tuple[LaidRope, Camera]:
    """Passes without end that wind through the picture from left to right."""
    scale = 0.30 * height / thickness(pattern)
    across, down = width / scale, height / scale
    u = np.linspace(-0.72, 0.72, 1200)
    path = points_on_table(across * u, 0.27 * down * np.sin(2 * pi * u * 0.80))
    return filled(pattern, path, sizes), Camera(width, height, scale)


def closed(
    pattern: Pattern, beads: int | None, width: int, height: int, sizes: Sequence[float] = (), tilt: float = 0.75
) -> tuple[LaidRope, Camera]:
    """A ring, its first bead at the back: of that many beads, or of whole repeats enough for a bangle.

    The camera sees it `tilt` radians off straight down.
    """
    piece = _worked(pattern, beads) if beads else _bangle(pattern)
    middle = rope_length(pattern.around, piece.beads) / (2 * pi)
    turn = np.linspace(0, 2 * pi, max(721, piece.beads // 4)) + pi / 2
    path = points_on_table(middle * np.cos(turn), middle * np.sin(turn))
    rope = _laid(pattern, piece, path, sizes, closed=True, facing=_motif(pattern, piece))
    return rope, fitted(rope.centre, width, height, 0.86, tilt, 0.22 / (middle + rope.radius))


def draped(
    pattern: Pattern, beads: int | None, width: int, height: int, sizes: Sequence[float] = ()
) -> tuple[LaidRope, Camera]:
    """A necklace seen from above: of that many beads, whole, or its front, the ends running out of the picture."""
    if beads is None:
        return _front(pattern, width, height, sizes)
    gap = 0.11 * pi
    turn = np.linspace(pi / 2 + gap, 5 * pi / 2 - gap, 1200)
    path = points_on_table(1.22 * np.cos(turn), np.sin(turn) - 0.10 * np.cos(2 * turn))
    path *= rope_length(pattern.around, beads) / _length(path)
    piece = _worked(pattern, beads)
    rope = _laid(pattern, piece, path, sizes, facing=_motif(pattern, piece))
    return rope, fitted(rope.centre, width, height, 0.88)


def _front(pattern: Pattern, width: int, height: int, sizes: Sequence[float]) -> tuple[LaidRope, Camera]:
    scale = 0.115 * min(width, 4 / 3 * height) / thickness(pattern)
    across, down = width / scale, height / scale
    u = np.linspace(-1, 1, 1200)
    path = points_on_table(
        0.40 * across * np.sin(u * pi / 2 * 1.02), down * (1.05 * np.abs(u) ** 2.6 + 0.14 * u * u - 0.33)
    )
    return filled(pattern, path, sizes), Camera(width, height, scale)


def worn(
    pattern: Pattern, laid: tuple[LaidPart, ...], beads: int, path: Array, sizes: Sequence[float] = ()
) -> LaidRope:
    """The middle of a rope whose parts lie so, of that many beads, along a path; its motif looks up."""
    piece = _Piece(laid, max(0, sum(part.beads for part in laid) - beads) // 2, beads)
    return _laid(pattern, piece, path, sizes, facing=_motif(pattern, piece))


def thickness(pattern: Pattern) -> float:
    """Across the rope, in bead widths."""
    return 2 * (rope_radius(pattern.around) + RADIUS)


def _laid(
    pattern: Pattern, piece: _Piece, path: Array, sizes: Sequence[float], closed: bool = False, facing: float = 0.0
) -> LaidRope:
    around, colours = pattern.around, np.frombuffer(piece.worked, np.uint8)
    return lay(around, colours, path, closed, pattern.hand == "left", facing, relief=piece.relief(around, sizes))


def filled(pattern: Pattern, path: Array, sizes: Sequence[float] = ()) -> LaidRope:
    """Passes without end along a path ((m, 3) points, in bead widths): as many beads as it is long."""
    piece = _passes(pattern, round(_length(path) / ROW * (pattern.around + 0.5)))
    return _laid(pattern, piece, path, sizes, facing=_motif(pattern, piece))


def _worked(pattern: Pattern, beads: int) -> _Piece:
    """The worked rope of that many beads."""
    return _Piece(pattern.laid(beads), 0, beads)


def _passes(pattern: Pattern, beads: int) -> _Piece:
    """That many beads of the chart said again and again, without start and end; of several parts the middle."""
    if pattern.one_chart:
        return _Piece((LaidPart(pattern.main, 0, beads, cut_first=False),), 0, beads)
    rope = len(pattern.about(beads))
    laid = pattern.laid(rope)
    return _Piece(laid * -(-beads // rope), max(0, rope - beads) // 2, beads)


def _bangle(pattern: Pattern) -> _Piece:
    """A ring whose hole is about three and a half times as wide as the rope is thick: whole repeats, or all parts."""
    wanted = 2 * pi * 2.3 * thickness(pattern) / ROW * (pattern.around + 0.5)
    if not pattern.one_chart:
        return _worked(pattern, len(pattern.about(round(wanted))))
    return _passes(pattern, max(1, round(wanted / pattern.repeat)) * pattern.repeat)


def _motif(pattern: Pattern, piece: _Piece) -> float:
    """The angle at which the chart, or the part in the middle of a rope of several, has the middle of its width up."""
    if pattern.one_chart:
        return _middle(pattern)
    middle = sum(part.beads for part in piece.laid) // 2
    part = next(part for part in piece.laid if part.first <= middle < part.last)
    return angle(pattern.around, part.begin - piece.before) + _middle(pattern)


def _middle(pattern: Pattern) -> float:
    """The angle that stands in the middle of the chart's width."""
    return angle(pattern.around, pattern.around / 2)


def points_on_table(x: Array, y: Array) -> Array:
    """Points on the table."""
    return np.column_stack([x, y, np.zeros(len(x))])


def _length(path: Array) -> float:
    return float(np.linalg.norm(np.diff(path, axis=0), axis=1).sum())
