"""A rope that turns once about its axis: the frames of four seconds that begin again where they end."""

from __future__ import annotations

from math import pi

from engine.drawing.beadform import Array
from engine.drawing.photograph import photograph
from engine.drawing.poses import straight
from engine.scenes.scene import Subject, rope_in_words
from engine.scenes.settings import Ground

FRAMES, FRAME_MS = 50, 80
WIDTH, HEIGHT = 800, 300


def turned_frame(subject: Subject, ground: Ground, number: int, width: int = WIDTH) -> Array:
    """Frame `number` of FRAMES, of a rope from side to side: uint8 (height, width, 3 or 4)."""
    height = round(width * HEIGHT / WIDTH)
    turned = 2 * pi * number / FRAMES
    laid, camera = straight(subject.pattern, None, width, height, subject.sizes, turned)
    return photograph(laid, subject.pattern.palette, camera, ground.colour, ground.shadowed)


def turning_seen(subject: Subject) -> str:
    """The alternative text."""
    return f"A {rope_in_words(subject)}, turning slowly about its axis, once in four seconds."
