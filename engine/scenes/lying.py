"""The rope on a table: close up, coiled, closed to a ring, as a necklace, and in all its colourways."""

from __future__ import annotations

from dataclasses import replace
from math import pi

import numpy as np

from engine.cabinet.colourways import in_colourway
from engine.drawing.camera import Camera, fitted
from engine.drawing.laying import LaidRope
from engine.drawing.poses import closed, draped, filled, points_on_table, straight, thickness
from engine.pattern.palette import Entry
from engine.scenes.scene import Scene, Staged, Subject, in_one_line, rope_in_words
from engine.scenes.settings import Setting

MOST_IN_A_ROW = 6


def _close_up(subject: Subject, setting: Setting) -> Staged:
    """A slight bend from corner to corner, its beads large."""
    pattern, width, height = subject.pattern, setting.width, setting.height
    scale = 0.48 * min(width, 1.1 * height) / max(thickness(pattern), 4.2)
    across, down = width / scale, height / scale
    u = np.linspace(-0.85, 0.85, 900)
    path = points_on_table(across * u, down * (0.52 * u + 0.10 * np.sin(2.2 * pi * u)))
    rope = filled(pattern, path, subject.sizes)
    camera = Camera(width, height, scale, tilt=0.42, nearness=0.32 / down)
    return Staged(rope, pattern.palette.entries, camera)


def _table(subject: Subject, setting: Setting) -> Staged:
    """A loose coil of a turn and a half, its ends free, seen by somebody who sits before it."""
    pattern = subject.pattern
    turn = np.linspace(-0.30 * pi, 2.95 * pi, 1500)
    wide = thickness(pattern)
    out = wide * (1.75 + 0.27 * turn)
    path = points_on_table(1.25 * out * np.cos(turn), out * np.sin(turn))
    rope = filled(pattern, path, subject.sizes)
    reach = float(np.abs(path).max()) + wide
    camera = fitted(rope.centre, setting.width, setting.height, 0.86, 0.72, 0.20 / reach)
    return Staged(rope, pattern.palette.entries, camera)


def _ring(subject: Subject, setting: Setting) -> Staged:
    rope, camera = closed(subject.pattern, None, setting.width, setting.height, subject.sizes)
    return Staged(rope, subject.pattern.palette.entries, camera)


def _necklace(subject: Subject, setting: Setting) -> Staged:
    rope, camera = draped(subject.pattern, None, setting.width, setting.height, subject.sizes)
    return Staged(rope, subject.pattern.palette.entries, camera)


def _colourways(subject: Subject, setting: Setting) -> Staged:
    """The same stretch in every palette, ropes lying one under another."""
    pattern = subject.pattern
    ways = (pattern, *(in_colourway(pattern, way) for way in subject.colourways))[:MOST_IN_A_ROW]
    apart = 1.42 * thickness(pattern)
    scale = setting.height / (apart * len(ways) + 0.25 * thickness(pattern))
    band = round(thickness(pattern) * scale / 0.80)
    ropes, entries = [], list[Entry]()
    for place, way in enumerate(ways):
        laid, _ = straight(way, None, setting.width, band, subject.sizes)
        up = ((len(ways) - 1) / 2 - place) * apart
        ropes.append(_moved(laid, up, len(entries)))
        entries += way.palette.entries
    return Staged(together(ropes), tuple(entries), Camera(setting.width, setting.height, scale))


def _moved(rope: LaidRope, up: float, first: int) -> LaidRope:
    """The rope further up on the table, its beads those that stand from `first` on in a longer palette."""
    lift = np.array([0, up, 0])
    return replace(
        rope, centre=rope.centre + lift, thread=rope.thread + lift, colours=rope.colours.astype(np.int32) + first
    )


def together(ropes: list[LaidRope]) -> LaidRope:
    """Several ropes of one thickness as one."""

    def column(name: str) -> np.ndarray:
        return np.concatenate([getattr(rope, name) for rope in ropes])

    return LaidRope(
        centre=column("centre"),
        out=column("out"),
        hole=column("hole"),
        size=column("size"),
        colours=column("colours"),
        thread=column("thread"),
        room=column("room"),
        radius=ropes[0].radius,
    )


def _way_names(subject: Subject) -> str:
    names = ["its own colours", *(way.name for way in subject.colourways)][:MOST_IN_A_ROW]
    return in_one_line(names)


LYING = (
    Scene(
        key="close-up",
        name="Close-up",
        words="A few rounds from near by, so that bead and finish can be judged.",
        stage=_close_up,
        seen=lambda subject: f"Close-up of a {rope_in_words(subject)}.",
    ),
    Scene(
        key="table",
        name="On a table",
        words="A stretch of rope laid in a loose coil.",
        stage=_table,
        seen=lambda subject: f"A {rope_in_words(subject)}, laid in a loose coil on a table.",
    ),
    Scene(
        key="ring",
        name="Closed to a ring",
        words="A bangle, seen at a slant.",
        stage=_ring,
        seen=lambda subject: f"A {rope_in_words(subject)}, closed to a ring that lies on a table.",
    ),
    Scene(
        key="necklace",
        name="Front of a necklace",
        words="The front of a necklace from above, its ends out of the picture.",
        stage=_necklace,
        seen=lambda subject: f"The front of a necklace: a {rope_in_words(subject)}.",
    ),
    Scene(
        key="colourways",
        name="Colourways in a row",
        words=f"The same stretch in up to {MOST_IN_A_ROW} colourways, one under another.",
        stage=_colourways,
        seen=lambda subject: (
            f"The same bead crochet rope, {subject.pattern.around} around, in several colourways, from top to bottom: "
            f"{_way_names(subject)}."
        ),
        lacks=lambda subject: "" if subject.colourways else "This picture needs a colourway; the pattern has none yet.",
    ),
)
