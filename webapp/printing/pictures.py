"""Draws the shaded pictures that a booklet asks for."""

from __future__ import annotations

from collections.abc import Iterable

from engine.booklet.chapters.opening import Picture
from engine.drawing.beadform import Array
from engine.drawing.studio import picture, rope_strip
from engine.pattern.pattern import Pattern
from webapp.pictures.images import encoded


def drawn(pattern: Pattern, wanted: Iterable[Picture]) -> dict[str, bytes]:
    """JPEG bytes of every picture by its key."""
    return {one.key: encoded(_seen(pattern, one), "jpeg") for one in wanted}


def _seen(pattern: Pattern, one: Picture) -> Array:
    if one.view == "strip":
        return rope_strip(pattern, one.beads, one.width, one.height, one.background)
    return picture(pattern, one.view, one.beads, one.width, one.height, one.background)
