"""A rope beside a ruler, both in the same scale: that of the rope as it is worked."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, floor

import numpy as np

from engine.counting.questions import Question
from engine.counting.sizes import Size
from engine.drawing.camera import Camera
from engine.drawing.laying import rope_length
from engine.drawing.poses import filled, points_on_table, thickness, worn
from engine.drawing.shapes import Drawing, Line, Paint, Rect, Shape, Text
from engine.errors import EngineError
from engine.scenes.scene import TO_SCALE, Scene, Staged, Subject, mm_a_bead, rope_in_words
from engine.scenes.settings import Ground, Setting
from engine.units import INCH_MM, length, millimetres

LEAST_SEEN_MM, THICKNESSES_SEEN = 90.0, 9.0
RULER_MM = 26.0  # how wide the ruler is; of a short picture less
ZERO = 0.07  # where nought stands, share of the picture's width


def _beside_a_ruler(subject: Subject, setting: Setting) -> Staged:
    one = subject.size()
    mm = mm_a_bead(one)
    seen_mm = max(LEAST_SEEN_MM, THICKNESSES_SEEN * thickness(subject.pattern) * mm)
    px = setting.width / seen_mm  # in a millimetre
    zero = ZERO * setting.width
    wide = thickness(subject.pattern) * mm * px
    ruler = min(RULER_MM * px, 0.40 * setting.height, setting.height - 1.4 * wide - 2.4 * _letter(setting))
    high = 1.25 * wide + ruler + 2.0 * _letter(setting)
    head = max(0.12 * wide, (setting.height - high) / 2)
    rope_y, top = head + 0.5 * wide, head + 1.25 * wide
    camera = Camera(setting.width, setting.height, px * mm, down=rope_y - setting.height / 2)
    room_mm = (setting.width - 2 * zero) / px
    shown = _whole_passes(subject, one, room_mm)
    start = (zero - setting.width / 2) / (px * mm)
    if shown is None:
        path = points_on_table(np.array([start, setting.width / (px * mm)]), np.zeros(2))
        rope = filled(subject.pattern, path, subject.sizes)
    else:
        end = start + rope_length(subject.pattern.around, shown.beads)
        path = points_on_table(np.array([start, end]), np.zeros(2))
        rope = worn(subject.pattern, shown.laid, shown.beads, path, subject.sizes)
    source = one.rope.source.replace("your swatch", "the maker’s swatch", 1)
    caption = (
        f"{_measure(shown or one, shown is not None, subject.units)}. {source[:1].upper()}{source[1:]}; {TO_SCALE}."
    )
    drawn = _ruler(setting, zero, px, top, ruler)
    words = Text(
        setting.width / 2,
        min(setting.height - 0.5 * _letter(setting), top + ruler + 1.6 * _letter(setting)),
        caption,
        _letter(setting),
        anchor="middle",
        paint=Paint(setting.ground.ink),
    )
    entries = subject.pattern.palette.entries
    over = Drawing(setting.width, setting.height, (words,), caption)
    return Staged(rope, entries, camera, under=drawn, over=over)


def _letter(setting: Setting) -> float:
    return 0.024 * min(setting.width, 1.4 * setting.height)


def _whole_passes(subject: Subject, one: Size, room_mm: float) -> Size | None:
    """The rope of as many whole passes as fit there; None where not even one does."""
    if one.rope_mm > room_mm:
        return None
    try:
        return subject.size(Question(length_mm=room_mm, rounding="down"))
    except EngineError:  # a rope without a part that fills is as long as it is
        return one


def _measure(shown: Size, whole: bool, units: str) -> str:
    thick = f"about {millimetres(shown.thickness_mm)} thick"
    return f"{length(shown.rope_mm, units)} long, {thick}" if whole else f"A rope {thick}"


def _ruler(setting: Setting, zero: float, px: float, top: float, high: float) -> Drawing:
    """Centimetres above, inches below, from nought to the edge of the picture."""
    ground = setting.ground
    last_mm = (setting.width - zero) / px
    line = Paint(line=ground.ink, line_mm=max(1.0, setting.width / 1400))
    body = Rect(
        0.35 * zero, top, setting.width, high, corner=0.12 * high, paint=Paint(ground.body, ground.ink, line.line_mm)
    )
    shapes: list[Shape] = [body]
    for tick in range(floor(last_mm) + 1):
        reach = 0.30 if tick % 10 == 0 else 0.22 if tick % 5 == 0 else 0.13
        x = zero + tick * px
        shapes.append(Line((x, top), (x, top + reach * high), line))
        if tick % 10 == 0 and tick:
            shapes.append(_numeral(x, top + 0.46 * high, str(tick // 10), high, ground))
    for tick in range(ceil(last_mm / INCH_MM * 8)):
        x = zero + tick * INCH_MM / 8 * px
        reach = 0.24 if tick % 8 == 0 else 0.17 if tick % 4 == 0 else 0.10
        shapes.append(Line((x, top + high), (x, top + high - reach * high), line))
        if tick % 8 == 0 and tick:
            shapes.append(_numeral(x, top + 0.72 * high, str(tick // 8), high, ground))
    for name, foot in (("0 cm", 0.46), ("0 in", 0.72)):
        numeral = _numeral(zero - 0.045 * high, top + foot * high, name, high, ground)
        shapes.append(replace(numeral, anchor="start", size=0.11 * high))
    return Drawing(setting.width, setting.height, tuple(shapes), "Ruler")


def _numeral(x: float, y: float, text: str, high: float, ground: Ground) -> Text:
    return Text(x, y, text, 0.15 * high, anchor="middle", paint=Paint(ground.ink))


def _seen(subject: Subject) -> str:
    one = subject.size()
    return (
        f"A {rope_in_words(subject)}, beside a ruler in centimetres and inches: about "
        f"{millimetres(one.thickness_mm)} thick. {TO_SCALE[:1].upper()}{TO_SCALE[1:]}."
    )


RULER = Scene(
    key="ruler",
    name="Beside a ruler",
    words="The rope over a ruler in centimetres and inches, in the scale of your swatch or of the estimate.",
    stage=_beside_a_ruler,
    seen=_seen,
)
