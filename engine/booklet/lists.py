"""Cuts the stringing lists into pages of columns, and the columns into blocks of ten runs."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil, floor

from engine.booklet.measures import Measures
from engine.booklet.papers import Paper
from engine.counting.groups import MOST_IN_GROUP, Grouped, group_passes, group_runs
from engine.counting.stringing import Repeated, Run, StringingList
from engine.units import count, counted, grams, numbers_in_words

TEN = 10
TENS_MM = 6.4  # a row of boxes of a group
MOST_NAMED = 3  # lists whose threads are told in a sentence
SIGNS = 11.4  # box to tick, square with the symbol, and the gaps beside them, in mm
DIGIT, LETTER, GAP = 2.45, 3.0, 4.6  # widths in print, in mm
SLACK = 0.1  # that columns side by side leave free, in mm

_ENTRY = re.compile(r"\d\s*[A-Za-z]{1,2}\b")


@dataclass(frozen=True)
class Block:
    """Ten runs, the last block of a list may have fewer: their lines, their codes, and the beads strung so far."""

    text: str
    codes: tuple[str, ...]
    so_far: int


@dataclass(frozen=True)
class Column:
    """Blocks one below the other, and the sum of their beads."""

    number: int
    blocks: tuple[Block, ...]
    beads: int


@dataclass(frozen=True)
class ListPage:
    """What stands on one page: columns side by side, together `height` mm high; `figure` is the picture behind them.

    `ticked`: every entry has a box.
    """

    columns: tuple[Column, ...]
    height: float
    figure: str
    ticked: bool = True


@dataclass(frozen=True)
class Tens:
    """Boxes to tick for up to ten times a group, the last of them the `times`th, and the beads strung by then."""

    boxes: int
    times: int
    so_far: int

    @property
    def text(self) -> str:
        return f"{counted(self.times, 'time')}: so far {count(self.so_far)}"


@dataclass(frozen=True)
class PrintedGroup:
    """Runs that are strung again and again: on its `pages` once, then `tens` with a box for each time.

    A short group has no boxes of its own runs; one as long as a time through the chart is printed as a list is.
    """

    times: int
    pages: tuple[ListPage, ...]
    tens: tuple[Tens, ...]

    @property
    def head(self) -> str:
        return f"String this group {count(self.times)} times:"


@dataclass(frozen=True)
class PrintedList:
    """One stringing list on its pages; `times` is how often it is strung, `threads` for which threads, in words.

    Columns are `column` mm wide. A list that repeats has its `group` behind its `pages`, and `after` it what is left.
    """

    number: int
    title: str
    threads: str
    times: int
    beads: int
    entries: int
    strung: str
    weight: str
    codes: frozenset[str]
    column: float
    pages: tuple[ListPage, ...]
    group: PrintedGroup | None = None
    after: tuple[ListPage, ...] = ()

    @property
    def all_pages(self) -> tuple[ListPage, ...]:
        """Every part of it that has columns, in reading order."""
        return (*self.pages, *(self.group.pages if self.group else ()), *self.after)

    @property
    def height(self) -> float:
        """Of its columns and boxes one below the other, in mm."""
        rows = ceil(len(self.group.tens) / 2) if self.group else 0
        return sum(page.height for page in self.all_pages) + rows * TENS_MM

    @property
    def facts(self) -> tuple[tuple[str, str], ...]:
        """What stands at the head of the list."""
        return (
            ("For", self.threads),
            ("Beads", count(self.beads)),
            ("Entries", count(self.entries)),
            ("Strung length", self.strung),
            ("Weight", self.weight),
        )

    @property
    def end(self) -> str:
        """What stands behind the last entry."""
        entries = "entry" if self.entries == 1 else "entries"
        return f"End of list {self.number}: {counted(self.beads, 'bead')} in {count(self.entries)} {entries}."

    @property
    def check(self) -> str:
        """How a strung thread is checked by its weight."""
        return f"Strung: about {self.weight}."


def printed(
    lists: Sequence[Repeated],
    threads: int,
    paper: Paper,
    bead_grams: Mapping[str, float],
    measures: Measures,
    noted: bool = False,
) -> tuple[PrintedList, ...]:
    """The lists that differ, numbered from one in the order in which they are first worked.

    `bead_grams` is the weight of a bead by its code; `noted`: a note takes room above the first.
    """
    page = paper._replace(first=max(1, paper.first - 1)) if noted and not paper.large else paper
    return tuple(
        _printed(number, repeated, threads, page if number == 1 else paper, bead_grams, measures)
        for number, repeated in enumerate(lists, 1)
    )


def reads_as_entry(text: str) -> bool:
    """Whether something in the text, or the text behind a number, could be taken for an entry such as "3 A"."""
    return _ENTRY.search(f"1 {text}") is not None


def lists_in_words(stringing: StringingList) -> str:
    """How many threads there are, and from which lists they are strung, in sentences."""
    threads, lists = len(stringing.threads), len(stringing.distinct)
    if threads == 1:
        return "The rope is strung on one thread, from one list."
    if lists > MOST_NAMED:
        return (
            f"The rope is worked on {count(threads)} threads from {count(lists)} lists; {which_list(stringing)}. "
            "Thread 1 is worked first."
        )
    different = "one list" if lists == 1 else f"{count(lists)} different lists"
    return (
        f"The rope is worked on {count(threads)} threads from {different}: {which_list(stringing)}. "
        "Thread 1 is worked first."
    )


def which_list(stringing: StringingList) -> str:
    """Which thread takes which list: "threads 1 to 3 take list 1, thread 4 takes list 2"."""
    if len(stringing.distinct) > MOST_NAMED:
        return "the head of each list says for which threads it is"
    said = []
    for number, (_, threads) in enumerate(stringing.distinct, 1):
        some = f"threads {numbers_in_words(threads)} take" if len(threads) > 1 else f"thread {threads[0]} takes"
        said.append(f"{some} list {number}")
    return ", ".join(said)


def _printed(
    number: int, repeated: Repeated, threads: int, paper: Paper, bead_grams: Mapping[str, float], measures: Measures
) -> PrintedList:
    thread, numbers = repeated
    wide, letters = max(len(str(run.beads)) for run in thread.runs), max(len(run.code) for run in thread.runs)
    columns = min(paper.columns, int(paper.text / (SIGNS + DIGIT * (wide + 1) + LETTER * letters + GAP)))
    weight = sum(run.beads * bead_grams[run.code] for run in thread.runs)
    grouped = _grouped(tuple(thread.runs))
    before = grouped.before if grouped else thread.runs
    pages = _pages(number, _blocks(before, wide), columns, paper)
    group = _group(number, grouped, wide, columns, paper, pages) if grouped else None
    before_rest = (*pages, *(group.pages if group else ()))
    return PrintedList(
        number=number,
        title=f"List {number}",
        threads=_threads_in_words(numbers, threads),
        times=len(numbers),
        beads=thread.beads,
        entries=len(thread.runs),
        strung=measures.strung(thread.strung_mm),
        weight=grams(weight),
        codes=frozenset(run.code for run in thread.runs),
        column=floor((paper.text - SLACK) / columns * 100) / 100,
        pages=pages,
        group=group,
        after=_after(number, grouped, wide, columns, paper, before_rest) if grouped else (),
    )


def _group(
    number: int, grouped: Grouped, wide: int, columns: int, paper: Paper, pages: Sequence[ListPage]
) -> PrintedGroup:
    if len(grouped.group) > MOST_IN_GROUP:
        before = grouped.before_beads
        blocks = _blocks(grouped.group, wide, before)
        made = _pages(number, blocks, columns, paper, len(pages), _last_column(pages) + 1, before)
    else:
        blocks = _blocks(grouped.group, wide)
        side_by_side = _columns(blocks, ceil(len(blocks) / columns), 1, 0)
        height = max(sum(len(block.codes) for block in column.blocks) for column in side_by_side) * paper.line
        made = (ListPage(side_by_side, round(height, 2), f"list-{number}-group", ticked=False),)
    rows, at = [], 0
    for times, so_far in grouped.totals:
        rows.append(Tens(times - at, times, so_far))
        at = times
    return PrintedGroup(grouped.times, made, tuple(rows))


def _after(
    number: int, grouped: Grouped, wide: int, columns: int, paper: Paper, pages: Sequence[ListPage]
) -> tuple[ListPage, ...]:
    """What is left over behind the group; its columns are numbered on."""
    strung = grouped.before_beads + grouped.times * grouped.group_beads
    blocks = _blocks(grouped.after, wide, strung)
    return _pages(number, blocks, columns, paper, len(pages), _last_column(pages) + 1, strung)


def _last_column(pages: Sequence[ListPage]) -> int:
    return max((column.number for page in pages if page.ticked for column in page.columns), default=0)


def _grouped(runs: tuple[Run, ...]) -> Grouped | None:
    """The list told as groups: of few runs, or of all the runs of a time through the chart."""
    return group_runs(runs) or group_passes(runs)


def _threads_in_words(numbers: Sequence[int], threads: int) -> str:
    if threads == 1:
        return "the whole rope, on one thread"
    if len(numbers) == 1:
        return f"thread {numbers[0]}"
    return f"threads {numbers_in_words(numbers)}: string this list {count(len(numbers))} times"


def _blocks(runs: Sequence[Run], wide: int, so_far: int = 0) -> tuple[Block, ...]:
    blocks = []
    for at in range(0, len(runs), TEN):
        ten = runs[at : at + TEN]
        so_far += sum(run.beads for run in ten)
        lines = "\n".join(f"{_pad(run.beads, wide)}{run.beads} {run.code}" for run in ten)
        blocks.append(Block(lines, tuple(run.code for run in ten), so_far))
    return tuple(blocks)


def _pages(
    listed: int,
    blocks: Sequence[Block],
    columns: int,
    paper: Paper,
    made_before: int = 0,
    number: int = 1,
    before: int = 0,
) -> tuple[ListPage, ...]:
    """The first page shares its room with the head of the list; the last one is spread over all columns.

    `made_before` pages stand before these, whose columns are numbered from `number` on after `before` beads.
    """
    pages: list[ListPage] = []
    at = 0
    while at < len(blocks):
        deep = min(paper.blocks if at else paper.first, ceil((len(blocks) - at) / columns))
        here = blocks[at : at + deep * columns]
        made = _columns(here, deep, number, before)
        figure = f"list-{listed}-{made_before + len(pages) + 1}"
        pages.append(ListPage(made, max(_height(column, paper) for column in made), figure))
        at, number, before = at + len(here), number + len(made), here[-1].so_far
    return tuple(pages)


def _columns(blocks: Sequence[Block], deep: int, number: int, before: int) -> tuple[Column, ...]:
    """Columns from `number` on; `before` beads stand in those before."""
    columns: list[Column] = []
    for at in range(0, len(blocks), deep):
        part = tuple(blocks[at : at + deep])
        columns.append(Column(number + len(columns), part, part[-1].so_far - before))
        before = part[-1].so_far
    return tuple(columns)


def _height(column: Column, paper: Paper) -> float:
    """Of a column, in mm."""
    entries = sum(len(block.codes) for block in column.blocks)
    return round(entries * paper.line + len(column.blocks) * paper.total + paper.foot, 2)


def _pad(beads: int, wide: int) -> str:
    """Two spaces for every digit that is missing: in print they are as wide."""
    return "  " * (wide - len(str(beads)))
