"""A printed booklet as it is read back from its PDF: text, drawn beads with their symbols, fonts; and remarks on it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

Signature = tuple[float, ...]

SLACK = 0.06


class ReadBead(NamedTuple):
    """A drawn bead: its middle from the page's top left, its body and its symbol's outline in mm, and its colour.

    `symbol` tells one outline from another (`signature`), None where a bead has none.
    """

    x: float
    y: float
    width: float
    height: float
    colour: str
    symbol: Signature | None
    symbol_width: float
    symbol_height: float

    @property
    def of_list(self) -> bool:
        """Whether it is a single bead of a list or legend, as wide as high, and none of a chart."""
        return abs(self.width - self.height) < 0.06 * self.width


@dataclass(frozen=True)
class ReadPage:
    """One page: its text, a line a line; its beads in the order in which they are drawn; whether pictures are on it.

    `boxes` to tick are counted; `filled` is how far down text and pictures stand, as a share of the page.
    """

    number: int
    text: str
    beads: tuple[ReadBead, ...] = ()
    pictures: int = 0
    unpaired: bool = False
    boxes: int = 0
    filled: float = 1.0

    @cached_property
    def flowing(self) -> str:
        """The text as one line."""
        return " ".join(self.text.split())


@dataclass(frozen=True)
class ReadBooklet:
    """All pages; `fonts` are (name, whether the file is in the PDF).

    `borrowed` are letters that the booklet's own fonts lack, by the font that has them; `lost` those that no font of
    the computer has, which were printed as question marks.
    """

    pages: tuple[ReadPage, ...]
    fonts: frozenset[tuple[str, bool]] = frozenset()
    title: str = ""
    tagged: bool = True
    borrowed: tuple[tuple[str, str], ...] = ()
    lost: str = ""

    def lines(self) -> Iterator[tuple[int, str]]:
        """Every line with the number of its page."""
        for page in self.pages:
            for line in page.text.split("\n"):
                yield page.number, line.strip()


class Remark(NamedTuple):
    """Something that is not right: where, what, and how to mend it. One that `blocks` would mislead a buyer.

    `at` names the page of the app where it is mended, and the place on it: "edit#palette", "booklet", or empty.
    """

    blocks: bool
    where: str
    what: str
    mend: str
    at: str = ""


def signature(points: tuple[tuple[float, float], ...]) -> Signature:
    """An outline at no size and no place: how much wider than high it is, then its points in a box of 1 by 1."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    left, top, width, height = min(xs), min(ys), max(xs) - min(xs) or 1.0, max(ys) - min(ys) or 1.0
    return (
        round(width / height, 2),
        *(round(value, 2) for x, y in points for value in ((x - left) / width, (y - top) / height)),
    )


def alike(one: Signature, other: Signature) -> bool:
    """Whether both are one outline; numbers in a PDF are rounded."""
    return len(one) == len(other) and all(abs(a - b) < SLACK for a, b in zip(one, other, strict=True))
