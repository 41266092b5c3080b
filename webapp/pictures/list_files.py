"""A list in a file, PDF or plain text, as text to be looked at."""

from __future__ import annotations

import re

from engine.booklet.proof.strung_text import strung_text
from engine.errors import EngineError, shortened
from engine.numbers import whole_number
from engine.pattern.notation import LONGEST_TEXT
from webapp.pictures.pdf_pages import BEGINS, MOST_PAGES, page_texts

_PAGES = re.compile(r"\s*([0-9]+)\s*(?:(?:-|–|to)\s*([0-9]+)\s*)?")
UTF_16 = (b"\xff\xfe", b"\xfe\xff")


def list_text(name: str, data: bytes, pages: str = "") -> str:
    """The text of that file; of a PDF that of its `pages`, such as "3" or "3-5", of all where none are said.

    The lists of a booklet that was printed here become one, as the rope is strung. Raises EngineError.
    """
    name = shortened(name)
    first, last = _first_and_last(pages)
    if not data.startswith(BEGINS):
        return _decoded(name, data)
    texts = page_texts(name, data, first, last)
    if not any(text.strip() for _, text in texts):
        raise EngineError(f"“{name}” has no text there, only pictures; type the list, or read its chart.", "file")
    try:
        strung = strung_text(texts)
    except EngineError as error:
        raise error.at("file") from None
    return strung or "\n".join(text for _, text in texts)


def _first_and_last(pages: str) -> tuple[int, int]:
    if not pages.strip():
        return 1, MOST_PAGES
    told = _PAGES.fullmatch(pages)
    if told is None:
        raise EngineError(f"“{shortened(pages)}” are no pages; write 3, or 3-5.", "pages")
    first, last = (whole_number(number, "a page") for number in (told[1], told[2] or told[1]))
    if not 1 <= first <= last:
        raise EngineError(f"Pages {first} to {last} cannot be; the first is 1, and the last comes after it.", "pages")
    return first, last


def _decoded(name: str, data: bytes) -> str:
    if len(data) > 4 * LONGEST_TEXT:
        raise EngineError(f"“{name}” is too long for a list; at most {LONGEST_TEXT:,} letters are read.", "file")
    try:
        text = data.decode("utf-16" if data.startswith(UTF_16) else "utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("latin-1")
    if "\0" in text:
        raise EngineError(f"“{name}” is neither a PDF nor plain text.", "file")
    if not text.strip():
        raise EngineError(f"“{name}” is empty.", "file")
    return text
