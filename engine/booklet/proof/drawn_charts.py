"""Holds the drawn chart sheets to the chart, bead by bead, and looks at their symbols."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby
from typing import NamedTuple, TypeVar

from engine.booklet.chapters.charts import Charts, Stretch
from engine.booklet.chapters.reading import Example
from engine.booklet.proof.printed_lists import AGAIN
from engine.booklet.proof.readback import ReadBead, ReadBooklet, ReadPage, Remark, Signature, alike, signature
from engine.booklet.sheets import Sheet
from engine.drawing.charts import FILL, ROW, Cell, cells
from engine.drawing.shapes import Outline
from engine.drawing.symbols import Symbol, assigned
from engine.pattern.palette import Palette
from engine.units import count, millimetres

LEAST_MM = 2.0  # a symbol's square in print
TOLERANCE_MM = 0.05

Placed = TypeVar("Placed", Cell, ReadBead)


class _Found(NamedTuple):
    """A sheet and the page on which it stands, None where it stands on none."""

    stretch: Stretch
    sheet: Sheet
    page: ReadPage | None

    @property
    def name(self) -> str:
        return f"{self.stretch.title}, sheet {self.sheet.number}"


class _Known(dict[Signature | None, int | None]):
    """Which bead of the palette an outline is the symbol of; None for one that is of no bead."""

    def __init__(self, palette: Palette) -> None:
        super().__init__({None: None})
        self._outlines = [signature(points(symbol.outline)) for symbol in assigned(palette)]

    def __missing__(self, drawn: Signature | None) -> int | None:
        matches = [index for index, outline in enumerate(self._outlines) if drawn is not None and alike(drawn, outline)]
        self[drawn] = matches[0] if len(matches) == 1 else None
        return self[drawn]


def chart_remarks(charts: Charts, example: Example, palette: Palette, read: ReadBooklet) -> Iterator[Remark]:
    """Sheets that show other beads than the chart, and symbols that cannot be told apart or are hard to see.

    The example of the chapter before may stand on the page of the first sheet.
    """
    known = _Known(palette)
    for page, sheets in groupby(_found(charts, read), key=lambda one: one.page):
        if page is None:
            yield from (Remark(True, one.name, f"No page says “{one.sheet.said}”", AGAIN) for one in sheets)
        else:
            yield from _wrong_beads(tuple(sheets), _without(example, page), known, palette)
    yield from _small_symbols(palette, read, known)


def points(outline: Outline) -> tuple[tuple[float, float], ...]:
    """All points of an outline, those that bend its curves among them; a closed part comes back to where it began."""
    corners: list[tuple[float, float]] = []
    begin = (0.0, 0.0)
    for letter, *numbers in outline:
        values = tuple(float(number) for number in numbers)
        corners += zip(values[::2], values[1::2], strict=True)
        if letter == "M":
            begin = corners[-1]
        elif letter == "Z" and corners[-1] != begin:
            corners.append(begin)
    return tuple(corners)


def _found(charts: Charts, read: ReadBooklet) -> Iterator[_Found]:
    """Every sheet and its page; sheets stand in their order, and more than one may share a page."""
    pages = [page for page in read.pages if any(not one.of_list for one in page.beads)]
    at = begin = 0
    for stretch in charts.stretches:
        for sheet in stretch.sheets:
            said = " ".join(sheet.said.split())
            places = ((i, pages[i].flowing.find(said, begin if i == at else 0)) for i in range(at, len(pages)))
            here = next((place for place in places if place[1] >= 0), None)
            if here is not None:
                at, begin = here[0], here[1] + len(said)
            yield _Found(stretch, sheet, pages[at] if here is not None else None)


def _without(example: Example, page: ReadPage) -> ReadPage:
    """The page without the beads of the example, if that stands there: it stands before all sheets."""
    if " ".join(example.caption.split()) not in page.flowing:
        return page
    drawn = [one for one in page.beads if not one.of_list]
    return replace(page, beads=tuple(drawn[len(example.pattern.chart) :]))


def _wrong_beads(sheets: Sequence[_Found], page: ReadPage, known: _Known, palette: Palette) -> Iterator[Remark]:
    """The first bead of every sheet on a page that is another one than the chart's."""
    wanted = [cells(one.stretch.pattern, one.sheet.first, one.sheet.last, one.sheet.bead) for one in sheets]
    drawn = [one for one in page.beads if not one.of_list]
    should = sum(len(beads) for beads in wanted)
    if page.unpaired or len(drawn) != should:
        names = " and ".join(one.name for one in sheets)
        yield Remark(
            True,
            f"{names}, page {page.number}",
            f"{count(len(drawn))} beads are drawn with symbols; the chart has {count(should)} there.",
            AGAIN,
        )
        return
    at = 0
    for one, beads in zip(sheets, wanted, strict=True):
        where = f"{one.name}, page {page.number}"
        yield from _wrong_bead(where, _in_rows(beads, one.sheet.bead), drawn[at : at + len(beads)], known, palette)
        at += len(beads)


def _wrong_bead(
    where: str, wanted: Sequence[Cell], drawn: Sequence[ReadBead], known: _Known, palette: Palette
) -> Iterator[Remark]:
    for place, (cell, one) in enumerate(zip(wanted, _in_rows(drawn, drawn[0].width / FILL), strict=True), 1):
        if (shown := known[one.symbol]) != cell.entry:
            has = palette[shown].code if shown is not None else "no symbol of this palette"
            yield Remark(
                True,
                where,
                f"The {count(place)}. bead from the lower left shows {has}; the chart has "
                f"{palette[cell.entry].code} there.",
                AGAIN,
            )
            return


def _in_rows(beads: Sequence[Placed], bead: float) -> list[Placed]:
    """The beads row by row from the lowest, each from left to right."""
    lowest = max((one.y for one in beads), default=0.0)
    return sorted(beads, key=lambda one: (round((lowest - one.y) / (ROW * bead)), one.x))


def _small_symbols(palette: Palette, read: ReadBooklet, known: _Known) -> Iterator[Remark]:
    squares = [_share(symbol) for symbol in assigned(palette)]
    least: dict[int, float] = {}
    for page in read.pages:
        for one in page.beads:
            index = None if one.of_list else known[one.symbol]
            if index is not None:
                printed = max(one.symbol_width, one.symbol_height) / squares[index]
                least[page.number] = min(printed, least.get(page.number, printed))
    small = {number: mm for number, mm in least.items() if mm < LEAST_MM - TOLERANCE_MM}
    if small:
        number, mm = min(small.items(), key=lambda pair: pair[1])
        yield Remark(
            blocks=False,
            where=f"Chart, page {number}",
            what=f"Symbols stand in squares of {millimetres(mm)}; under {millimetres(LEAST_MM)} they are hard to "
            "tell apart.",
            mend="Print it on larger paper, or give it as large print beside this.",
            at="booklet",
        )


def _share(symbol: Symbol) -> float:
    """How much of its square a symbol takes, the longer way."""
    corners = points(symbol.outline)
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    return max(max(xs) - min(xs), max(ys) - min(ys)) / 2
