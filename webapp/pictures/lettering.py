"""Letters of the booklet's own fonts as bitmaps for a rope."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType

from PIL import Image, ImageDraw, ImageFont

from engine.errors import EngineError, shortened
from engine.pattern.starts.bitmap import Bitmap
from engine.pattern.starts.lettering import SANS, SERIF
from webapp.paths import TEMPLATES

GRAIN = 8  # pixels a bead
FOLDER = TEMPLATES / "booklet" / "fonts"
FACES: Mapping[str, Path] = MappingProxyType(
    {SANS: FOLDER / "ropewright-prose-700.ttf", SERIF: FOLDER / "ropewright-heading-600.ttf"}
)


def drawn_letters(text: str, face: str, high: int) -> Bitmap:
    """The text in that face, from the top of its highest letter to the foot of its lowest `high` beads.

    Raises EngineError for a letter that the font does not have, and where nothing is left to draw.
    """
    font = _font(face, high)
    missing = next((letter for letter in text if not letter.isspace() and not _has(face, letter)), None)
    if missing:
        raise EngineError(f"The font has no “{shortened(missing)}”; serif has Greek and Cyrillic, too.", "text")
    left, top, right, bottom = font.getbbox(text or " ")
    if right <= left or bottom <= top:
        return Bitmap((bytes(high * GRAIN // 3),) * (high * GRAIN), GRAIN)
    image = Image.new("L", (int(right - left), int(bottom - top)), 0)
    ImageDraw.Draw(image).text((-left, -top), text, fill=255, font=font)
    wide = image.width
    data = image.tobytes()
    return Bitmap(tuple(data[row * wide : (row + 1) * wide] for row in range(image.height)), GRAIN)


@lru_cache(maxsize=64)
def _font(face: str, high: int) -> ImageFont.FreeTypeFont:
    """The font at which capitals are that many beads high."""
    trial = ImageFont.truetype(str(FACES[face]), 1000)
    _, top, _, bottom = trial.getbbox("H")
    return ImageFont.truetype(str(FACES[face]), max(4, round(1000 * high * GRAIN / (bottom - top))))


@lru_cache(maxsize=4096)
def _has(face: str, letter: str) -> bool:
    """Whether the font draws that letter itself and not the box of one that is missing."""
    font = _font(face, 8)
    return bytes(font.getmask(letter)) != bytes(font.getmask("\uffff"))
