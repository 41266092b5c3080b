"""What a line drawing is made of: values in mm on a page of their own, painted in their order, mirrored frame by frame.

Ink and pale grey are what is there already, the accent what moves or is new in the step. Digits and letters are
outlines too, so that no font is needed.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from engine.drawing.shapes import Outline, Point, moved

WIDTH, HEIGHT = 60.0, 45.0
STRIP_WIDTH, STRIP_HEIGHT = 172.0, 54.0
INK, ACCENT = "#20242a", "#17635c"
PALE, MID, LINE = "#e9eaec", "#cfd2d6", "#a9aeb5"
WHITE, GLASS, DARK, TINT, STEEL, METAL = "#ffffff", "#f6f3ec", "#9aa0a8", "#bfdeda", "#f1f2f3", "#c3c7cc"
THIN, FINE, BOLD = 0.2, 0.3, 0.5


@dataclass(frozen=True)
class Stroke:
    """An outline filled and lined in "#rrggbb", empty for none; `butt` ends the line square instead of round."""

    outline: Outline
    fill: str = ""
    line: str = INK
    width: float = FINE
    dash: tuple[float, ...] = ()
    butt: bool = False


@dataclass(frozen=True)
class Sign:
    """A digit, letter or tick: an outline about the place where it stands, never turned round by a mirror.

    `says` is what is read there, empty for a tick.
    """

    outline: Outline
    at: Point
    line: str
    width: float
    says: str = ""

    @property
    def stroke(self) -> Stroke:
        """The sign where it stands."""
        return Stroke(moved(self.outline, 1.0, *self.at), line=self.line, width=self.width)


@dataclass(frozen=True)
class Clip:
    """Parts of which only what lies in the box is seen: its left, top, width and height."""

    box: tuple[float, float, float, float]
    parts: Parts


@dataclass(frozen=True)
class Frame:
    """A field of the drawing, from `left` to `right`, mirrored in its own place so that 1 stays before 2."""

    left: float
    right: float
    parts: Parts
    top: float = 0.0
    foot: float = HEIGHT


Part = Stroke | Sign | Clip | Frame
Parts = tuple[Part, ...]


def clipped(box: tuple[float, float, float, float], parts: Iterable[Part]) -> Clip:
    """The parts as they are seen in a box; what lies wholly outside is left out."""
    return Clip(box, tuple(_within(box, parts)))


def _within(box: tuple[float, float, float, float], parts: Iterable[Part]) -> Iterable[Part]:
    left, top, width, height = box
    for part in parts:
        if isinstance(part, Clip):
            yield replace(part, parts=tuple(_within(box, part.parts)))
        elif isinstance(part, Stroke):
            half = part.width / 2 if part.line else 0.0
            across, down = ([float(number) for step in part.outline for number in step[first::2]] for first in (1, 2))
            if (
                min(across) - half < left + width
                and max(across) + half > left
                and min(down) - half < top + height
                and max(down) + half > top
            ):
                yield part
        else:
            yield part


def mirrored(parts: Iterable[Part], left: float = 0.0, right: float = WIDTH) -> Parts:
    """The same parts as the other hand sees them, between those edges."""
    return tuple(_mirrored(part, left + right) for part in parts)


def placed(parts: Iterable[Part], scale: float, dx: float, dy: float) -> Parts:
    """The parts larger or smaller about the origin, then moved; threads grow with them, the edges of things do not."""
    return tuple(_placed(part, scale, dx, dy) for part in parts)


def _mirrored(part: Part, edges: float) -> Part:
    match part:
        case Stroke(outline):
            return replace(part, outline=_across(outline, edges))
        case Sign(_, (x, y)):
            return replace(part, at=(edges - x, y))
        case Clip((x, y, width, height), parts):
            return Clip((edges - x - width, y, width, height), tuple(_mirrored(inner, edges) for inner in parts))
        case Frame(left, right, parts):
            return replace(part, parts=mirrored(parts, left, right))


def _across(outline: Outline, edges: float) -> Outline:
    return tuple(
        (step[0], *(float(number) if i % 2 else edges - float(number) for i, number in enumerate(step[1:])))
        for step in outline
    )


def _placed(part: Part, scale: float, dx: float, dy: float) -> Part:
    match part:
        case Stroke(outline, fill, width=width):
            return replace(part, outline=moved(outline, scale, dx, dy), width=width if fill else scale * width)
        case Sign(_, (x, y)):
            return replace(part, at=(scale * x + dx, scale * y + dy))
        case Clip((x, y, width, height), parts):
            return Clip((scale * x + dx, scale * y + dy, scale * width, scale * height), placed(parts, scale, dx, dy))
        case Frame(left, right, parts, top, foot):
            return Frame(
                left=scale * left + dx,
                right=scale * right + dx,
                parts=placed(parts, scale, dx, dy),
                top=scale * top + dy,
                foot=scale * foot + dy,
            )


@dataclass(frozen=True)
class LineDrawing:
    """A drawing by its name: its title, what it shows in words for the right hand, and how it is drawn.

    In the words left and right mean sides alone, so that they can change places. `note` explains the numbers in it,
    and how it is seen. `width` and `height` are its page in mm: a strip is as wide as the text.
    """

    name: str
    title: str
    words: str
    draw: Callable[[], Parts]
    note: str = ""
    same_for_both: bool = False
    width: float = WIDTH
    height: float = HEIGHT

    @property
    def strip(self) -> bool:
        """Whether it takes the whole width of the text."""
        return self.width > WIDTH
