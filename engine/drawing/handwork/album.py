"""Every line drawing by its name, for either hand: as parts, as PDF operators, and in words."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache, lru_cache

from engine.drawing.handwork import (
    ends,
    fastening,
    joining,
    mending,
    metalwork,
    rounds,
    starting,
    stitches,
    stringing,
    wide_stitches,
)
from engine.drawing.handwork.parts import Clip, Frame, LineDrawing, Part, Parts, Sign, Stroke, mirrored
from engine.drawing.operators import operators
from engine.drawing.svg import number
from engine.pattern.rgb import rgb

ALBUM: dict[str, LineDrawing] = {
    drawing.name: drawing
    for room in (stringing, starting, stitches, wide_stitches, rounds, joining, ends, fastening, metalwork, mending)
    for drawing in room.DRAWINGS
}
_SIDES = {"left": "right", "right": "left", "Left": "Right", "Right": "Left"}


@lru_cache(64)
def parts(name: str, hand: str = "right") -> Parts:
    """The drawing for that hand. Raises KeyError for a name that is not in the album."""
    drawing = ALBUM[name]
    drawn = drawing.draw()
    return mirrored(drawn, 0.0, drawing.width) if hand == "left" and not drawing.same_for_both else drawn


def words(name: str, hand: str = "right") -> str:
    """What the drawing shows, for that hand: left and right change places with it."""
    drawing = ALBUM[name]
    if hand == "right" or drawing.same_for_both:
        return drawing.words
    return re.sub(r"\b(?:[Ll]eft|[Rr]ight)\b", _other_side, drawing.words)


def _other_side(side: re.Match[str]) -> str:
    return _SIDES[side[0]]


@lru_cache(64)
def painted(name: str, hand: str = "right") -> str:
    """The drawing as PDF operators on its page, y down; a colour or width is said only where it changes."""
    return "\n".join(["1 J 1 j", *_painted(parts(name, hand), {"cap": "1 J", "dash": "[] 0 d"})])


def strokes(drawn: Iterable[Part]) -> Iterable[Stroke]:
    """Every stroke in painting order, whatever frame or box it stands in."""
    for part in drawn:
        match part:
            case Stroke():
                yield part
            case Sign():
                yield part.stroke
            case Clip(_, inner) | Frame(_, _, inner):
                yield from strokes(inner)


def _painted(drawn: Parts, state: dict[str, str]) -> Iterable[str]:
    for part in drawn:
        match part:
            case Frame(_, _, inner):
                yield from ("q", *_painted(inner, dict(state)), "Q")
            case Clip(box, inner):
                yield from (f"q {' '.join(map(number, box))} re W n", *_painted(inner, dict(state)), "Q")
            case Stroke() | Sign():
                yield from _stroked(part.stroke if isinstance(part, Sign) else part, state)


def _stroked(stroke: Stroke, state: dict[str, str]) -> Iterable[str]:
    wanted: dict[str, str] = {}
    if stroke.line:
        wanted |= {"cap": f"{0 if stroke.butt else 1} J", "dash": f"[{' '.join(map(number, stroke.dash))}] 0 d"}
        wanted |= {"line": _colour(stroke.line, "RG"), "width": f"{number(stroke.width)} w"}
    if stroke.fill:
        wanted["fill"] = _colour(stroke.fill, "rg")
    changed = [text for what, text in wanted.items() if state.get(what) != text]
    state.update(wanted)
    paint = {(True, True): "B", (True, False): "f", (False, True): "S"}[bool(stroke.fill), bool(stroke.line)]
    yield " ".join((*changed, operators(stroke.outline), paint))


@cache
def _colour(text: str, operator: str) -> str:
    return " ".join((*(number(part / 255) for part in rgb(text)), operator))
