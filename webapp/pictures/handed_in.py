"""Pictures that were handed in to begin a pattern with: kept for a day, each under a name of its own."""

from __future__ import annotations

import os
import re
from functools import lru_cache
from io import BytesIO
from pathlib import Path
from secrets import token_hex

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from engine.pattern.colour import decoded
from engine.pattern.photographs.laid import Summed
from webapp.pictures.pdf_pages import BEGINS, page_picture
from webapp.pictures.photographs import PhotographError, on_white, opened_picture, upright

FOLDER = "beginnings"
KEPT_S = 86_400
TOKEN = re.compile(r"[0-9a-f]{32}")
LARGEST_PX, LEAST_PX = 2400, 16
SAMPLED_PX = 1200  # of the longer side: finer than the longest charts ask for
SHOWN_PX = 1000
SEEN_PX = 320  # a side of what is seen round a place
Box = tuple[float, float, float, float]
WHOLE: Box = (0.0, 0.0, 1.0, 1.0)
_LINEAR = decoded(np.arange(256) / 255).astype(np.float32)


def taken(name: str, data: bytes, page: int = 1) -> bytes:
    """PNG of a picture, or of that page of a PDF, upright, at most LARGEST_PX each way. Raises PhotographError."""
    out = BytesIO()
    picture_of(name, data, page).save(out, "PNG", compress_level=1)
    return out.getvalue()


def picture_of(name: str, data: bytes, page: int = 1) -> Image.Image:
    """The same as `taken`, not yet written."""
    return page_picture(name, data, page) if data.startswith(BEGINS) else decoded_picture(name, data)


def decoded_picture(name: str, data: bytes) -> Image.Image:
    """The picture upright, RGB or RGBA, at most LARGEST_PX each way. Raises PhotographError."""
    with opened_picture(name, data, LEAST_PX) as opened:
        opened.draft("RGB", (2 * LARGEST_PX, 2 * LARGEST_PX))
        picture = upright(opened)
    picture.thumbnail((LARGEST_PX, LARGEST_PX), Image.Resampling.LANCZOS)
    return picture


def keep(data: Path, png: bytes, now: float) -> str:
    """Keeps a picture and gives its name; those that lay there for a day go."""
    folder = data / FOLDER
    folder.mkdir(0o700, parents=True, exist_ok=True)
    sweep(data, now)
    token = token_hex(16)
    try:
        with open(os.open(folder / f"{token}.png", os.O_WRONLY | os.O_CREAT, 0o600), "wb") as kept:
            kept.write(png)
    except OSError as error:
        (folder / f"{token}.png").unlink(missing_ok=True)
        raise PhotographError(f"The picture cannot be kept to be looked at: {error.strerror}.", "picture") from None
    return token


def path_of(data: Path, token: str) -> Path:
    """Where that picture lies. Raises PhotographError where it is not kept any more."""
    path = data / FOLDER / f"{token}.png"
    if not TOKEN.fullmatch(token) or not path.is_file():
        raise PhotographError("That picture is not kept any more; hand it in once more.", "picture")
    return path


def sweep(data: Path, now: float) -> None:
    """Lets go of pictures that have lain there for a day."""
    for old in (data / FOLDER).glob("*"):
        if now - old.lstat().st_mtime > KEPT_S:
            old.unlink(missing_ok=True)


@lru_cache(2)
def turned(path: Path, degrees: float = 0.0) -> Image.Image:
    """The kept picture turned clockwise, whole, at most SAMPLED_PX each way; clear beside it."""
    with Image.open(path) as opened:
        return _turned(opened, degrees)


@lru_cache(2)
def summed(path: Path, degrees: float = 0.0, box: Box = WHOLE) -> Summed:
    """A part of the turned picture, ready to be sampled; `box` in shares: left, top, right and bottom edge."""
    return _summed(_cut(turned(path, degrees), box))


def summed_part(picture: Image.Image, degrees: float = 0.0, box: Box = WHOLE) -> Summed:
    """The same of a picture that is not kept."""
    return _summed(_cut(_turned(picture, degrees), box))


def shown(path: Path, degrees: float = 0.0, box: Box = WHOLE, largest_px: int = SHOWN_PX) -> bytes:
    """That part of it as WebP."""
    picture = _cut(turned(path, degrees), box)
    picture.thumbnail((largest_px, largest_px), Image.Resampling.BILINEAR)
    out = BytesIO()
    picture.save(out, "WEBP", quality=80, method=1)
    return out.getvalue()


@lru_cache(2)
def pixels(path: Path) -> NDArray[np.uint8]:
    """The whole picture (height, width, 3) in sRGB, its clear parts white."""
    with Image.open(path) as opened:
        return plain_pixels(opened)


def plain_pixels(picture: Image.Image) -> NDArray[np.uint8]:
    """The same of a picture that is not kept."""
    return np.asarray(on_white(picture.convert("RGBA")))


def shown_whole(path: Path, largest_px: int) -> bytes:
    """The whole picture as WebP."""
    picture = Image.fromarray(pixels(path))
    picture.thumbnail((largest_px, largest_px), Image.Resampling.BOX)
    out = BytesIO()
    picture.save(out, "WEBP", quality=80, method=1)
    return out.getvalue()


def around_place(path: Path, x: float, y: float, reach: float) -> bytes:
    """The square round a place of the picture as WebP; place in shares of it, reach in shares of its longer side."""
    seen = Image.fromarray(pixels(path))
    half = max(4.0, reach * max(seen.size))
    across, down = x * seen.width, y * seen.height
    box = (round(across - half), round(down - half), round(across + half), round(down + half))
    out = BytesIO()
    seen.crop(box).resize((SEEN_PX, SEEN_PX), Image.Resampling.BICUBIC).save(out, "WEBP", quality=86)
    return out.getvalue()


def _cut(picture: Image.Image, box: Box) -> Image.Image:
    """A copy of that part; at least a pixel each way."""
    wide, high = picture.size
    left, top = min(int(box[0] * wide), wide - 1), min(int(box[1] * high), high - 1)
    return picture.crop((left, top, max(left + 1, round(box[2] * wide)), max(top + 1, round(box[3] * high))))


def _turned(picture: Image.Image, degrees: float) -> Image.Image:
    clear = picture.convert("RGBA")
    clear.thumbnail((SAMPLED_PX, SAMPLED_PX), Image.Resampling.BOX)
    return clear.rotate(-degrees, Image.Resampling.BILINEAR if degrees % 90 else Image.Resampling.NEAREST, expand=True)


def _summed(picture: Image.Image) -> Summed:
    coded = np.asarray(picture)
    cover = coded[..., 3:].astype(np.float32) / 255
    return Summed(np.concatenate([_LINEAR[coded[..., :3]] * cover, cover], axis=2))
