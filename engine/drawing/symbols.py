"""The symbol of each palette entry: 64 plain forms that stay apart when printed in black at 2 mm.

Every form is one outline on a square from −1 to 1, y down, filled by the even-odd rule; a form "on a block" is cut out
of one. The order is the order of assignment: the calmest and farthest apart come first, and any two of the set differ
in at least an eighth of their pixels at 2 mm and 300 dots an inch, even when one is printed a pixel aside.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, pi, sin

from engine.drawing.shapes import Outline, box, circle, joined, moved, polygon, turned
from engine.pattern.palette import Palette


@dataclass(frozen=True)
class Symbol:
    """A name and its outline."""

    name: str
    outline: Outline


def by_name(name: str) -> Symbol:
    """Raises KeyError for a name that is not in the set."""
    return _BY_NAME[name]


def assigned(palette: Palette) -> tuple[Symbol, ...]:
    """The symbol of every entry, no two the same: those it names, and for the others the next that is free.

    A name that is unknown, or taken by an entry before, counts as none.
    """
    named: dict[str, int] = {}
    for place, entry in enumerate(palette):
        if entry.symbol in _BY_NAME:
            named.setdefault(entry.symbol, place)
    free = iter(symbol for symbol in SYMBOLS if symbol.name not in named)
    return tuple(
        by_name(entry.symbol) if named.get(entry.symbol) == place else next(free) for place, entry in enumerate(palette)
    )


def _form(*numbers: float) -> Outline:
    return polygon(*zip(numbers[::2], numbers[1::2], strict=True))


def _star(points: int, inner: float) -> Outline:
    radii = ((inner if i % 2 else 0.98, pi * i / points) for i in range(2 * points))
    return polygon(*((r * sin(angle), -r * cos(angle)) for r, angle in radii))


def _cut_out(outline: Outline, scale: float = 0.74) -> Outline:
    return joined((box(-0.94, -0.94, 1.88, 1.88), moved(outline, scale)))


def _bars(*tops: float, thick: float) -> Outline:
    return joined(box(-0.9, top, 1.8, thick) for top in tops)


def _dots(radius: float, *middles: tuple[float, float]) -> Outline:
    return joined(circle(radius, x, y) for x, y in middles)


_DOT = circle(0.42)
_UPRIGHT_BAR = box(-0.30, -0.94, 0.60, 1.88)
_TWO_BARS = _bars(-0.72, 0.24, thick=0.48)
_THREE_BARS = _bars(-0.90, -0.18, 0.54, thick=0.36)
_CROSS = _form(
    0,
    -0.30,
    0.56,
    -0.86,
    0.86,
    -0.56,
    0.30,
    0,
    0.86,
    0.56,
    0.56,
    0.86,
    0,
    0.30,
    -0.56,
    0.86,
    -0.86,
    0.56,
    -0.30,
    0,
    -0.86,
    -0.56,
    -0.56,
    -0.86,
)
_PLUS = _form(
    -0.24,
    -0.9,
    0.24,
    -0.9,
    0.24,
    -0.24,
    0.9,
    -0.24,
    0.9,
    0.24,
    0.24,
    0.24,
    0.24,
    0.9,
    -0.24,
    0.9,
    -0.24,
    0.24,
    -0.9,
    0.24,
    -0.9,
    -0.24,
    -0.24,
    -0.24,
)
_TRIANGLE = _form(0, -0.86, 0.92, 0.74, -0.92, 0.74)
_HALF = joined((box(-0.84, -0.84, 1.68, 1.68), box(0, -0.60, 0.60, 1.2)))
_SLASH = _form(0.50, -0.90, 0.90, -0.50, -0.50, 0.90, -0.90, 0.50)
_LOZENGE = _form(0, -1, 1, 0, 0, 1, -1, 0)
_ROOF = _form(0, -0.72, 0.92, 0.20, 0.92, 0.74, 0, -0.16, -0.92, 0.74, -0.92, 0.20)
_THREE_DOTS = _dots(0.36, (0, -0.52), (-0.54, 0.48), (0.54, 0.48))
_FOUR_DOTS = _dots(0.34, (-0.52, -0.52), (0.52, -0.52), (-0.52, 0.52), (0.52, 0.52))
_FIVE_DOTS = _dots(0.28, (0, 0), (-0.62, -0.62), (0.62, -0.62), (-0.62, 0.62), (0.62, 0.62))
_HOURGLASS = _form(-0.84, -0.88, 0.84, -0.88, 0.16, 0, 0.84, 0.88, -0.84, 0.88, -0.16, 0)
_CORNER = _form(-0.84, -0.84, 0.84, 0.84, -0.84, 0.84)
_CUP = _form(-0.84, -0.84, -0.44, -0.84, -0.44, 0.42, 0.44, 0.42, 0.44, -0.84, 0.84, -0.84, 0.84, 0.84, -0.84, 0.84)
_TEE = _form(-0.86, -0.86, 0.86, -0.86, 0.86, -0.40, 0.23, -0.40, 0.23, 0.86, -0.23, 0.86, -0.23, -0.40, -0.86, -0.40)
_GATE = joined((box(-0.86, -0.86, 0.4, 1.72), box(0.46, -0.86, 0.4, 1.72), box(-0.46, -0.2, 0.92, 0.4)))
_SQUARES = joined((box(0, -0.84, 0.84, 0.84), box(-0.84, 0, 0.84, 0.84)))
_ANGLE = _form(-0.80, -0.84, -0.34, -0.84, -0.34, 0.38, 0.84, 0.38, 0.84, 0.84, -0.80, 0.84)
_STEPS = _form(-0.86, -0.86, -0.28, -0.86, -0.28, -0.28, 0.28, -0.28, 0.28, 0.28, 0.86, 0.28, 0.86, 0.86, -0.86, 0.86)
_CORNERS = joined(_form(x, y, x * 0.1, y, x, y * 0.1) for x in (-0.9, 0.9) for y in (-0.9, 0.9))
_THIRDS = (-0.86, -0.25, 0.36)
_WREATH = joined(box(x, y, 0.5, 0.5) for x in _THIRDS for y in _THIRDS if (x, y) != (-0.25, -0.25))

SYMBOLS = (
    Symbol("dot", _DOT),
    Symbol("two level bars", _TWO_BARS),
    Symbol("ring", joined((circle(0.84), circle(0.46)))),
    Symbol("diagonal cross", _CROSS),
    Symbol("triangle", _TRIANGLE),
    Symbol("left half", _HALF),
    Symbol("slash", _SLASH),
    Symbol("upright bar", _UPRIGHT_BAR),
    Symbol("square", box(-0.7, -0.7, 1.4, 1.4)),
    Symbol("open lozenge", joined((_LOZENGE, moved(_LOZENGE, 0.48)))),
    Symbol("valley", turned(_ROOF, 2)),
    Symbol("plus", _PLUS),
    Symbol("three dots", _THREE_DOTS),
    Symbol("hourglass", _HOURGLASS),
    Symbol("backslash", turned(_SLASH, 1)),
    Symbol("falling triangle", turned(_TRIANGLE, 2)),
    Symbol("level bar", turned(_UPRIGHT_BAR, 1)),
    Symbol("four dots", _FOUR_DOTS),
    Symbol("lower right corner", turned(_CORNER, 3)),
    Symbol("arch", turned(_CUP, 2)),
    Symbol("tee", _TEE),
    Symbol("gate", _GATE),
    Symbol("roof", _ROOF),
    Symbol("two upright bars", turned(_TWO_BARS, 1)),
    Symbol("upper left corner", turned(_CORNER, 1)),
    Symbol("bow tie", turned(_HOURGLASS, 1)),
    Symbol("cup", _CUP),
    Symbol("rising squares", _SQUARES),
    Symbol("right triangle", turned(_TRIANGLE, 1)),
    Symbol("standing tee", turned(_TEE, 2)),
    Symbol("falling squares", turned(_SQUARES, 1)),
    Symbol("left triangle", turned(_TRIANGLE, 3)),
    Symbol("dot on a block", _cut_out(_DOT)),
    Symbol("three level bars", _THREE_BARS),
    Symbol("lower half", turned(_HALF, 3)),
    Symbol("left chevron", turned(_ROOF, 3)),
    Symbol("left bracket", turned(_CUP, 1)),
    Symbol("right chevron", turned(_ROOF, 1)),
    Symbol("right bracket", turned(_CUP, 3)),
    Symbol("five dots", _FIVE_DOTS),
    Symbol("three upright bars", turned(_THREE_BARS, 1)),
    Symbol("three falling dots", turned(_THREE_DOTS, 2)),
    Symbol("target", joined((circle(1.0), circle(0.68), circle(0.34)))),
    Symbol("right half", turned(_HALF, 2)),
    Symbol("angle", _ANGLE),
    Symbol("upper right angle", turned(_ANGLE, 2)),
    Symbol("hourglass on a block", _cut_out(_HOURGLASS)),
    Symbol("four dots on a block", _cut_out(_FOUR_DOTS)),
    Symbol("four corners", _CORNERS),
    Symbol("bow tie on a block", _cut_out(turned(_HOURGLASS, 1))),
    Symbol("upper half", turned(_HALF, 1)),
    Symbol("wreath of squares", _WREATH),
    Symbol("steps", _STEPS),
    Symbol("six-pointed star", _star(6, 0.44)),
    Symbol("plus on a block", _cut_out(_PLUS, 0.8)),
    Symbol("side gate", turned(_GATE, 1)),
    Symbol("lozenge", _LOZENGE),
    Symbol("tee from the right", turned(_TEE, 1)),
    Symbol("tee from the left", turned(_TEE, 3)),
    Symbol("triangle on a block", _cut_out(_TRIANGLE)),
    Symbol("falling triangle on a block", _cut_out(turned(_TRIANGLE, 2))),
    Symbol("four far dots", _dots(0.36, (0, -0.62), (0.62, 0), (0, 0.62), (-0.62, 0))),
    Symbol("upper left angle", turned(_ANGLE, 1)),
    Symbol("upper right corner", turned(_CORNER, 2)),
)
_BY_NAME = {symbol.name: symbol for symbol in SYMBOLS}
