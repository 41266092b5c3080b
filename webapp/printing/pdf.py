"""HTML to PDF: tagged, with our own fonts, from our own folder alone; the only place that knows WeasyPrint."""

from __future__ import annotations

import gc
import logging
import re
import zlib
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple
from urllib.parse import urlsplit
from urllib.request import url2pathname
from xml.etree import ElementTree

from weasyprint import CSS, DEFAULT_OPTIONS, HTML
from weasyprint.images import get_image_from_uri
from weasyprint.text.fonts import FontConfiguration
from weasyprint.urls import FatalURLFetchingError, URLFetcher, URLFetcherResponse

from engine.errors import EngineError
from webapp.paths import TEMPLATES
from webapp.printing.figures import Figure
from webapp.printing.pictures import Awaited

FOLDER = TEMPLATES / "booklet"
BASE = FOLDER.as_uri() + "/"
VARIANT = "pdf/ua-1"
FONTS = FontConfiguration()
COMPRESSION = 6
_UNKNOWN_LETTER = re.compile(r"notdef glyph.*\(U\+([0-9A-F]+)\)")
AnyImage = Figure | Awaited | bytes


class Printed(NamedTuple):
    """A PDF, how many pages it has, and the letters that no font here has, which became question marks."""

    pdf: bytes
    pages: int
    lost: str = ""


class NotSet(EngineError):
    """Something of the booklet could not be set as it should be; `letters` are those that no font here has."""

    code = "print"

    def __init__(self, problem: object, letters: str = "") -> None:
        super().__init__(f"The booklet could not be set: {problem}")
        self.letters = letters


def write_pdf(
    html: str,
    images: Mapping[str, AnyImage],
    laying_out: Callable[[], object] = lambda: None,
    drawing: Callable[[], object] = lambda: None,
    writing: Callable[[], object] = lambda: None,
    variant: str | None = VARIANT,
) -> Printed:
    """The PDF of that page and its pictures. Raises NotSet where anything is missing or cannot be set.

    `laying_out`, `drawing` (if pictures are awaited) and `writing` are called as these steps begin. Without a `variant`
    the PDF has no tags.
    """
    arriving = [_Arriving(key, image) for key, image in images.items() if isinstance(image, Awaited)]
    figures: dict[str, Any] = {key: image for key, image in images.items() if isinstance(image, Figure)}
    figures |= {image.key: image for image in arriving}
    files = {key: image for key, image in images.items() if isinstance(image, bytes)}
    heard = _Heard()
    try:
        with _listening(heard), _without_collecting():
            laying_out()
            page = _Page(html, Local(files))
            document = page.render(FONTS, stylesheets=page.sheets, cache=figures, pdf_variant=variant)
            if arriving:
                drawing()
                for image in arriving:
                    image.arrive()
            writing()
            printed = Printed(document.write_pdf(finisher=_compress, pdf_variant=variant), len(document.pages))
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


class _Page(HTML):
    """HTML read as XML where it is that, in a twentieth of the time, and its style sheets, each read once a process."""

    wrapper_element: Any

    def __init__(self, html: str, fetcher: Local) -> None:
        try:
            root = ElementTree.fromstring(html)
        except ElementTree.ParseError:
            super().__init__(string=html, base_url=BASE, url_fetcher=fetcher)
        else:
            super().__init__(string="", base_url=BASE, url_fetcher=fetcher)
            self.wrapper_element = type(self.wrapper_element).from_html_root(root, content_language=None)
            self.etree_element = self.wrapper_element.etree_element
        self.sheets = [_sheet(name) for name in self._unlinked()]

    def _unlinked(self) -> Iterator[str]:
        """The style sheets that the page named, which it now does no longer."""
        for head in self.etree_element.iter("head"):
            for link in head.findall("link[@rel='stylesheet']"):
                head.remove(link)
                yield link.attrib["href"]


@cache
def _sheet(name: str) -> CSS:
    return CSS(url=BASE + name, font_config=FONTS, url_fetcher=Local({}))


class _Arriving:
    """A picture whose place is set before its pixels are there."""

    def __init__(self, key: str, image: Awaited) -> None:
        self.key, self._image = key, image
        self._raster: Any = None

    def arrive(self) -> None:
        fetcher = Local({self.key: self._image.bytes()})
        self._raster = get_image_from_uri({}, fetcher, DEFAULT_OPTIONS, self.key)

    def get_intrinsic_size(self, resolution: float, font_size: float) -> tuple[float, float, float]:
        width, height = self._image.width, self._image.height
        return width / resolution, height / resolution, width / height

    def draw(self, stream: Any, width: float, height: float, style: object) -> None:
        self._raster.draw(stream, width, height, style)


def _compress(document: object, pdf: Any) -> None:
    """Level 9, which is taken otherwise, takes three times as long to save a thirtieth."""
    for stream in pdf.objects:
        if getattr(stream, "compress", False):
            stream.stream = [zlib.compress(b"\n".join(map(_as_bytes, stream.stream)), COMPRESSION)]
            stream.extra["Filter"], stream.compress = "/FlateDecode", False


def _as_bytes(part: Any) -> bytes:
    """A part of a stream: bytes, text, or an object of the PDF that says its own."""
    if isinstance(part, bytes):
        return part
    return part.encode("ascii") if isinstance(part, str) else bytes(part.data)


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
            # else the first thing made from here on would set off the search that was spared: this makes all boxes old
            gc.freeze()
            gc.unfreeze()
            gc.enable()


class _Heard(logging.Handler):
    """Keeps what is said while a booklet is set; anything said is a fault of ours."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    @property
    def letters(self) -> str:
        codes = (code for message in self.messages for code in _UNKNOWN_LETTER.findall(message))
        return "".join(chr(int(code, 16)) for code in codes)

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(record.getMessage())
