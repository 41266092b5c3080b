"""What is inked in a line drawing: its strokes, boxes, signs and how far they reach, read for the laws of drawings."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise
from math import dist

import pytest

from engine.drawing.handwork.marks import RING_MM
from engine.drawing.handwork.parts import HEIGHT, WHITE, WIDTH, Clip, Frame, Parts, Sign, Stroke

Edges = tuple[float, float, float, float]  # left, top, right, foot
Seen = tuple[Stroke | Sign, Edges]
FAR = 5.0  # mm


def unclipped(drawn: Parts) -> Iterator[Stroke]:
    """Strokes that no box cuts off."""
    for part in drawn:
        match part:
            case Stroke():
                yield part
            case Sign():
                yield part.stroke
            case Frame(_, _, inner):
                yield from unclipped(inner)


def boxes(drawn: Parts) -> Iterator[tuple[Edges, Parts]]:
    """Every box with its left, top, width and height, and what is in it."""
    for part in drawn:
        match part:
            case Clip(box, inner):
                yield box, inner
            case Frame(_, _, inner):
                yield from boxes(inner)


def corners(stroke: Stroke) -> list[tuple[float, float]]:
    numbers = [float(number) for step in stroke.outline for number in step[1:]]
    return list(zip(numbers[::2], numbers[1::2], strict=True))


def signs(drawn: Parts) -> list[Sign]:
    return [
        sign
        for part in drawn
        for sign in ([part] if isinstance(part, Sign) else signs(part.parts) if isinstance(part, (Frame, Clip)) else [])
    ]


def numbers(drawn: Parts) -> list[str]:
    """What the signs say that stand by things, not those of the frames."""
    return [sign.says for sign in signs(drawn) if sign.says and sign.line != WHITE]


def reach(found: Iterable[Stroke]) -> Edges:
    """As `bounds`, to the outer edge of the lines."""
    each = [(bounds([stroke]), stroke.width / 2 if stroke.line else 0.0) for stroke in found] or [(bounds([]), 0.0)]
    return (
        min(box[0] - half for box, half in each),
        min(box[1] - half for box, half in each),
        max(box[2] + half for box, half in each),
        max(box[3] + half for box, half in each),
    )


def shown(drawn: Parts, seen: Edges = (0.0, 0.0, WIDTH, HEIGHT)) -> Iterator[Seen]:
    """Strokes with the box in which they are seen; a sign comes as itself."""
    for part in drawn:
        match part:
            case Stroke() | Sign():
                yield part, seen
            case Clip((x, y, width, height), inner):
                yield from shown(inner, (x, y, x + width, y + height))
            case Frame(_, _, inner):
                yield from shown(inner, seen)


def ringed(ink: list[Seen]) -> list[int]:
    """Where in the ink a sign stands in a ring, which is painted just before it."""
    return [
        i
        for i, (sign, _) in enumerate(ink)
        if isinstance(sign, Sign)
        and isinstance(ring := ink[i - 1][0], Stroke)
        and bounds([ring])
        == pytest.approx((sign.at[0] - RING_MM, sign.at[1] - RING_MM, sign.at[0] + RING_MM, sign.at[1] + RING_MM))
    ]


def trace(stroke: Stroke) -> list[tuple[float, float]]:
    """Points along an outline, less than a millimetre apart."""
    points: list[tuple[float, float]] = []
    opened = 0
    for letter, *numbers in stroke.outline:
        bent = list(zip(numbers[::2], numbers[1::2], strict=True)) or [points[opened]]
        if letter == "M":
            opened = len(points)
            points += bent
        else:
            start = points[-1]
            points += (_between([start, *bent], i / 64) for i in range(1, 65))
    return points


def _between(row: list[tuple[float, float]], share: float) -> tuple[float, float]:
    while len(row) > 1:
        row = [(a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])) for a, b in pairwise(row)]
    return row[0]


def bounds(found: Iterable[Stroke]) -> Edges:
    points = [point for stroke in found for point in corners(stroke)]
    if not points:
        return WIDTH / 2, HEIGHT / 2, WIDTH / 2, HEIGHT / 2
    return (min(x for x, _ in points), min(y for _, y in points), max(x for x, _ in points), max(y for _, y in points))


def as_a_mirror_shows(drawn: Parts, edges: float = WIDTH) -> Iterator[list[tuple[float, float]]]:
    """Corner by corner what the other hand must see: each frame in its own place, signs moved but not turned."""
    for part in drawn:
        match part:
            case Stroke():
                yield [(edges - x, y) for x, y in corners(part)]
            case Sign(_, (x, _)):
                yield [(a + edges - 2 * x, b) for a, b in corners(part.stroke)]
            case Clip(_, inner):
                yield from as_a_mirror_shows(inner, edges)
            case Frame(left, right, inner):
                yield from as_a_mirror_shows(inner, left + right)


def nearest(spot: tuple[float, float], ink: Iterable[Seen]) -> float:
    """From a place to the edge of the nearest line that is seen, `FAR` at the most."""
    found = [FAR]
    for part, (left, top, right, foot) in ink:
        stroke = part.stroke if isinstance(part, Sign) else part
        half = stroke.width / 2 if stroke.line else 0.0
        near = reach([stroke])
        if near[0] - FAR < spot[0] < near[2] + FAR and near[1] - FAR < spot[1] < near[3] + FAR:
            found += (
                dist(point, spot) - half
                for point in trace(stroke)
                if left <= point[0] <= right and top <= point[1] <= foot
            )
    return min(found)
