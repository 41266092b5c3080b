"""Ropes of the usual lengths as they are worn, to scale on a plain drawn figure: necklaces, a bracelet, a bangle.

How a necklace hangs is worked out: half of what goes round the neck lies behind it, the rest hangs in front as a chain
of that length would, forward over the collarbones.
"""

from __future__ import annotations

from functools import partial
from math import pi

import numpy as np

from engine.counting.finished import NAMED, asked_in_words
from engine.counting.questions import NamedSize
from engine.counting.sizes import Size
from engine.drawing.beadform import Array
from engine.drawing.camera import Camera
from engine.drawing.laying import rope_length
from engine.drawing.poses import worn
from engine.drawing.shapes import Drawing, Paint, Text
from engine.scenes.figure import (
    NECK_DEEP_MM,
    NECK_MM,
    WRIST_DEEP_MM,
    WRIST_MM,
    bust,
    drawn_figure,
    forearm,
    shoulder_mm,
)
from engine.scenes.scene import TO_SCALE, Scene, Staged, Subject, mm_a_bead, rope_in_words
from engine.scenes.settings import Setting

NECKLACES = ("collar", "choker", "princess", "matinee", "opera")
BRACELET, BANGLE = "bracelet-m", "bangle-2-8"
SIZES = {size.key: size for size in NAMED}
STEPS = 400
FRONT = 0.03  # share of a half turn by which a curve begins in front of the side of neck or wrist
SLOPE = 0.3  # how much lower the front of a close necklace is than its sides, share of how far forward it is
CHEST_MM = 38.0  # how much further forward than the front of the neck a long necklace lies


def _necklace(key: str, subject: Subject, setting: Setting) -> Staged:
    size = subject.size(SIZES[key].question)
    mm, half = mm_a_bead(size), size.thickness_mm / 2
    front_mm, curve = _hanging(size, half)
    lowest = -float(curve[:, 1].min())
    shown = (max(lowest, 60) + 110) + 120  # from above the chin to below the rope, in mm
    px = min(setting.height / shown, setting.width / 330)
    middle = (lowest + 110 - 120) / 2
    down = setting.height / 2 - middle * px - _letter(setting)
    camera = Camera(setting.width, setting.height, px * mm, down=down - setting.height / 2)
    rope = worn(
        subject.pattern,
        size.laid,
        _beads_of(size, front_mm),
        _as_long_as(curve / mm, rope_length(size.around, _beads_of(size, front_mm))),
        subject.sizes,
    )
    figure = drawn_figure(setting, bust(), px, (setting.width / 2, down))
    caption = f"{SIZES[key].name}, {asked_in_words(size.question, subject.units)}"
    return _dressed(subject, setting, size, Staged(rope, (), camera, under=figure), caption)


def _hanging(size: Size, half: float) -> tuple[float, Array]:
    """How much of a necklace is seen in front, and its curve in mm from the pit of the neck: (m, 3), y up, z forward.

    The finished length goes once round: behind, half an oval about the neck; in front a chain as long as what is left.
    """
    girth = size.finished_mm + (pi * size.thickness_mm if size.question.girth_mm is not None else 0.0)
    lies = float(np.clip((girth - 330) / 220, 0, 1))  # the longer, the further out it lies on the shoulders
    wide, deep = NECK_MM + half + 20 * lies, NECK_DEEP_MM + half + 8 * lies
    behind = pi * np.sqrt((wide * wide + deep * deep) / 2)
    front = max(girth - behind, 0.9 * behind) * (1 - FRONT)
    low, high = np.log(2.0), np.log(1e5)
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if _length(_front(wide, deep, np.exp(middle), lies)) > front else (low, middle)
    up = np.array([0, shoulder_mm(wide - half) + 0.1 * half, 0])
    return front, _front(wide, deep, np.exp(low), lies) + up


def _front(wide: float, deep: float, slack: float, lies: float) -> Array:
    """The front half of a necklace as a hanging chain, from its sides at nought; `slack` is the chain's constant."""
    turn = np.linspace(FRONT / 2 * pi, (1 - FRONT / 2) * pi, STEPS)
    x, out = -wide * np.cos(turn), np.sin(turn)
    y = slack * (np.cosh(x / slack) - np.cosh(x[0] / slack))
    z = (deep + CHEST_MM * lies * out) * out
    return np.column_stack([x, y - SLOPE * (1 - lies) * z, z])


