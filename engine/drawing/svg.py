"""Drawings as SVG text: the same text every time, no inline style, words of the craft as classes."""

from __future__ import annotations

import re
from collections.abc import Iterable
from html import escape

from engine.drawing.shapes import Drawing, Group, Line, Outline, Paint, Path, Point, Rect, Shape, Stamp, Step, Text

_SPARED = re.compile(r"(?<=\.\d) (?=\.)|(?<=\.\d\d) (?=\.)")  # blanks between two numbers with points
_UNSPEAKABLE = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")  # what XML 1.0 cannot hold


def to_svg(drawing: Drawing) -> str:
    """The whole picture, sized in mm, with its title and its description for those who cannot see it."""
    width, height = number(drawing.width), number(drawing.height)
    corner = f"{number(drawing.left)} {number(drawing.top)}"
    said = f"<desc>{_text(drawing.description)}</desc>" if drawing.description else ""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="{corner} {width} {height}" role="img"><title>{_text(drawing.title)}</title>{said}'
        f"{_all(drawing.shapes)}</svg>"
    )


def number(value: float) -> str:
    """The shortest text of a measure to a hundredth of a millimetre: 2.0 → "2", −0.004 → "0", 0.5 → ".5"."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return {"-0": "0"}.get(text, text.replace("0.", ".", 1) if text.lstrip("-").startswith("0.") else text)


def path_data(outline: Outline) -> str:
    """The outline as the text of a path."""
    return "".join(f"{step[0]}{' '.join(number(float(part)) for part in step[1:])}" for step in outline)


def _all(shapes: Iterable[Shape]) -> str:
    return "".join(_element(shape) for shape in shapes)


def _element(shape: Shape) -> str:
    match shape:
        case Group(name, shapes):
            return f'<g class="{_text(name)}">{_all(shapes)}</g>'
        case Rect(x, y, width, height, corner, paint):
            round_off = f' rx="{number(corner)}"' if corner else ""
            return (
                f'<rect x="{number(x)}" y="{number(y)}" width="{number(width)}" height="{number(height)}"'
                f"{round_off}{_paint(paint)}/>"
            )
        case Line((x1, y1), (x2, y2), paint):
            return f'<path d="M{number(x1)} {number(y1)}L{number(x2)} {number(y2)}"{_paint(paint)}/>'
        case Path(outline, paint):
            return f'<path fill-rule="evenodd" d="{path_data(outline)}"{_paint(paint)}/>'
        case Stamp(outline, places, paint):
            return f'<path fill-rule="evenodd" d="{_stamped(outline, places)}"{_paint(paint)}/>'
        case Text(x, y, text, size, anchor, paint):
            return (
                f'<text x="{number(x)}" y="{number(y)}" font-family="sans-serif" font-size="{number(size)}" '
                f'text-anchor="{anchor}"{_paint(paint)}>{_text(text)}</text>'
            )


def _stamped(outline: Outline, places: Iterable[Point]) -> str:
    """Every copy is the same relative text after its own move, so that thousands stay quick and small."""
    (_, left, top), *steps = outline
    dx, dy = round(float(left), 2), round(float(top), 2)
    copy = _relative(dx, dy, steps)
    return "".join(f"M{number(round(x, 2) + dx)} {number(round(y, 2) + dy)}{copy}" for x, y in places)


def _relative(sx: float, sy: float, steps: Iterable[Step]) -> str:
    """The steps from there as relative ones. Rounded places are subtracted, so that no error adds up."""
    parts, px, py = [], sx, sy
    for letter, *numbers in steps:
        if letter == "Z":
            parts.append("z")
            px, py = sx, sy
            continue
        points = [round(float(value), 2) for value in numbers]
        moves = [number(value - (py if i % 2 else px)) for i, value in enumerate(points)]
        parts.append(_step(str(letter).lower(), moves))
        px, py = points[-2:]
        if letter == "M":
            sx, sy = px, py
    return "".join(parts)


def _step(letter: str, moves: list[str]) -> str:
    """One relative step in as few letters as the grammar of SVG 2 (9.3.9) lets: "l2 0" is "h2", "c.5 0 .9 -.4" …"""
    if letter == "l" and "0" in moves:
        return f"h{moves[0]}" if moves[1] == "0" else f"v{moves[1]}"
    text = f"{letter}{' '.join(moves)}".replace(" -", "-")
    return _SPARED.sub("", text)


def _paint(paint: Paint) -> str:
    line = f' stroke="{_text(paint.line)}" stroke-width="{number(paint.line_mm)}"' if paint.line else ""
    return f' fill="{_text(paint.fill) if paint.fill else "none"}"{line}'


def _text(text: str) -> str:
    return escape(_UNSPEAKABLE.sub("\ufffd", text))
