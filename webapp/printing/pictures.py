"""Draws the shaded pictures that a booklet asks for; their sizes are known before, so pages can be set meanwhile."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import cache, partial
from typing import NamedTuple

import numpy as np

from engine.booklet.chapters.opening import Picture
from engine.drawing.beadform import Array
from engine.drawing.studio import picture, rope_strip
from engine.pattern.pattern import Pattern
from webapp.pictures.images import encoded

Waiting = Callable[[], Mapping[str, bytes]]
Begin = Callable[[Pattern, tuple[Picture, ...]], Waiting]


class Awaited(NamedTuple):
    """A picture of that many px whose JPEG bytes are asked for when the pages stand."""

    width: int
    height: int
    bytes: Callable[[], bytes]


def awaited(wanted: Iterable[Picture], waiting: Waiting) -> dict[str, Awaited]:
    """The pictures by their keys, of which `waiting` gives the bytes when they are drawn."""
    return {one.key: Awaited(one.width, one.height, partial(_one_of, waiting, one.key)) for one in wanted}


def when_asked(pattern: Pattern, wanted: tuple[Picture, ...]) -> Waiting:
    """Draws them in this process, once, when their bytes are asked for."""
    return cache(lambda: drawn(pattern, wanted))


def drawn(pattern: Pattern, wanted: Iterable[Picture]) -> dict[str, bytes]:
    """JPEG bytes of every picture by its key."""
    return {one.key: encoded(_seen(pattern, one), "jpeg") for one in wanted}


def _one_of(waiting: Waiting, key: str) -> bytes:
    return waiting()[key]


def _seen(pattern: Pattern, one: Picture) -> Array:
    if one.worked:
        stretch = pattern.alone(one.worked)
        lying = rope_strip(stretch, one.beads, one.height, one.width, one.background, one.sizes)
        return np.ascontiguousarray(np.rot90(lying))
    if one.view == "strip":
        return rope_strip(pattern, one.beads, one.width, one.height, one.background, one.sizes)
    return picture(pattern, one.view, one.beads, one.width, one.height, one.background, one.sizes)