def _bracelet(subject: Subject, setting: Setting) -> Staged:
    return _round_the_wrist(subject, setting, SIZES[BRACELET], lean=0.10, ease_mm=2.0)


def _bangle(subject: Subject, setting: Setting) -> Staged:
    return _round_the_wrist(subject, setting, SIZES[BANGLE], lean=0.34, ease_mm=0.0)


def _round_the_wrist(subject: Subject, setting: Setting, named: NamedSize, lean: float, ease_mm: float) -> Staged:
    """The upper half of a ring round the wrist, a little bowed towards the hand."""
    size = subject.size(named.question)
    mm, half = mm_a_bead(size), size.thickness_mm / 2
    px = min(setting.width / 330, setting.height / 175)
    if named.question.wrist_mm is None:  # a bangle stands round
        wide = deep = size.rope_mm / (2 * pi)
    else:
        wide, deep = WRIST_MM + half + ease_mm, WRIST_DEEP_MM + half + ease_mm
    turn = np.linspace(FRONT * pi, (1 - FRONT) * pi, STEPS)
    x = lean * wide * np.sin(turn) - 0.35 * lean * wide
    curve = np.column_stack([x, wide * np.cos(turn), deep * np.sin(turn)])
    beads = _beads_of(size, _length(curve))
    path = _as_long_as(curve / mm, rope_length(size.around, beads))
    rope = worn(subject.pattern, size.laid, beads, path, subject.sizes)
    right = setting.width / 2 - 40 * px
    down = setting.height / 2 + 0.5 * _letter(setting)
    camera = Camera(
        setting.width, setting.height, px * mm, right=right - setting.width / 2, down=down - setting.height / 2
    )
    figure = drawn_figure(setting, forearm(), px, (right, down))
    asked = asked_in_words(size.question, subject.units)
    caption = f"{named.name}, {asked if named.question.wrist_mm else named.about}"
    return _dressed(subject, setting, size, Staged(rope, (), camera, under=figure), caption)


def _dressed(subject: Subject, setting: Setting, size: Size, staged: Staged, caption: str) -> Staged:
    """The picture with its caption, which says that it is drawn."""
    words = Text(
        setting.width / 2,
        setting.height - 1.2 * _letter(setting),
        f"{caption}; {TO_SCALE}",
        _letter(setting),
        anchor="middle",
        paint=Paint(setting.ground.ink),
    )
    return Staged(
        rope=staged.rope,
        entries=subject.pattern.palette.entries,
        camera=staged.camera,
        under=staged.under,
        over=Drawing(setting.width, setting.height, (words,), caption),
        shadowed=False,
        resting=True,
    )


def _letter(setting: Setting) -> float:
    return 0.024 * min(setting.width, 1.2 * setting.height)


def _beads_of(size: Size, mm: float) -> int:
    """The beads of so much rope, at most all of it."""
    return max(2, min(size.beads, int(mm / size.rope.bead_mm)))


def _as_long_as(path: Array, long: float) -> Array:
    """The path stretched by a hair to that length."""
    return path * (long / _length(path))


def _length(path: Array) -> float:
    return float(np.linalg.norm(np.diff(path, axis=0), axis=1).sum())


def _seen(key: str, where: str, subject: Subject) -> str:
    size = subject.size(SIZES[key].question)
    asked = asked_in_words(size.question, subject.units)
    measure = SIZES[key].about if key == BANGLE else asked
    return f"A {rope_in_words(subject)}, worn {where}: {SIZES[key].name}, {measure}. D{TO_SCALE[1:]}."


def _worn(key: str) -> Scene:
    name = SIZES[key].name
    return Scene(
        key=f"worn-{key}",
        name=f"{name}, worn",
        words=f"A necklace of the length called {name.lower()} on a drawn neck and shoulders, to scale.",
        stage=partial(_necklace, key),
        seen=partial(_seen, key, "at the neck of a drawn figure"),
    )


WORN = (
    *(_worn(key) for key in NECKLACES),
    Scene(
        key="worn-wrist",
        name="Bracelet, worn",
        words="A bracelet M on a drawn wrist, to scale.",
        stage=_bracelet,
        seen=partial(_seen, BRACELET, "on a drawn wrist"),
    ),
    Scene(
        key="worn-hand",
        name="Bangle, worn",
        words="A bangle of size 2-8, slipped over a drawn hand, to scale.",
        stage=_bangle,
        seen=partial(_seen, BANGLE, "over a drawn hand"),
    ),
)
