"""A turning rope as a file that moves: WebP, GIF, or a film as MP4."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from importlib.util import find_spec
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np
from PIL import Image

from engine.drawing.beadform import Array
from engine.errors import ChoiceError
from engine.scenes.settings import Ground
from engine.scenes.turning import FRAME_MS

FILM = "mp4"
# what writes films has no wheel for older Macs with Apple's processors
MOVING = {"webp": "image/webp", "gif": "image/gif", **({FILM: "video/mp4"} if find_spec("av") else {})}
CLEAR = ("webp",)  # those that have a clear ground
LARGEST = 6_000_000  # bytes
COLOURS = (128, 64, 32)  # of a GIF, fewer where the file would be too large
WEBP_QUALITY, WEBP_METHOD = 80, 2
FILM_HOW = {"crf": "18", "preset": "medium"}  # of H.264: no difference is seen
PALETTE_FROM = 5  # frames from which the colours of a GIF are taken


def check_moving(form: str, ground: Ground) -> None:
    """Raises ChoiceError for a form that does not move, or that has no clear ground where one is wanted."""
    forms = MOVING if ground.colour else CLEAR
    if form not in forms:
        raise ChoiceError("Format of a turning rope on this background", form, forms, "form")


def moving(frames: Iterable[Array], form: str) -> bytes:
    """The frames as one file; WebP and GIF go on for ever, a GIF in as many colours as leave it under LARGEST bytes."""
    if form == FILM:
        return _film(frames)
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


def _film(frames: Iterable[Array]) -> bytes:
    """H.264 in colours that every player knows, which wants even sides; the same bytes for the same frames."""
    import av

    rate = Fraction(1000, FRAME_MS)
    with TemporaryDirectory(prefix="ropewright-film-") as folder:
        path = Path(folder) / "turning.mp4"
        with av.open(path, "w", options={"movflags": "faststart"}) as film:
            stream = film.add_stream("libx264", rate=rate, options=FILM_HOW)
            stream.pix_fmt, stream.thread_count = "yuv420p", 1
            for number, frame in enumerate(frames):
                even = np.ascontiguousarray(frame[: frame.shape[0] // 2 * 2, : frame.shape[1] // 2 * 2])
                if number == 0:
                    stream.height, stream.width = even.shape[:2]
                film.mux(stream.encode(av.VideoFrame.from_ndarray(even, format="rgb24")))
            film.mux(stream.encode())
        return path.read_bytes()


def _saved(images: list[Image.Image], form: str, **how: int) -> bytes:
    out = BytesIO()
    images[0].save(out, form, save_all=True, append_images=images[1:], duration=FRAME_MS, loop=0, **how)
    return out.getvalue()
