"""Booklets for tests: small patterns, printed once each, and their text read back."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from io import BytesIO
from random import Random

import pypdfium2
from pypdf import PdfReader

from engine.booklet.choices import Choices, Imprint
from engine.booklet.compose import compose
from engine.counting.questions import Question
from engine.counting.rope import Swatch
from engine.counting.stringing import Run
from engine.counting.workshop import Workshop
from engine.pattern.palette import Entry, Palette
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from tests.printing_here import plain
from webapp.printing.html import Image, page
from webapp.printing.orders import Order, printed
from webapp.printing.pdf import Printed, write_pdf

IMPRINT = Imprint("Lantern Street Beads", "hello@lantern-street.example", "For personal use.")
COLOURS = ("#1d3350", "#f2e8d5", "#b23a30", "#dfa63a", "#2f7f76", "#8a97a3")
NAMES = ("Night water", "Candle", "Buoy red", "Lamp gold", "Sea glass", "Quay stone")
CODES = "ABCDEF"


def palette(beads: int = 4) -> Palette:
    """The first beads of a small harbour."""
    return Palette(tuple(Entry(CODES[i], NAMES[i], COLOURS[i]) for i in range(beads)))


def scattered(around: int, beads: int, colours: int = 4, **words: object) -> Pattern:
    """A chart of runs of one to eight beads, the same every time."""
    chance, found = Random(around * 100_003 + beads), bytearray()
    while len(found) < beads:
        found += bytes([chance.randrange(colours)]) * chance.choice((1, 1, 2, 3, 5, 8))
    return Pattern(
        **{
            "title": "Harbour wall",
            "around": around,
            "palette": palette(colours),
            "chart": bytes(found[:beads]),
            **words,
        }
    )  # type: ignore[arg-type]


def parted(around: int = 12, times: int = 2) -> Pattern:
    """A rope whose middle hangs between two parts that fill, and which ends with a tail."""
    rope, focal = scattered(around, 60).chart, scattered(around, 30 * around).chart
    parts = (Part("Rope", rope, None), Part("Focal", focal, times), Part("Rope", rope, None), Part("Tail", focal[:40]))
    return replace(scattered(around, 1), chart=b"", in_parts=parts)


def measured(around: int, stitch: str, kind: str = "11/0 round") -> Workshop:
    """A workshop with a swatch of that rope."""
    return Workshop(swatches=(Swatch(kind, around, stitch, 60 * around, 100.0, "2026-05-01"),))


@lru_cache(32)
def print_of(pattern: Pattern, choices: Choices) -> Printed:
    """The print of that booklet, with a workshop as it comes and plain pictures."""
    return printed(Order(pattern, choices, Workshop()), begin=plain)


def reader(pdf: bytes) -> PdfReader:
    return PdfReader(BytesIO(pdf))


def doctored(
    pattern: Pattern,
    choices: Choices,
    text: Callable[[str], str] = str,
    images: Callable[[dict[str, Image]], dict[str, Image]] = dict,
) -> bytes:
    """The PDF of that booklet without its guides, with a fault put into its HTML or its images before it is printed."""
    html, shown = _set(pattern, choices)
    return write_pdf(text(html), images(shown)).pdf


@lru_cache(8)
def _set(pattern: Pattern, choices: Choices) -> tuple[str, dict[str, Image]]:
    booklet = compose(pattern, choices)
    html, images = page(booklet, plain(pattern, booklet.pictures)())
    return _without_guides(html), images


def _without_guides(html: str) -> str:
    """Setting them takes half of the time."""
    before, _, rest = html.partition('<section class="chapter joined flowing" id="work"')
    _, sizes, after = rest.partition('<section class="chapter joined flowing" id="sizes"')
    assert sizes
    return re.sub(r'<li><a href="#(work|finish)">[^<]*</a></li>', "", before) + sizes + after


def text_of(pdf: bytes) -> str:
    """All text of the pages, page by page."""
    return "\n".join(texts_of(pdf))


@lru_cache(32)
def texts_of(pdf: bytes) -> tuple[str, ...]:
    """The text of every page."""
    document = pypdfium2.PdfDocument(pdf)
    pages = tuple(page.get_textpage().get_text_range().replace("\r\n", "\n") for page in document)
    document.close()
    return pages


def read_lists(text: str) -> list[tuple[Run, ...]]:
    """Every printed stringing list as a reader finds it: counts followed by codes, from its head to its end."""
    found: list[tuple[Run, ...]] = []
    groups: dict[tuple[str, int], str] = {}
    for number in range(1, text.count("End of list ") + 1):
        begin = re.search(rf"^List {number}$", text, re.MULTILINE)
        assert begin is not None
        body = text[begin.end() : text.index(f"End of list {number}:")]
        before, times, group, after = _told(body, groups)
        groups |= {("the group", number): group, ("all", number): body}
        again = (before, *(group,) * times, after)
        found.append(
            tuple(Run(code, int(beads)) for part in again for beads, code in re.findall(r"(\d+) ([A-Z]{1,2})\b", part))
        )
    return found


def _told(body: str, groups: dict[tuple[str, int], str]) -> tuple[str, int, str, str]:
    """A list as what stands before its group, how often that is strung, the group, and what stands after it."""
    flowing = body.replace("\n", " ")
    head = re.search(r"String this group ([\d,]+) times[^:]*:", flowing)
    elsewhere = re.search(r"String (the group|all) of list (\d+), page \d+, (?:once|([\d,]+) times):", flowing)
    shown = head or elsewhere
    if shown is None:
        return body, 0, "", ""
    group, _, after = re.split(r"((?:[\d,]+ times?: so far [\d,]+\s*)+)", body[shown.end() :])
    if elsewhere:
        return body[: shown.start()], int(elsewhere[3] or 1), groups[elsewhere[1], int(elsewhere[2])], after
    return body[: shown.start()], int(shown[1].replace(",", "")), group, after


def clasp(length_mm: float = 200.0, **more: object) -> Choices:
    """The choices for a piece with a clasp."""
    return Choices(Question(length_mm, "clasp"), **more)  # type: ignore[arg-type]
