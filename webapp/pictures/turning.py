"""A turning rope as a file that moves: WebP or GIF."""

from __future__ import annotations

from collections.abc import Iterable
from io import BytesIO

from PIL import Image

from engine.drawing.beadform import Array
from engine.errors import ChoiceError
from engine.scenes.settings import Ground
from engine.scenes.turning import FRAME_MS

MOVING = {"webp": "image/webp", "gif": "image/gif"}
LARGEST = 6_000_000  # bytes
COLOURS = (128, 64, 32)  # of a GIF, fewer where the file would be too large
WEBP_QUALITY, WEBP_METHOD = 80, 2
PALETTE_FROM = 5  # frames from which the colours of a GIF are taken


def check_moving(form: str, ground: Ground) -> None:
    """Raises ChoiceError for a form that does not move, or that has no clear ground where one is wanted."""
    if form not in MOVING or (form == "gif" and ground.colour is None):
        forms = MOVING if ground.colour else ("webp",)
        raise ChoiceError("Format of a turning rope on this ground", form, forms, "form")


def moving(frames: Iterable[Array], form: str) -> bytes:
    """The frames as one file that goes on for ever; a GIF in as many colours as leave it under LARGEST bytes."""
    images = [Image.fromarray(frame) for frame in frames]
    if form == "webp":
        return _saved(images, "WEBP", quality=WEBP_QUALITY, method=WEBP_METHOD)
    made = b""
    for colours in COLOURS:
        made = _gif(images, colours)
        if len(made) <= LARGEST:
            break
    return made


def _gif(images: list[Image.Image], colours: int) -> bytes:
    some = images[:: max(1, len(images) // PALETTE_FROM)]
    sheet = Image.new("RGB", (images[0].width, images[0].height * len(some)))
    for place, image in enumerate(some):
        sheet.paste(image, (0, place * image.height))
    palette = sheet.quantize(colours, Image.Quantize.MEDIANCUT)
    return _saved([image.quantize(palette=palette, dither=Image.Dither.NONE) for image in images], "GIF")


def _saved(images: list[Image.Image], form: str, **how: int) -> bytes:
    out = BytesIO()
    images[0].save(out, form, save_all=True, append_images=images[1:], duration=FRAME_MS, loop=0, **how)
    return out.getvalue()
