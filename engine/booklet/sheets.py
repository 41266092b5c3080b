"""Cuts the chart into sheets: which beads go on which page, how large, and which rows are shown again."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise
from math import ceil, floor
from typing import NamedTuple

from engine.booklet.papers import Paper
from engine.booklet.words import span
from engine.drawing.charts import ROW, TENTH, extent, round_starts
from engine.errors import PatternError
from engine.pattern.lattice import first_of_row, place, rows
from engine.pattern.pattern import Pattern
from engine.units import count, fixed

EASY_BEAD, EASY_WIDE, EASY_LARGE = 4.2, 2.5, 6.6  # width in mm, in a wide chart, in large print
SIDE_LEAST = 3.4  # narrower beads take the side column's room too
NARROW_NUMBERS, NUMBERS_ALONE = 14.0, 8.0  # beside a wide chart: rows and rounds, or rounds alone
ROWS_LARGE, FIFTH = 18.0, 5  # room for row numbers in large print, where every fifth row has one
NARROW_SIDE, ASIDE = 20.0, 14.0  # the side column beside a wide chart, its pictures
TITLE_LARGE = 24.0  # of the chapter, over the first sheet in large print, in mm
OVERLAP = 2  # rows of the sheet before that are shown again
SAID = 15.0  # what is said above a wide chart, in mm
LEAST_PITCH = 2.5  # mm from row to row for a number to each; closer rows have every second
PAD = 0.8  # round a drawn chart, so that bars at its edge are whole


@dataclass(frozen=True)
class RoundNumber:
    """A label beside the chart, `top` mm below its upper edge."""

    text: str
    top: float


@dataclass(frozen=True)
class Sheet:
    """Beads `first` to before `last` of a stretch on one page; those before `own` stood on the sheet before, too.

    `row` to before `top_row` are its drawn rows without those shown again. Sizes in mm; `pale` is the height of the
    rows shown again; `rows` are the numbers of the rows from the top, a line each, on so many `sides`.
    """

    number: int
    first: int
    own: int
    last: int
    row: int
    top_row: int
    bead: float
    width: float
    height: float
    pale: float
    numbers: tuple[RoundNumber, ...]
    said: str
    rows: str = ""
    sides: int = 0

    @property
    def pitch(self) -> float:
        """From row to row, in mm."""
        return self.bead * ROW

    @property
    def figure(self) -> str:
        return f"sheet-{self.number}"


@dataclass(frozen=True)
class Layout:
    """How large a bead of the chart is printed, whether the chart takes the side column's room, the room for rows.

    `word` stands before the number of a round in the margin: "round ", or nothing where that has no room. On the very
    first sheet a note takes `note` mm of the room.
    """

    bead: float
    wide: bool
    room: float
    word: str = "round "
    numbered: int = 2
    note: float = 0.0
    large: bool = False

    def sheets(self, total: int, first: bool) -> tuple[int, int]:
        """How many sheets so many rows need, and how many rows the first of them holds at most."""
        begin, most = self._most(self.room - self.note if first else self.room), self._most(self.room) - OVERLAP
        if total <= begin:
            return 1, begin
        begin = min(begin, most)
        return 1 + ceil((total - begin) / most), begin

    def _most(self, room: float) -> int:
        return int((room - 2 * PAD) / (self.bead * ROW))


class Overview(NamedTuple):
    """The size of the small picture of all rows, in mm."""

    width: float
    height: float
    rows: int

    def frame(self, sheet: Sheet) -> tuple[float, float]:
        """How far below the upper edge the rows of a sheet begin, and how high they are, in mm."""
        row = self.height / self.rows
        return round((self.rows - sheet.top_row) * row, 2), round((sheet.top_row - sheet.row) * row, 2)


def overview(around: int, total: int, layout: Layout) -> Overview:
    """As large as the side column takes."""
    widest, highest = (ASIDE, 110.0) if layout.wide else (30.0, 110.0)
    bead = min(widest / (around + 1), highest / (total * ROW), 1.7)
    return Overview(round((around + 1) * bead, 2), round(total * ROW * bead, 2), total)


def lay_out(around: int, longest: int, paper: Paper, taken: float = 0.0, note: float = 0.0) -> Layout:
    """The layout for charts of that many rows at most; a legend takes `taken` mm of height, a note `note` mm once.

    Beads are as large as fits; as long as they stay easy to see they are made smaller to save a sheet. Raises
    PatternError where they would be smaller than can be read on that paper.
    """
    room = paper.chart - taken
    bead = floor(100 * min(paper.largest, (paper.main - paper.numbers - 2 * PAD) / (around + 1))) / 100
    if paper.large:
        across = paper.main - paper.numbers - 2 * PAD
        bead, sides = _numbered(across, around, paper, {1: ROWS_LARGE, 0: 0.0})
        layout = Layout(bead=bead, wide=True, room=room, word="", numbered=sides, note=note + TITLE_LARGE, large=True)
        return _fewest(layout, longest, EASY_LARGE)
    if bead < SIDE_LEAST:
        across = paper.text - NARROW_SIDE - 2 * PAD
        bead, sides = _numbered(across, around, paper, {2: NARROW_NUMBERS, 1: NUMBERS_ALONE})
        layout = Layout(bead=bead, wide=True, room=room - SAID, word="", numbered=sides, note=note)
        return _fewest(layout, longest, EASY_WIDE)
    return _fewest(Layout(bead, False, room, note=note), longest, EASY_BEAD)


def _fewest(layout: Layout, longest: int, easy: float) -> Layout:
    """The largest beads, from easy ones up, that need no more sheets than those."""
    bead = layout.bead
    fewest = replace(layout, bead=min(bead, easy)).sheets(longest, True)[0]
    while bead > easy and replace(layout, bead=bead).sheets(longest, True)[0] > fewest:
        bead -= 0.1
    return replace(layout, bead=round(bead, 2))


def _numbered(across: float, around: int, paper: Paper, rooms: dict[int, float]) -> tuple[float, int]:
    """How large beads are, and on how many sides of them rows are numbered: as many as beads that can be read allow."""
    for sides, room in rooms.items():
        bead = floor(100 * min(paper.largest, (across - room) / (around + 1))) / 100
        if bead >= paper.least:
            return bead, sides
    return _readable(bead, around, paper), sides


def _readable(bead: float, around: int, paper: Paper) -> float:
    if bead < paper.least:
        raise PatternError(
            f"{paper.name} is too narrow for a chart of {around} around: its beads would be "
            f"{fixed(bead, 1)} mm wide. Choose A4 or Letter.",
            "paper",
        )
    return bead


def cut(pattern: Pattern, layout: Layout, number: int = 1) -> tuple[Sheet, ...]:
    """The sheets of the pattern's chart, numbered from `number`, as even as may be."""
    total = rows(pattern.around, len(pattern.main.beads))
    sheets, begin = layout.sheets(total, number == 1)
    begin = min(begin, total // sheets)
    cuts = (0, *(begin + (total - begin) * i // max(1, sheets - 1) for i in range(sheets)))
    return tuple(
        _sheet(pattern, layout, number + i, low, high, OVERLAP if i else 0)
        for i, (low, high) in enumerate(pairwise(cuts))
    )


def _sheet(pattern: Pattern, layout: Layout, number: int, low: int, high: int, again: int) -> Sheet:
    around, bead = pattern.around, layout.bead
    first, own = first_of_row(around, low - again), first_of_row(around, low)
    last = min(first_of_row(around, high), len(pattern.main.beads))
    width, height = extent(pattern, first, last, bead)
    numbers = tuple(
        RoundNumber(f"{layout.word}{start.round}", round(PAD + start.y, 2))
        for start in round_starts(pattern, own, last, bead)
        if start.round % TENTH == 0
    )
    return Sheet(
        number=number,
        first=first,
        own=own,
        last=last,
        row=low,
        top_row=place(around, last - 1).row + 1,
        bead=bead,
        width=round(width + 2 * PAD, 2),
        height=round(height + 2 * PAD, 2),
        pale=round(again * bead * ROW + PAD, 2) if again else 0.0,
        numbers=numbers,
        said=_stretch_in_words(pattern, own, last, low),
        rows=_row_numbers(low - again, place(around, last - 1).row + 1, layout) if layout.numbered else "",
        sides=layout.numbered,
    )


def _row_numbers(low: int, high: int, layout: Layout) -> str:
    """The numbers of those rows, the highest first, a line each; not of every row where they would crowd."""
    step = FIFTH if layout.large else 1 if layout.bead * ROW >= LEAST_PITCH else 2
    last = high if step < FIFTH else 0
    return "\n".join(str(row) if row % step == 0 or row == last else "" for row in range(high, low, -1))


def _stretch_in_words(pattern: Pattern, own: int, last: int, low: int) -> str:
    """Which rows, rounds and beads stand on a sheet."""
    around, total = pattern.around, len(pattern.main.beads)
    top = place(around, last - 1).row + 1
    return (
        f"{span('Row', low + 1, top)} of {count(rows(around, total))}, "
        f"{span('round', own // around + 1, (last - 1) // around + 1)}, {span('bead', own + 1, last)}."
    )
