"""A page of a PDF as a picture."""

from __future__ import annotations

from threading import Lock

import pypdfium2
from PIL import Image

from webapp.pictures.photographs import MOST_BYTES, PhotographError

LARGEST_PX = 2400  # of the longer side
BEGINS = b"%PDF-"
_ONE_AT_A_TIME = Lock()  # PDFium is not safe for threads


def page_picture(name: str, data: bytes, number: int = 1) -> Image.Image:
    """The page of that number, counted from one, as RGB. Raises PhotographError."""
    if len(data) > MOST_BYTES:
        raise PhotographError(f"“{name}” has more than {MOST_BYTES // 1_000_000} MB, the most that is read.", "picture")
    try:
        with _ONE_AT_A_TIME, pypdfium2.PdfDocument(data) as document:
            if not 1 <= number <= len(document):
                raise PhotographError(f"“{name}” has {len(document)} pages, and no page {number}.", "page")
            page = document[number - 1]
            return page.render(scale=LARGEST_PX / max(page.get_size())).to_pil().convert("RGB")
    except (pypdfium2.PdfiumError, ValueError, ZeroDivisionError):
        sentence = f"“{name}” cannot be read as a PDF; one without a password is wanted."
        raise PhotographError(sentence, "picture") from None
