"""A page of a PDF as a picture, and the text of its pages."""

from __future__ import annotations

from collections.abc import Iterator
from threading import Lock

import pypdfium2
from PIL import Image

from engine.errors import EngineError
from engine.pattern.notation import LONGEST_TEXT
from engine.units import counted
from webapp.pictures.photographs import MOST_BYTES, PhotographError

LARGEST_PX = 2400  # of the longer side
MOST_PAGES = 1000  # whose text is read
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


def page_texts(name: str, data: bytes, first: int = 1, last: int = MOST_PAGES) -> tuple[tuple[int, str], ...]:
    """Number and text of those pages, counted from one, in the order in which it was written.

    Raises EngineError where the file is too large, locked or broken, or has no such page.
    """
    if len(data) > MOST_BYTES:
        raise EngineError(f"“{name}” has more than {MOST_BYTES // 1_000_000} MB, the most that is read.", "file")
    try:
        with _ONE_AT_A_TIME, pypdfium2.PdfDocument(data) as document:
            if first > len(document):
                raise EngineError(f"“{name}” has {counted(len(document), 'page')}, and no page {first}.", "pages")
            return tuple(_texts(name, document, first, min(last, len(document), first + MOST_PAGES - 1)))
    except pypdfium2.PdfiumError as error:
        locked = getattr(error, "err_code", None) == pypdfium2.raw.FPDF_ERR_PASSWORD
        trouble = "is locked with a password; one without is wanted" if locked else "cannot be read as a PDF"
        raise EngineError(f"“{name}” {trouble}.", "file") from None


def _texts(name: str, document: pypdfium2.PdfDocument, first: int, last: int) -> Iterator[tuple[int, str]]:
    letters = 0
    for number in range(first, last + 1):
        written = document[number - 1].get_textpage()
        letters += written.count_chars()
        if letters > LONGEST_TEXT:
            raise EngineError(
                f"“{name}” has more than {LONGEST_TEXT:,} letters; say on which pages the list is.", "pages"
            )
        yield number, written.get_text_range().replace("\r\n", "\n")
