"""Letters of the booklet's own fonts as bitmaps for a rope."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
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


def drawn_letters(letters: Sequence[str], face: str, high: int) -> tuple[Bitmap, ...]:
    """Letters in that face, capitals `high` beads high, each as wide as its ink, all from the top of the highest to the
    foot of the lowest.

    Raises EngineError for a letter that the font does not have.
    """
    font = _font(face, high)
    missing = next((letter for letter in letters if not all(_has(face, sign) for sign in letter)), None)
    if missing:
        raise EngineError(f"The font has no “{shortened(missing)}”; serif has Greek and Cyrillic, too.", "text")
    boxes = [font.getbbox(letter) for letter in letters]
    top, bottom = int(min(box[1] for box in boxes)), int(max(box[3] for box in boxes))
    return tuple(
        _drawn(letter, font, (int(box[0]), top, int(box[2]), bottom))
        for letter, box in zip(letters, boxes, strict=True)
    )


def _drawn(letter: str, font: ImageFont.FreeTypeFont, box: tuple[int, int, int, int]) -> Bitmap:
    """The letter in that box, cut at its sides to what is inked."""
    left, top, right, bottom = box
    image = Image.new("L", (max(1, right - left), max(1, bottom - top)), 0)
    ImageDraw.Draw(image).text((-left, -top), letter, fill=255, font=font)
    if inked := image.getbbox():
        image = image.crop((inked[0], 0, inked[2], image.height))
    data = image.tobytes()
    return Bitmap(tuple(data[row * image.width :][: image.width] for row in range(image.height)), GRAIN)


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
