"""The stringing lists as they are printed: heads, pages, groups that are strung again and again, and sums."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import NamedTuple

from engine.booklet.columns import TEN, ListPage, Room, Shape
from engine.booklet.measures import Measures
from engine.booklet.papers import Paper
from engine.counting.groups import MOST_IN_GROUP, Grouped, group_known, group_passes, group_runs
from engine.counting.stringing import Repeated, Run, StringingList, Thread
from engine.units import count, counted, grams, numbers_in_words

TITLE_MM = 56.0  # title and introduction in large print
MOST_NAMED = 3  # lists whose threads are told in a sentence
MOST_NAMED_PARTS = 3  # at the head of a list
SIGNS = 11.4  # box to tick, square with the symbol, and the gaps beside them, in mm
DIGIT, LETTER, GAP = 2.45, 3.0, 4.6  # widths in print, in mm
SLACK = 0.1  # that columns side by side leave free, in mm

_ENTRY = re.compile(r"\d\s*[A-Za-z]{1,2}\b")


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

    A short group has no boxes of its own runs; one as long as a time through the chart is printed as a list is. One
    that stands in an earlier list has no pages: `elsewhere` names it, and `of` is the number of that list.
    """

    times: int
    pages: tuple[ListPage, ...]
    tens: tuple[Tens, ...]
    of: int = 0
    elsewhere: str = ""

    @property
    def head(self) -> str:
        """What stands over its pages."""
        mark = ", with another mark in its boxes each time" if self.pages and self.pages[0].ticked else ""
        return f"String this group {count(self.times)} times{mark}:"

    @property
    def often(self) -> str:
        """How often one is strung that stands elsewhere."""
        return "once" if self.times == 1 else f"{count(self.times)} times"


@dataclass(frozen=True)
class PrintedList:
    """One stringing list on its pages; `times` is how often it is strung, `threads` for which threads, in words.

    Columns are `column` mm wide; `parts` are those of the rope that it belongs to, in words. A list that repeats has
    its `group` behind its `pages`, and `after` it what is left.
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
    parts: str = ""

    @property
    def all_pages(self) -> tuple[ListPage, ...]:
        """Every part of it that has columns, in reading order."""
        return (*self.pages, *(self.group.pages if self.group else ()), *self.after)

    @property
    def facts(self) -> tuple[tuple[str, str], ...]:
        """What stands at the head of the list."""
        return (
            ("For", f"{self.threads} ({self.parts})" if self.parts else self.threads),
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
    made: list[PrintedList] = []
    known: tuple[_Known, ...] = ()
    room = Room(paper, paper.page - TITLE_MM if paper.large else paper.page)
    for number, repeated in enumerate(lists, 1):
        grouped, of = _shortest_grouping(tuple(repeated.thread.runs), known)
        if number > 1:
            room.make_room(paper.head + _least(grouped, paper))
        if number > 1 or paper.large:
            first = room.blocks(paper.head + (paper.group_head if grouped.group and not grouped.before else 0.0))
        else:
            first = max(1, paper.first - noted)
        cut = _cut(number, repeated, grouped, of, paper, room, first)
        made.append(_printed(number, repeated, threads, cut, paper, bead_grams, measures))
        known += _to_know(number, repeated.thread, cut)
    return tuple(made)


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
    clauses = []
    for number, (_, threads) in enumerate(stringing.distinct, 1):
        some = f"threads {numbers_in_words(threads)} take" if len(threads) > 1 else f"thread {threads[0]} takes"
        clauses.append(f"{some} list {number}")
    return ", ".join(clauses)


class _Known(NamedTuple):
    """Runs of a list that a later one may send back to: the list's number, and how they are called."""

    of: int
    name: str
    runs: tuple[Run, ...]


class _Cut(NamedTuple):
    """A list in its parts, and how wide its columns are."""

    pages: tuple[ListPage, ...]
    group: PrintedGroup | None
    after: tuple[ListPage, ...]
    column: float


def _shortest_grouping(runs: tuple[Run, ...], known: Sequence[_Known]) -> tuple[Grouped, _Known | None]:
    """The list in the way that has the fewest entries: run by run, as groups of its own, or by one of another list."""
    ways: list[tuple[Grouped, _Known | None]] = [(Grouped(runs, (), 0, ()), None)]
    if own := group_runs(runs) or group_passes(runs):
        ways = [(own, None)]
    ways += [(grouped, one) for one in known if (grouped := group_known(runs, one.runs))]
    return min(ways, key=lambda way: way[0].entries - (len(way[0].group) if way[1] else 0))


