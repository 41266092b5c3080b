"""Ends of a rope finished with a cap, a cone or a toggle clasp, all measured to the rope.

A cap is as wide inside as the rope and up to a millimetre more (common practice), the wire of an eye pin 22 gauge, a
jump ring of 20 gauge wire 4 mm across outside (both published), a bar longer than its ring by several millimetres.
"""

from __future__ import annotations

from collections.abc import Callable
from math import pi

import numpy as np

from engine.drawing.camera import Camera
from engine.drawing.fittings import Fitting, Loop, Turned
from engine.drawing.laying import LaidRope
from engine.drawing.poses import filled, points_on_table, thickness
from engine.scenes.lying import together
from engine.scenes.scene import Scene, Staged, Subject, mm_a_bead, rope_in_words
from engine.scenes.settings import Setting

ROOM_MM = 0.3  # between rope and cap, each side
WALL_MM = 0.4
PIN_MM = 0.644  # 22 gauge
LOOP_MM = 2.6  # wire loop of the pin, outside
JUMP_MM, JUMP_WIRE_MM = 4.0, 0.812  # outside; 20 gauge
TOGGLE_MM, TOGGLE_WIRE_MM = 14.0, 2.0  # ring, outside
BAR_MM, BAR_WIRE_MM = 20.0, 2.2
LOW = -0.18  # how much lower than the axis of the rope a clasp lies, share of its thickness
LEAN = 0.55  # of a ring that is linked into another
INSIDE = 0.40  # how far the rope goes into its cap, share of its thickness

Profile = tuple[tuple[float, float], ...]
Lathe = Callable[[float, float], tuple[Profile, float]]


def _capped(subject: Subject, setting: Setting) -> Staged:
    return _ended(subject, setting, _cap)


def _coned(subject: Subject, setting: Setting) -> Staged:
    return _ended(subject, setting, _cone)


def _ended(subject: Subject, setting: Setting, made: Lathe) -> Staged:
    """One end from the left, its metal, and a jump ring in the loop of its pin."""
    pattern, mm = subject.pattern, _mm(subject)
    thick = thickness(pattern)
    _, reach = _end_of(0.0, 1, thick / 2, mm, made)
    wide = max(1.9 * thick + 1.25 * reach, 2.1 * reach)
    scale = min(setting.width / wide, 0.42 * setting.height / thick)
    end = setting.width / scale / 2 - reach - 0.12 * setting.width / scale
    rope = _rope(subject, -setting.width / scale / 2 - 6, end + INSIDE * thick)
    parts, _ = _end_of(end, 1, thick / 2, mm, made)
    camera = Camera(setting.width, setting.height, scale)
    return Staged(rope, pattern.palette.entries, camera, parts)


def _clasped(subject: Subject, setting: Setting) -> Staged:
    """Both ends, capped, with a toggle clasp that is closed between them.

    A thick rope has a larger clasp.
    """
    pattern, mm = subject.pattern, _mm(subject)
    thick = thickness(pattern)
    larger = max(1.0, thick / mm / 13) * mm
    left, reach = _end_of(0.0, 1, thick / 2, mm, _cap)
    ring, bar = TOGGLE_WIRE_MM / 2 * larger, BAR_WIRE_MM / 2 * larger
    middle = reach - JUMP_WIRE_MM * mm - ring + (TOGGLE_MM / 2) * larger
    jump, jump_wire = (JUMP_MM - JUMP_WIRE_MM) / 2 * larger, JUMP_WIRE_MM / 2 * larger
    eye = 1.3 * larger
    second = middle + bar + 2 * eye + jump - 2 * jump_wire
    up = LOW * thick + ring + bar
    end = second + jump - 2.2 * jump_wire + reach
    right, _ = _end_of(end, -1, thick / 2, mm, _cap)
    parts = (
        *left,
        Loop((middle, 0.0, LOW * thick), TOGGLE_MM / 2 * larger - ring, ring),
        Turned((middle, -BAR_MM / 2 * larger, up), 1, _bar(BAR_MM * larger, bar)),
        Loop((middle + bar + eye - jump_wire, 0.0, up), eye, jump_wire),
        Loop((second, 0.0, up), jump, jump_wire, LEAN),
        *right,
    )
    scale = setting.width / (end + 3.2 * thick)
    edge = setting.width / scale / 2 + 6
    ropes = [
        _rope(subject, end / 2 - edge, INSIDE * thick),
        _rope(subject, end - INSIDE * thick, end / 2 + edge),
    ]
    camera = Camera(setting.width, setting.height, scale, right=-end / 2 * scale)
    return Staged(together(ropes), pattern.palette.entries, camera, parts)


