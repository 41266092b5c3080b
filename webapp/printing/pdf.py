"""HTML to PDF: tagged, with our own fonts, from our own folder alone; the only place that knows WeasyPrint."""

from __future__ import annotations

import logging
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit
from urllib.request import url2pathname

from weasyprint import HTML
from weasyprint.urls import FatalURLFetchingError, URLFetcher, URLFetcherResponse

from engine.errors import EngineError
from webapp.paths import TEMPLATES
from webapp.printing.figures import Figure

FOLDER = TEMPLATES / "booklet"
VARIANT = "pdf/ua-1"
Image = Figure | bytes


class NotSet(EngineError):
    """Something of the booklet could not be set as it should be."""

    code = "print"


def write_pdf(html: str, images: Mapping[str, Image], laying_out: Callable[[], None] = lambda: None,
              writing: Callable[[], None] = lambda: None) -> bytes:
    """The PDF of that page and its pictures. Raises NotSet where anything is missing or cannot be set.

    `laying_out` and `writing` are called as these steps begin.
    """
    figures: dict[str, Any] = {key: image for key, image in images.items() if isinstance(image, Figure)}
    files = {key: image for key, image in images.items() if isinstance(image, bytes)}
    heard = _Heard()
    logger = logging.getLogger("weasyprint")
    logger.addHandler(heard)
    try:
        laying_out()
        document = HTML(string=html, base_url=FOLDER.as_uri() + "/", url_fetcher=Local(files)).render(
            cache=figures, pdf_variant=VARIANT)
        writing()
        pdf: bytes = document.write_pdf(pdf_variant=VARIANT)
    except FatalURLFetchingError as error:
        raise NotSet(f"The booklet could not be set: {error}") from error
    finally:
        logger.removeHandler(heard)
    if heard.messages:
        raise NotSet(f"The booklet could not be set: {heard.messages[0]}")
    return pdf


class Local(URLFetcher):  # type: ignore[misc]
    """Gives the pictures handed in and the files of the booklet's folder, and refuses everything else."""

    def __init__(self, files: Mapping[str, bytes]) -> None:
        super().__init__(allowed_protocols={"file"}, allow_redirects=False, fail_on_errors=True)
        self._files = files

    def fetch(self, url: str, headers: Mapping[str, str] | None = None) -> Any:
        if url in self._files:
            return URLFetcherResponse(url, self._files[url])
        parts = urlsplit(url)
        if parts.scheme != "file" or parts.netloc or not Path(url2pathname(parts.path)).resolve().is_relative_to(FOLDER):
            raise ValueError(f"outside the booklet: {url}")
        return super().fetch(url, headers)


class _Heard(logging.Handler):
    """Keeps what is said while a booklet is set; anything said is a fault of ours."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(record.getMessage())
