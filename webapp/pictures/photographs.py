"""A photograph as a maker hands it in, to a JPEG that holds the picture and nothing else."""

from __future__ import annotations

import re
import struct
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageFile, ImageOps, UnidentifiedImageError

from engine.errors import EngineError
from engine.units import count

MOST_BYTES, MOST_PIXELS = 20_000_000, 40_000_000
LARGEST_PX = 1600  # of the longer side; 170 mm at 240 dots an inch
LEAST_PX = 200
LARGEST_BEAD_PX, LEAST_BEAD_PX = 960, 16
UNREADABLE = (UnidentifiedImageError, OSError, ValueError, SyntaxError, TypeError, KeyError, IndexError, struct.error)
FORMATS = ("JPEG", "PNG", "WEBP")
WHITE = (255, 255, 255)
END, SCAN, JFIF = 0xD9, 0xDA, 0xE0
TELLING = {*range(0xE1, 0xF0), 0xFE}  # segments of a JPEG that hold words, places or other pictures
AFTER_SCAN = re.compile(rb"\xff[^\x00\xd0-\xd7\xff]")


class PhotographError(EngineError):
    """A file that cannot be printed as a photograph."""

    code = "photograph"


class Shrunk(NamedTuple):
    """JPEG bytes and their size in px."""

    jpeg: bytes
    width: int
    height: int


def shrunk(name: str, data: bytes) -> Shrunk:
    """The photograph upright, at most LARGEST_PX wide and high, without the place and time that cameras write into it.

    Raises PhotographError with one sentence that names the file.
    """
    with opened_picture(name, data) as opened:
        opened.draft("RGB", (2 * LARGEST_PX, 2 * LARGEST_PX))
        return _written(on_white(upright(opened)))


def bead_photograph(name: str, data: bytes) -> Shrunk:
    """A photograph of beads, small: at most LARGEST_BEAD_PX wide and high. Raises PhotographError."""
    with opened_picture(name, data, LEAST_BEAD_PX) as opened:
        opened.draft("RGB", (2 * LARGEST_BEAD_PX, 2 * LARGEST_BEAD_PX))
        return _written(on_white(upright(opened)), LARGEST_BEAD_PX)


def area_of(jpeg: bytes, across: float, down: float, share: float) -> NDArray[np.uint8]:
    """The square (n, n, 3) round a place of a picture that we made; fewer where it reaches over an edge.

    `across` and `down` are shares of width and height, 0 to 1; the square is as wide as `share` of the shorter side.
    """
    with Image.open(BytesIO(jpeg), formats=("JPEG",)) as opened:
        pixels = np.asarray(opened.convert("RGB"))
    height, width = pixels.shape[:2]
    reach = max(1, round(share * min(width, height) / 2))
    x, y = min(int(across * width), width - 1), min(int(down * height), height - 1)
    return pixels[max(0, y - reach) : y + reach + 1, max(0, x - reach) : x + reach + 1]


def cleaned(name: str, data: bytes) -> Shrunk:
    """A photograph as `shrunk` makes it; one that it made already stays byte for byte. Raises PhotographError."""
    if not _plain(data):
        return shrunk(name, data)
    with opened_picture(name, data) as opened:
        if opened.format != "JPEG" or opened.mode != "RGB" or max(opened.size) > LARGEST_PX:
            return shrunk(name, data)
        opened.load()
        return Shrunk(data, *opened.size)


@contextmanager
def opened_picture(name: str, data: bytes, least_px: int = LEAST_PX) -> Iterator[Image.Image]:
    """A picture that may be read, within its limits. Raises PhotographError, also for what goes wrong in the block."""
    if len(data) > MOST_BYTES:
        raise PhotographError(
            f"“{name}” has more than {MOST_BYTES // 1_000_000} MB, the most that is read.", "photograph"
        )
    ImageFile.LOAD_TRUNCATED_IMAGES = False  # WeasyPrint sets it for its whole process as it is imported
    try:
        with warnings.catch_warnings(action="ignore"), Image.open(BytesIO(data), formats=FORMATS) as opened:
            _check(name, *opened.size, least_px)
            yield opened
    except (*UNREADABLE, Image.DecompressionBombError):
        raise PhotographError(
            f"“{name}” cannot be read as a picture; a JPEG, PNG or WebP file is wanted.", "photograph"
        ) from None


def _plain(data: bytes) -> bool:
    """Whether a file is a JPEG of which every byte serves the picture, to the last one."""
    place = 2
    while place + 4 <= len(data) and data[place] == 0xFF and (marker := data[place + 1]) != END:
        length = int.from_bytes(data[place + 2 : place + 4])
        if marker in TELLING or length < 2 or (marker == JFIF and data[place + 4 : place + 9] != b"JFIF\0"):
            return False
        place += 2 + length
        if marker == SCAN:
            after = AFTER_SCAN.search(data, place)
            place = after.start() if after else len(data)
    return data[:2] == b"\xff\xd8" and data[place:] == b"\xff\xd9"


def _check(name: str, width: int, height: int, least_px: int) -> None:
    if width * height > MOST_PIXELS:
        raise PhotographError(
            f"“{name}” has {count(width * height / 1e6)} megapixels; at most {MOST_PIXELS // 1_000_000} are read.",
            "photograph",
        )
    if min(width, height) < least_px:
        reason = "in print that is too small" if least_px == LEAST_PX else "that is too small"
        raise PhotographError(
            f"“{name}” is {width} × {height} pixels; {reason}. At least {least_px} each way are wanted.", "photograph"
        )


def upright(opened: Image.Image) -> Image.Image:
    """The picture as the camera saw it, the first where there are several: RGB, or RGBA with clear parts."""
    try:
        turned = ImageOps.exif_transpose(opened)
    except Exception:  # what cameras write beside a picture may be damaged in any way; the picture itself is not
        turned = opened
    if turned.mode[0] in "IF":  # greys of 16 bits and more, which Pillow would cut off at 255
        turned = Image.fromarray((np.clip(np.asarray(turned), 0, 65535).astype(np.uint16) // 257).astype(np.uint8))
    clear = "A" in turned.getbands() or turned.mode == "P" or "transparency" in turned.info
    return turned.convert("RGBA" if clear else "RGB")


def on_white(picture: Image.Image) -> Image.Image:
    """The picture with its clear parts white."""
    if picture.mode == "RGB":
        return picture
    ground = Image.new("RGB", picture.size, WHITE)
    ground.paste(picture, mask=picture.getchannel("A"))
    return ground


def _written(picture: Image.Image, largest_px: int = LARGEST_PX) -> Shrunk:
    picture.thumbnail((largest_px, largest_px), Image.Resampling.LANCZOS)
    plain, out = Image.frombytes("RGB", picture.size, picture.tobytes()), BytesIO()
    plain.save(out, "JPEG", quality=86, subsampling=0)
    return Shrunk(out.getvalue(), *picture.size)
