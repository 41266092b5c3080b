"""Smooth lines through points: cut in pieces, so that a thread can pass behind and in front of what it crosses."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise
from math import atan2, cos, degrees, dist, hypot, radians, sin

from engine.drawing.shapes import Outline, Point

Points = Sequence[Point]
Piece = tuple[Point, Point, Point, Point]  # a cubic: start, two controls, end
REACH = 0.37  # of the chord: a smooth line never overshoots far


def turned(point: Point, angle: float, origin: Point = (0.0, 0.0)) -> Point:
    """The point turned clockwise by that many degrees (y points down the page) and carried to an origin."""
    c, s = cos(radians(angle)), sin(radians(angle))
    return origin[0] + c * point[0] - s * point[1], origin[1] + s * point[0] + c * point[1]


def grid(origin: Point, across: float, down: float, angle: float) -> Callable[[float, float], Point]:
    """Where a thing's own measures lie on the page: from its origin, one across and one down, turned clockwise."""
    (x, y), c, s = origin, cos(radians(angle)), sin(radians(angle))
    ax, ay, bx, by = across * c, across * s, -down * s, down * c
    return lambda u, v: (x + u * ax + v * bx, y + u * ay + v * by)


def polar(centre: Point, radius: float, angle: float, squash: float = 1.0) -> Point:
    """The point at that distance and bearing in degrees, clockwise from three o'clock."""
    return centre[0] + radius * cos(radians(angle)), centre[1] + squash * radius * sin(radians(angle))


def arc(centre: Point, radius: float, start: float, stop: float, steps: int, squash: float = 1.0) -> list[Point]:
    """Points of an arc, both ends counted."""
    return [polar(centre, radius, start + (stop - start) * i / steps, squash) for i in range(steps + 1)]


def bezier(points: Points, closed: bool = False) -> list[Piece]:
    """Cubic pieces of a smooth line through the points; controls follow the chord."""
    count = len(points)
    ways = [_way(points, i, closed) for i in range(count)]
    pieces: list[Piece] = []
    for i in range(count if closed else count - 1):
        p, q, t, u = points[i], points[(i + 1) % count], ways[i], ways[(i + 1) % count]
        reach = REACH * dist(p, q)
        pieces.append((p, (p[0] + reach * t[0], p[1] + reach * t[1]), (q[0] - reach * u[0], q[1] - reach * u[1]), q))
    return pieces


def smooth(points: Points, closed: bool = False) -> Outline:
    """The smooth line through the points as an outline."""
    return outline_of(bezier(points, closed), closed)


def outline_of(pieces: Sequence[Piece], close: bool = False) -> Outline:
    """Pieces that follow one another as one outline."""
    steps = (("C", *a, *b, *c) for _, a, b, c in pieces)
    return (("M", *pieces[0][0]), *steps, *((("Z",),) if close else ()))


def trail(start: Point, *steps: Points, close: bool = False) -> Outline:
    """An outline from step to step: a point is a straight line, two a bend round the first, three a cubic."""
    made: list[tuple[str | float, ...]] = [("M", *start)]
    here = start
    for step in steps:
        if len(step) == 1:
            made.append(("L", *step[0]))
        else:
            a, b = _bend(here, step[0], step[1]) if len(step) == 2 else (step[0], step[1])
            made.append(("C", *a, *b, *step[-1]))
        here = step[-1]
    return (*made, *((("Z",),) if close else ()))


def oval_outline(centre: Point, rx: float, ry: float, angle: float = 0.0) -> Outline:
    """An ellipse, turned clockwise by that many degrees."""
    return superoval(centre, rx, ry, angle, 0.5523)


def superoval(centre: Point, rx: float, ry: float, angle: float, corner: float) -> Outline:
    """Between an ellipse (0.55) and a box (1)."""
    at, c = grid(centre, rx, ry, angle), corner
    return trail(
        at(1, 0),
        (at(1, c), at(c, 1), at(0, 1)),
        (at(-c, 1), at(-1, c), at(-1, 0)),
        (at(-1, -c), at(-c, -1), at(0, -1)),
        (at(c, -1), at(1, -c), at(1, 0)),
        close=True,
    )


def lapped(pieces: Sequence[Piece], first: int, last: int, lap: float) -> list[Piece]:
    """Those pieces with that share of their neighbours, so that lengths painted one after the other show no seam."""
    before = [_split(pieces[first - 1], 1 - lap)[1]] if first else []
    after = [_split(pieces[last], lap)[0]] if last < len(pieces) else []
    return [*before, *pieces[first:last], *after]


def trimmed(pieces: Sequence[Piece]) -> list[Piece]:
    """The pieces less a little at both ends, for the break under a crossing."""
    cut = list(pieces)
    cut[0] = _split(cut[0], 0.12)[1]
    cut[-1] = _split(cut[-1], 0.88)[0]
    return cut


def along(points: Points, share: float) -> tuple[Point, float]:
    """Place and bearing in degrees at a share of a smooth line, by length."""
    dense = [_on(piece, i / 24) for piece in bezier(points) for i in range(24)] + [points[-1]]
    wanted = share * sum(dist(a, b) for a, b in pairwise(dense))
    for a, b in pairwise(dense):
        step = dist(a, b)
        if wanted <= step + 1e-9:
            part = wanted / step if step else 0.0
            return (a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1])), bearing(a, b)
        wanted -= step
    return dense[-1], 0.0


def bearing(start: Point, end: Point) -> float:
    """Degrees clockwise from three o'clock."""
    return degrees(atan2(end[1] - start[1], end[0] - start[0]))


def _way(points: Points, i: int, closed: bool) -> Point:
    """The direction of a smooth line at a point, of length 1."""
    count = len(points)
    before = points[(i - 1) % count] if closed or i else points[0]
    after = points[(i + 1) % count] if closed or i < count - 1 else points[-1]
    dx, dy = after[0] - before[0], after[1] - before[1]
    length = hypot(dx, dy) or 1.0
    return dx / length, dy / length


def _bend(start: Point, control: Point, end: Point) -> tuple[Point, Point]:
    """The two controls of a cubic that bends as the one control of a quadratic does."""
    return (_mix(start, control, 2 / 3), _mix(end, control, 2 / 3))


def _split(piece: Piece, t: float) -> tuple[Piece, Piece]:
    p, a, b, q = piece
    first, second, third = _mix(p, a, t), _mix(a, b, t), _mix(b, q, t)
    left, right = _mix(first, second, t), _mix(second, third, t)
    middle = _mix(left, right, t)
    return (p, first, left, middle), (middle, right, third, q)


def _on(piece: Piece, t: float) -> Point:
    return _split(piece, t)[0][3]


def _mix(p: Point, q: Point, t: float) -> Point:
    return p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])
