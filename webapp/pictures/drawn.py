"""A drawing of shapes as a picture, in px: outlines smooth, words in the booklet's own font."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from PIL import Image, ImageDraw, ImageFont

from engine.drawing.shapes import Drawing, Group, Line, Outline, Path, Point, Rect, Shape, Stamp, Text
from engine.pattern.rgb import rgb
from webapp.paths import TEMPLATES

FINE = 3  # drawn this much larger, then made smaller, so that edges are smooth
CURVE = 8  # points on a curve
FONT = TEMPLATES / "booklet" / "fonts" / "ropewright-prose-400.ttf"
ANCHORS = {"start": "ls", "middle": "ms", "end": "rs"}


def drawn(drawing: Drawing) -> Image.Image:
    """The drawing on a clear ground, RGBA, a px a unit. Groups are drawn as what they hold; stamps are not drawn."""
    width, height = round(drawing.width), round(drawing.height)
    image = Image.new("RGBA", (width, height), (255, 255, 255, 0))
    if any(not isinstance(shape, Text) for shape in drawing.shapes):
        fine = Image.new("RGBA", (width * FINE, height * FINE), _clear(drawing))
        brush = ImageDraw.Draw(fine)
        for shape in drawing.shapes:
            _put(brush, shape)
        image = fine.resize((width, height), Image.Resampling.BOX)
    brush = ImageDraw.Draw(image)
    for shape in drawing.shapes:
        if isinstance(shape, Text):
            _write(brush, shape, width)
    return image


def _clear(drawing: Drawing) -> tuple[int, int, int, int]:
    """A clear ground in the colour of the first line, so that smooth edges have no rim of another colour."""
    lined = (shape.paint.line for shape in drawing.shapes if isinstance(shape, Path | Rect) and shape.paint.line)
    red, green, blue = rgb(next(lined, "#ffffff"))
    return red, green, blue, 0


def _put(brush: ImageDraw.ImageDraw, shape: Shape) -> None:
    match shape:
        case Group(_, shapes):
            for part in shapes:
                _put(brush, part)
        case Line(start, end, paint):
            brush.line([_fine(start), _fine(end)], paint.line, max(1, round(paint.line_mm * FINE)))
        case Rect(x, y, width, height, corner, paint):
            brush.rounded_rectangle(
                [_fine((x, y)), _fine((x + width, y + height))],
                corner * FINE,
                paint.fill or None,
                paint.line or None,
                max(1, round(paint.line_mm * FINE)),
            )
        case Path(outline, paint):
            for path in paths(outline):
                points = [_fine(point) for point in path]
                if paint.line:
                    brush.line([*points, *points[:2]], paint.line, max(1, round(paint.line_mm * FINE)), joint="curve")
                if paint.fill:
                    brush.polygon(points, paint.fill)
        case Text() | Stamp():
            pass


def _write(brush: ImageDraw.ImageDraw, text: Text, width: int) -> None:
    """A line of text, smaller where it would be wider than the picture."""
    size = text.size
    while size > 8 and _font(round(size)).getlength(text.text) > 0.94 * width:
        size *= 0.94
    brush.text((text.x, text.y), text.text, text.paint.fill, _font(round(size)), anchor=ANCHORS[text.anchor])


def paths(outline: Outline) -> Iterator[list[Point]]:
    """The closed paths of an outline as points, curves as short lines."""
    path: list[Point] = []
    for step, *numbers in outline:
        points = [(float(x), float(y)) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]
        if step == "Z":
            yield path
            path = []
        elif step == "C":
            path += _curve(path[-1], *points)
        else:
            path += points


def _curve(start: Point, first: Point, second: Point, end: Point) -> list[Point]:
    shares = [i / CURVE for i in range(1, CURVE + 1)]
    weights = [((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3) for t in shares]
    through = (start, first, second, end)
    return [
        (
            sum(share * point[0] for share, point in zip(weight, through, strict=True)),
            sum(share * point[1] for share, point in zip(weight, through, strict=True)),
        )
        for weight in weights
    ]


def _fine(point: Point) -> Point:
    return point[0] * FINE, point[1] * FINE


@lru_cache(maxsize=32)
def _font(size: int) -> ImageFont.FreeTypeFont:
    return ImageFont.truetype(str(FONT), max(8, size))