def _end_of(end: float, way: int, half: float, mm: float, made: Lathe) -> tuple[tuple[Fitting, ...], float]:
    """The metal at an end whose mouth is at `end`, to the right (way 1) or left (−1): cap or cone, pin, loop and jump
    ring; and how far that reaches."""
    quarters = 0 if way == 1 else 2
    outline, length = made(half, mm)
    loop, pin = (LOOP_MM - PIN_MM) * mm / 2, PIN_MM * mm / 2
    jump, wire = (JUMP_MM - JUMP_WIRE_MM) * mm / 2, JUMP_WIRE_MM * mm / 2
    at = length + 0.2 * mm + loop
    last = at + loop + jump - 1.6 * wire - pin
    parts = (
        Turned((end, 0.0, 0.0), quarters, outline),
        Turned((end + way * length * 0.9, 0.0, 0.0), quarters, _rod(0.1 * length + 0.4 * mm, pin)),
        Loop((end + way * at, 0.0, 0.0), loop, pin),
        Loop((end + way * last, 0.0, 0.0), jump, wire, way * LEAN),
    )
    return parts, last + jump + wire


def _cap(half: float, mm: float) -> tuple[Profile, float]:
    """The profile of a domed cap with a rim and a small bead at its top, for a rope of half that width; its length."""
    dome = ((0.12 + 0.76 * t, 0.20 + 0.80 * (1 - t**2.4) ** 0.62) for t in np.linspace(0, 1, 40).tolist())
    rim = ((0.00, 1.03), (0.03, 1.08), (0.09, 1.08))
    bead = ((0.90, 0.20), (0.93, 0.27), (0.96, 0.27), (1.00, 0.16))
    return _metal((*rim, *dome, *bead), 1.25, half, mm)


def _cone(half: float, mm: float) -> tuple[Profile, float]:
    """The profile of a long cone with a rim; its length."""
    taper = ((0.08 + 0.82 * t, 0.24 + 0.76 * (1 - t**1.25)) for t in np.linspace(0, 1, 40).tolist())
    rim = ((0.00, 1.02), (0.02, 1.06), (0.06, 1.06))
    bead = ((0.92, 0.23), (0.94, 0.29), (0.97, 0.29), (1.00, 0.17))
    return _metal((*rim, *taper, *bead), 2.6, half, mm)


def _metal(outline: Profile, long: float, half: float, mm: float) -> tuple[Profile, float]:
    """An outline, as shares of length and radius, round a rope of half that width: `long` radii long; that length."""
    r = half + (ROOM_MM + WALL_MM) * mm
    return tuple((place * long * r, radius * r) for place, radius in outline), long * r


def _rod(long: float, r: float) -> Profile:
    """A wire seen from the side, its ends round."""
    turn = np.linspace(0, pi / 2, 7)
    head = [(r * (1 - float(np.cos(t))), r * float(np.sin(t))) for t in turn]
    return (*head, *((long - place, radius) for place, radius in reversed(head)))


def _bar(long: float, r: float) -> Profile:
    """The bar of a toggle with a bead at each end."""
    turn = np.linspace(0.05 * pi, 0.82 * pi, 13)
    ball = 1.55 * r
    head = [(ball * (1 - float(np.cos(t))), ball * float(np.sin(t))) for t in turn]
    return (*head, (head[-1][0] + r, r), (long - head[-1][0] - r, r), *((long - x, y) for x, y in reversed(head)))


def _rope(subject: Subject, start: float, end: float) -> LaidRope:
    return filled(subject.pattern, points_on_table(np.array([start, end]), np.zeros(2)), subject.sizes)


def _mm(subject: Subject) -> float:
    """Bead widths in a millimetre."""
    return 1 / mm_a_bead(subject.size())


ENDS = (
    Scene(
        key="cap",
        name="End with a cap",
        words="One end in a bead cap, with the loop of its pin and a jump ring.",
        stage=_capped,
        seen=lambda subject: f"The end of a {rope_in_words(subject)}, finished with a silver bead cap, drawn to scale.",
    ),
    Scene(
        key="cone",
        name="End with a cone",
        words="One end in a cone, with the loop of its pin and a jump ring.",
        stage=_coned,
        seen=lambda subject: f"The end of a {rope_in_words(subject)}, finished with a silver cone, drawn to scale.",
    ),
    Scene(
        key="clasp",
        name="Toggle clasp",
        words="Both ends with caps, joined by a toggle clasp.",
        stage=_clasped,
        seen=lambda subject: (
            f"The ends of a {rope_in_words(subject)}, with silver caps and a closed toggle clasp, drawn to scale."
        ),
    ),
)
