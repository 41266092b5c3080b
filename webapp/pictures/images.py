"""Pictures of the studio as PNG, WebP or JPEG bytes."""

from __future__ import annotations

from io import BytesIO
from typing import Any

from engine.drawing.beadform import Array
from engine.drawing.studio import picture
from engine.errors import ChoiceError
from engine.pattern.pattern import Pattern

HEIGHTS = {"rope": 2 / 3, "ring": 3 / 4, "necklace": 3 / 4}  # of a picture, shares of its width
VIEWS = tuple(HEIGHTS)
MEDIA_TYPES = {"png": "image/png", "webp": "image/webp", "jpeg": "image/jpeg"}

_OPTIONS: dict[str, dict[str, Any]] = {
    "png": {"compress_level": 6},
    "webp": {"quality": 86, "method": 3},
    "jpeg": {"quality": 90, "subsampling": 0},
}


def pattern_png(pattern: Pattern, view: str = "rope", width: int = 1600, sizes: tuple[float, ...] = ()) -> bytes:
    """The picture of that view as PNG, on the studio's table. Raises ChoiceError for a view that is not in VIEWS.

    `sizes` are the diameters of the palette's beads, where they differ.
    """
    return encoded(picture(pattern, view, None, width, height_of(view, width), sizes=sizes))


def height_of(view: str, width: int) -> int:
    """The height in px that suits the view. Raises ChoiceError for a view that is not in VIEWS."""
    if view not in HEIGHTS:
        raise ChoiceError("View", view, VIEWS, "view")
    return max(1, round(HEIGHTS[view] * width))


def check_form(form: str, clear: bool) -> None:
    """Raises ChoiceError for a form that is not in MEDIA_TYPES, or that has no clear ground where one is wanted."""
    forms = tuple(one for one in MEDIA_TYPES if not (clear and one == "jpeg"))
    if form not in forms:
        raise ChoiceError("Format of a picture on a clear background" if clear else "Format", form, forms, "form")


def encoded(seen: Array, form: str = "png") -> bytes:
    """The bytes of a uint8 picture, (height, width, 3), or with a clear ground (height, width, 4), in that form.

    Raises KeyError for a form that is not in MEDIA_TYPES, and ValueError for a clear ground as JPEG, which has none.
    """
    from PIL import Image  # late: most pictures on pages lie there finished

    options = _OPTIONS[form]
    if form == "jpeg" and seen.shape[2] == 4:
        raise ValueError("a JPEG has no clear ground")
    out = BytesIO()
    Image.fromarray(seen).save(out, form.upper(), **options)
    return out.getvalue()
