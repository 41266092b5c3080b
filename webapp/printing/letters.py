"""Which letters the booklet's own fonts have."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from fontTools.ttLib import TTFont

from webapp.paths import TEMPLATES

FONTS = TEMPLATES / "booklet" / "fonts"


def lacking(text: str) -> str:
    """The letters of a text that at least one of our fonts has not, each once."""
    return "".join(letter for letter in dict.fromkeys(text) if letter.isprintable() and ord(letter) not in _covered())


@lru_cache(1)
def _covered() -> frozenset[int]:
    """What all of them have."""
    return frozenset.intersection(*map(_letters, sorted(FONTS.glob("*.ttf"))))


def _letters(path: Path) -> frozenset[int]:
    with TTFont(path, lazy=True) as font:
        return frozenset(font.getBestCmap())
