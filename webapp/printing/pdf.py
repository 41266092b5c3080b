"""HTML to PDF: tagged, with our own fonts, from our own folder alone; the only place that knows WeasyPrint."""

from __future__ import annotations

import gc
import logging
import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any, NamedTuple
from urllib.parse import urlsplit
from urllib.request import url2pathname

from weasyprint import HTML
from weasyprint.urls import FatalURLFetchingError, URLFetcher, URLFetcherResponse

from engine.errors import EngineError
from webapp.paths import TEMPLATES
from webapp.printing.figures import Figure

FOLDER = TEMPLATES / "booklet"
VARIANT = "pdf/ua-1"
_UNKNOWN_LETTER = re.compile(r"notdef glyph.*\(U\+([0-9A-F]+)\)")
Image = Figure | bytes


class Printed(NamedTuple):
    """A PDF and how many pages it has."""

    pdf: bytes
    pages: int


class NotSet(EngineError):
    """Something of the booklet could not be set as it should be; `letters` are those that no font here has."""

    code = "print"

    def __init__(self, problem: object, letters: str = "") -> None:
        super().__init__(f"The booklet could not be set: {problem}")
        self.letters = letters


def write_pdf(html: str, images: Mapping[str, Image], laying_out: Callable[[], None] = lambda: None,
              writing: Callable[[], None] = lambda: None, variant: str | None = VARIANT) -> Printed:
    """The PDF of that page and its pictures. Raises NotSet where anything is missing or cannot be set.

    `laying_out` and `writing` are called as these steps begin. Without a `variant` the PDF has no tags.
    """
    figures: dict[str, Any] = {key: image for key, image in images.items() if isinstance(image, Figure)}
    files = {key: image for key, image in images.items() if isinstance(image, bytes)}
    heard = _Heard()
    try:
        with _listening(heard), _without_collecting():
            laying_out()
            document = HTML(string=html, base_url=FOLDER.as_uri() + "/", url_fetcher=Local(files)).render(
                cache=figures, pdf_variant=variant)
            writing()
            printed = Printed(document.write_pdf(pdf_variant=variant), len(document.pages))
    except FatalURLFetchingError as error:
        raise NotSet(error) from error
    if heard.messages:
        raise NotSet(heard.messages[0], heard.letters)
    return printed


class Local(URLFetcher):
    """Gives the pictures handed in and the files of the booklet's folder, and refuses everything else."""

    def __init__(self, files: Mapping[str, bytes]) -> None:
        super().__init__(allowed_protocols={"file"}, allow_redirects=False, fail_on_errors=True)
        self._files = files

    def fetch(self, url: str, headers: Mapping[str, str] | None = None) -> Any:
        if url in self._files:
            return URLFetcherResponse(url, self._files[url])
        parts = urlsplit(url)
        path = Path(url2pathname(parts.path)).resolve()
        if parts.scheme != "file" or parts.netloc or not path.is_relative_to(FOLDER):
            raise ValueError(f"outside the booklet: {url}")
        return super().fetch(url, headers)


@contextmanager
def _listening(heard: logging.Handler) -> Iterator[None]:
    logger = logging.getLogger("weasyprint")
    logger.addHandler(heard)
    try:
        yield
    finally:
        logger.removeHandler(heard)


@contextmanager
def _without_collecting() -> Iterator[None]:
    """Boxes are many and live to the end: looking for garbage among them takes a tenth of the time and finds none."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


class _Heard(logging.Handler):
    """Keeps what is said while a booklet is set; anything said is a fault of ours."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    @property
    def letters(self) -> str:
        found = (code for message in self.messages for code in _UNKNOWN_LETTER.findall(message))
        return "".join(chr(int(code, 16)) for code in found)

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(record.getMessage())