def _to_know(number: int, thread: Thread, cut: _Cut) -> tuple[_Known, ...]:
    """What a later list may send back to: a group with boxes of its own, or the list where it is told run by run."""
    if cut.group is None:
        return (_Known(number, f"all of list {number}", tuple(thread.runs)),)
    if cut.group.of or not cut.group.pages[0].ticked:
        return ()
    first = sum(len(block.codes) for page in cut.pages for column in page.columns for block in column.blocks)
    many = sum(len(block.codes) for page in cut.group.pages for column in page.columns for block in column.blocks)
    return (_Known(number, f"the group of list {number}", tuple(thread.runs[first : first + many])),)


def _least(grouped: Grouped, paper: Paper) -> float:
    """The least of a list that stands under its head, in mm; in large print the head may stand alone."""
    if paper.large:
        return 0.0
    if not grouped.before and grouped.group:
        return paper.line * min(TEN, len(grouped.group))
    return paper.line * min(TEN, len(grouped.before)) + paper.total + paper.foot


def _cut(
    number: int, repeated: Repeated, grouped: Grouped, of: _Known | None, paper: Paper, room: Room, first: int
) -> _Cut:
    runs = repeated.thread.runs
    wide, letters = max(len(str(run.beads)) for run in runs), max(len(run.code) for run in runs)
    columns = min(paper.columns, int(paper.text / (SIGNS + DIGIT * (wide + 1) + LETTER * letters + GAP)))
    shape = Shape(f"list-{number}", paper, columns, wide)
    column = floor((paper.text - SLACK) / columns * 100) / 100
    alone = number == 1 and not paper.large  # under the title, where a column holds `first` blocks and no more
    head = paper.page - first * (TEN * paper.line + paper.total) - paper.foot if alone else paper.head
    pages = shape.pages(grouped.before, first)
    room.put(head, pages)
    if not grouped.times:
        room.take(paper.end)
        return _Cut(pages, None, (), column)
    group = _group(shape, grouped, of, room, pages, first, head)
    made = (*pages, *group.pages)
    strung = grouped.before_beads + grouped.times * grouped.group_beads
    after = shape.pages(grouped.after, room.blocks(paper.group_head), made, strung)
    room.put(paper.group_head, after)
    room.take(paper.end)
    return _Cut(pages, group, after, column)


def _group(
    shape: Shape, grouped: Grouped, of: _Known | None, room: Room, before: Sequence[ListPage], first: int, head: float
) -> PrintedGroup:
    if before:
        first, head = room.blocks(shape.paper.group_head), shape.paper.group_head
    if of:
        made: tuple[ListPage, ...] = ()
    elif len(grouped.group) > MOST_IN_GROUP:
        made = shape.pages(grouped.group, first, before, grouped.before_beads)
    else:
        made = (shape.short_group(grouped.group),)
    room.put(head, made)
    rows, at = [], 0
    for times, so_far in grouped.totals:
        rows.append(Tens(times - at, times, so_far))
        at = times
    for _ in range(ceil(len(rows) / shape.paper.tens)):
        room.take(shape.paper.ten)
    return PrintedGroup(
        times=grouped.times, pages=made, tens=tuple(rows), of=of.of if of else 0, elsewhere=of.name if of else ""
    )


def _printed(
    number: int,
    repeated: Repeated,
    threads: int,
    cut: _Cut,
    paper: Paper,
    bead_grams: Mapping[str, float],
    measures: Measures,
) -> PrintedList:
    thread, numbers = repeated
    weight = sum(run.beads * bead_grams[run.code] for run in thread.runs)
    return PrintedList(
        number=number,
        title=f"List {number}",
        threads=threads_in_words(numbers, threads),
        times=len(numbers),
        beads=thread.beads,
        entries=len(thread.runs),
        strung=measures.strung(thread.strung_mm),
        weight=grams(weight),
        codes=frozenset(run.code for run in thread.runs),
        column=cut.column,
        pages=cut.pages,
        group=cut.group,
        after=cut.after,
        parts=_parts_in_words(thread.parts),
    )


def _parts_in_words(names: Sequence[str]) -> str:
    """To which parts of a rope a list belongs; a name that reads as an entry would spoil the list, so it is quoted."""
    if len(names) > MOST_NAMED_PARTS:
        return f"{names[0]} to {names[-1]}"
    return ", ".join(f"“{name}”" if reads_as_entry(name) else name for name in names)


def threads_in_words(numbers: Sequence[int], threads: int) -> str:
    """For which of so many threads a list is, and how often it is strung."""
    if threads == 1:
        return "the whole rope, on one thread"
    if len(numbers) == 1:
        return f"thread {numbers[0]}"
    return f"threads {numbers_in_words(numbers)}: string it {count(len(numbers))} times"
