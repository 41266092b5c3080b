"""Holds the drawn chart sheets to the chart, bead by bead, and looks at their symbols."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeVar

from engine.booklet.chapters.charts import Charts, Stretch
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


class _Known(dict[Signature | None, int | None]):
    """Which bead of the palette an outline is the symbol of; None for one that is of no bead."""

    def __init__(self, palette: Palette) -> None:
        super().__init__({None: None})
        self._outlines = [signature(points(symbol.outline)) for symbol in assigned(palette)]

    def __missing__(self, drawn: Signature | None) -> int | None:
        found = [index for index, outline in enumerate(self._outlines) if drawn is not None and alike(drawn, outline)]
        self[drawn] = found[0] if len(found) == 1 else None
        return self[drawn]


def chart_remarks(charts: Charts, palette: Palette, read: ReadBooklet) -> Iterator[Remark]:
    """Sheets that show other beads than the chart, and symbols that cannot be told apart or are hard to see."""
    known = _Known(palette)
    for stretch in charts.stretches:
        for sheet in stretch.sheets:
            page = _page_of(sheet, read)
            if page is None:
                yield Remark(True, f"{stretch.title}, sheet {sheet.number}", f"No page says “{sheet.said}”", AGAIN)
            else:
                yield from _wrong_beads(stretch, sheet, page, known, palette)
    yield from _small_symbols(palette, read, known)


def points(outline: Outline) -> tuple[tuple[float, float], ...]:
    """All points of an outline, those that bend its curves among them; a closed part comes back to where it began."""
    found: list[tuple[float, float]] = []
    begin = (0.0, 0.0)
    for letter, *numbers in outline:
        values = tuple(float(number) for number in numbers)
        found += zip(values[::2], values[1::2], strict=True)
        if letter == "M":
            begin = found[-1]
        elif letter == "Z" and found[-1] != begin:
            found.append(begin)
    return tuple(found)


def _page_of(sheet: Sheet, read: ReadBooklet) -> ReadPage | None:
    said = " ".join(sheet.said.split())
    return next((page for page in read.pages
                 if said in page.flowing and any(not one.of_list for one in page.beads)), None)


def _wrong_beads(stretch: Stretch, sheet: Sheet, page: ReadPage, known: _Known,
                 palette: Palette) -> Iterator[Remark]:
    """The first bead of a sheet that is another one than the chart's."""
    wanted = _in_rows(cells(stretch.pattern, sheet.first, sheet.last, sheet.bead), sheet.bead)
    beads = [one for one in page.beads if not one.of_list]
    drawn = _in_rows(beads, beads[0].width / FILL)
    where = f"{stretch.title}, sheet {sheet.number}, page {page.number}"
    if page.unpaired or len(drawn) != len(wanted):
        yield Remark(True, where, f"The sheet shows {count(len(drawn))} beads with their symbols; the chart has "
                     f"{count(len(wanted))} there.", AGAIN)
        return
    for place, (cell, one) in enumerate(zip(wanted, drawn, strict=True), 1):
        if (shown := known[one.symbol]) != cell.entry:
            has = palette[shown].code if shown is not None else "no symbol of this palette"
            yield Remark(True, where, f"The {count(place)}. bead from the lower left shows {has}; the chart has "
                         f"{palette[cell.entry].code} there.", AGAIN)
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
        yield Remark(False, f"Chart, page {number}",
                     f"Symbols stand in squares of {millimetres(mm)}; under {millimetres(LEAST_MM)} they are hard to "
                     "tell apart.", "Print it on larger paper, or give it as large print beside this.", "booklet")


def _share(symbol: Symbol) -> float:
    """How much of its square a symbol takes, the longer way."""
    found = points(symbol.outline)
    xs, ys = [x for x, _ in found], [y for _, y in found]
    return max(max(xs) - min(xs), max(ys) - min(ys)) / 2
