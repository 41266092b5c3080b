"""A drawing as values, in millimetres from the top left, y down: told once, read by every writer.

An `Outline` is a tuple of steps, each a letter and its absolute numbers: ("M", x, y), ("L", x, y),
("C", x1, y1, x2, y2, x, y), ("Z",).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

Step = tuple[str | float, ...]
Outline = tuple[Step, ...]
Point = tuple[float, float]

ROUND = 0.5523  # control points of a quarter circle


@dataclass(frozen=True)
class Paint:
    """Fill and line colour ("#rrggbb", or empty for none) and the line's width in mm."""

    fill: str = ""
    line: str = ""
    line_mm: float = 0.0


@dataclass(frozen=True)
class Rect:
    """A box, its corners rounded with that radius."""

    x: float
    y: float
    width: float
    height: float
    corner: float = 0.0
    paint: Paint = Paint()


@dataclass(frozen=True)
class Line:
    """A straight line."""

    start: Point
    end: Point
    paint: Paint = Paint()


@dataclass(frozen=True)
class Path:
    """An outline, filled by the even-odd rule: a form inside a form is a hole."""

    outline: Outline
    paint: Paint = Paint()


@dataclass(frozen=True)
class Text:
    """A line of text; `y` is its foot line, `size` its height in mm, `anchor` is start, middle or end."""

    x: float
    y: float
    text: str
    size: float
    anchor: str = "start"
    paint: Paint = Paint()


@dataclass(frozen=True)
class Stamp:
    """The same outline at every place."""

    outline: Outline
    places: tuple[Point, ...]
    paint: Paint = Paint()


@dataclass(frozen=True)
class Group:
    """Shapes that belong together, with a name of the craft: "bead A", "round start"."""

    name: str
    shapes: tuple[Shape, ...]


Shape = Rect | Line | Path | Text | Stamp | Group


@dataclass(frozen=True)
class Drawing:
    """A whole picture, its top left corner at (`left`, `top`). `description` says in text all that it shows."""

    width: float
    height: float
    shapes: tuple[Shape, ...]
    title: str
    description: str = ""
    left: float = 0.0
    top: float = 0.0


def polygon(*points: Point) -> Outline:
    """A closed outline through the points."""
    first, *others = points
    return (("M", *first), *(("L", *point) for point in others), ("Z",))


def box(x: float, y: float, width: float, height: float) -> Outline:
    """A rectangle with that top left corner."""
    return polygon((x, y), (x + width, y), (x + width, y + height), (x, y + height))


def circle(r: float, x: float = 0.0, y: float = 0.0) -> Outline:
    """A circle of radius `r` round (x, y)."""
    c = ROUND * r
    return (
        ("M", x + r, y),
        ("C", x + r, y + c, x + c, y + r, x, y + r),
        ("C", x - c, y + r, x - r, y + c, x - r, y),
        ("C", x - r, y - c, x - c, y - r, x, y - r),
        ("C", x + c, y - r, x + r, y - c, x + r, y),
        ("Z",),
    )


def rounded_box(width: float, height: float, corner: float) -> Outline:
    """A box round the origin, its corners rounded with that radius."""
    x, y, r = width / 2, height / 2, corner
    c = (1 - ROUND) * r
    return (
        ("M", r - x, -y),
        ("L", x - r, -y),
        ("C", x - c, -y, x, c - y, x, r - y),
        ("L", x, y - r),
        ("C", x, y - c, x - c, y, x - r, y),
        ("L", r - x, y),
        ("C", c - x, y, -x, y - c, -x, y - r),
        ("L", -x, r - y),
        ("C", -x, c - y, c - x, -y, r - x, -y),
        ("Z",),
    )


def moved(outline: Outline, scale: float = 1.0, dx: float = 0.0, dy: float = 0.0) -> Outline:
    """The outline scaled about the origin, then moved."""
    return tuple(
        (step[0], *(float(number) * scale + (dy if i % 2 else dx) for i, number in enumerate(step[1:])))
        for step in outline
    )


def joined(outlines: Iterable[Outline]) -> Outline:
    """Several outlines as one."""
    return tuple(step for outline in outlines for step in outline)


def turned(outline: Outline, quarters: int) -> Outline:
    """The outline turned clockwise about the origin by that many quarter turns."""
    for _ in range(quarters % 4):
        outline = tuple((step[0], *(part for x, y in _points(step) for part in (-y, x))) for step in outline)
    return outline


def _points(step: Step) -> Iterable[Point]:
    numbers = tuple(float(part) for part in step[1:])
    return zip(numbers[::2], numbers[1::2], strict=True)
