"""A plain figure to wear a rope: head, neck and shoulders, or forearm and hand; outlines of round forms, in mm.

A neck of 32 cm girth, shoulders 41 cm across, a wrist of 16.5 cm girth, a hand 18 cm long: a middling grown person. The
neck is that which the shortest collar in use goes round, the wrist that of a bracelet M (see the finished sizes).
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise
from math import asin, cos, hypot, pi, sin

from engine.drawing.shapes import Drawing, Outline, Paint, Path, Point, polygon
from engine.scenes.settings import Setting

NECK_MM, NECK_DEEP_MM = 54.0, 47.5  # half widths of the neck, across and from front to back
WRIST_MM, WRIST_DEEP_MM = 30.5, 21.0
OUTLINE = 0.0022  # width of the outline, share of the picture's width


def drawn_figure(setting: Setting, forms: Iterable[Outline], px: float, centre: Point) -> Drawing:
    """Round forms that overlap, as one body with one outline; `centre` is the place of the body's nought in px."""
    placed = tuple(tuple((step[0], *_placed(step[1:], px, centre)) for step in form) for form in forms)
    line = max(1.5, OUTLINE * setting.width)
    ground = setting.ground
    return Drawing(
        setting.width,
        setting.height,
        (
            *(Path(form, Paint(ground.ink, ground.ink, 2 * line)) for form in placed),
            *(Path(form, Paint(ground.body)) for form in placed),
        ),
        "Figure",
    )


def _placed(numbers: Iterable[str | float], px: float, centre: Point) -> tuple[float, ...]:
    return tuple(float(number) * px + centre[place % 2] for place, number in enumerate(numbers))


def bust() -> tuple[Outline, ...]:
    """Head, neck, shoulders and chest from the front; nought is the pit of the neck, y runs down."""
    return (_smooth(_HALF_BUST), _egg(0, -176, 74, 100))


def shoulder_mm(across: float) -> float:
    """How high above the pit of the neck the outline of neck and shoulder is, so far from the middle."""
    for (x, y), (next_x, next_y) in pairwise(_HALF_BUST):
        if across <= next_x:
            return -y - (next_y - y) * max(0.0, across - x) / (next_x - x)
    return 0.0


def forearm() -> tuple[Outline, ...]:
    """A forearm from the left and a hand to the right, its back up; nought is the middle of the wrist."""
    fingers = (
        ((96, -28), 10.6, (171, -37), 8.8),
        ((96, -9), 10.8, (187, -11), 9.2),
        ((96, 10), 10.6, (180, 14), 8.8),
        ((92, 28), 10.0, (155, 38), 7.8),
    )
    thumb = ((6, -12), 16.0, (58, -52), 11.6), ((58, -52), 11.6, (98, -70), 9.2)
    arm = _smooth_open(
        [(-420, -44), (-260, -42), (-120, -35), (-30, -WRIST_MM), (0, -WRIST_MM), (30, -33), (70, -38), (104, -37)],
        [(118, -18), (121, 2), (114, 24), (98, 37)],
        [(70, 38), (30, 32), (0, WRIST_MM), (-30, WRIST_MM), (-120, 35), (-260, 42), (-420, 44)],
    )
    return (arm, *(_capsule(*finger) for finger in fingers), *(_capsule(*part) for part in thumb))


_HALF_BUST: tuple[Point, ...] = (
    (50, -150),
    (51, -95),
    (54, -62),
    (62, -40),
    (90, -24),
    (140, -8),
    (180, 8),
    (203, 36),
    (210, 80),
    (205, 150),
    (196, 260),
    (190, 420),
    (188, 640),
)


def _smooth(half: Iterable[Point]) -> Outline:
    """A closed outline through the points of its right half and their mirror images."""
    right = list(half)
    points = _curve(right)
    return polygon(*points, *((-x, y) for x, y in reversed(points)))


def _smooth_open(*stretches: list[Point]) -> Outline:
    """A smooth outline through all the points, straight from the last to the first."""
    return polygon(*_curve([point for stretch in stretches for point in stretch]))


def _curve(points: list[Point], steps: int = 10) -> list[Point]:
    """A smooth curve through the points (Catmull and Rom's)."""
    padded = [points[0], *points, points[-1]]
    curve = []
    for before, start, end, after in zip(padded, padded[1:], padded[2:], padded[3:], strict=False):
        for step in range(steps):
            t = step / steps
            weights = (-t + 2 * t**2 - t**3, 2 - 5 * t**2 + 3 * t**3, t + 4 * t**2 - 3 * t**3, t**3 - t**2)
            curve.append(
                (
                    sum(w * p[0] for w, p in zip(weights, (before, start, end, after), strict=True)) / 2,
                    sum(w * p[1] for w, p in zip(weights, (before, start, end, after), strict=True)) / 2,
                )
            )
    return [*curve, points[-1]]


def _egg(x: float, y: float, wide: float, high: float) -> Outline:
    """A head: an oval whose lower half is a little narrower."""
    points = []
    for step in range(60):
        turn = 2 * pi * step / 60
        narrower = 1 - 0.14 * max(0.0, sin(turn)) ** 2
        points.append((x + wide * narrower * cos(turn), y + high * sin(turn)))
    return polygon(*points)


def _capsule(start: Point, r: float, end: Point, end_r: float) -> Outline:
    """A finger: a straight form with round ends of those radii."""
    long = hypot(end[0] - start[0], end[1] - start[1])
    right, down = (end[0] - start[0]) / long, (end[1] - start[1]) / long
    lean = asin((r - end_r) / long)  # by which its sides run together

    def half(middle: Point, radius: float, first: float, last: float) -> list[Point]:
        turns = [first + (last - first) * step / 16 for step in range(17)]
        return [
            (
                middle[0] + radius * (right * cos(t) - down * sin(t)),
                middle[1] + radius * (down * cos(t) + right * sin(t)),
            )
            for t in turns
        ]

    quarter = pi / 2 - lean
    return polygon(*half(start, r, quarter, 2 * pi - quarter), *half(end, end_r, -quarter, quarter))
