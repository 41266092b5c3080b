"""Reads the stringing lists out of the printed text, and holds them to the chart."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import zip_longest
from typing import NamedTuple

from engine.booklet.lists import PrintedList
from engine.booklet.proof.readback import ReadBooklet, Remark
from engine.counting.sizes import Size
from engine.counting.stringing import Run, StringingList, runs
from engine.errors import EngineError
from engine.pattern.notation import MOST_BEADS
from engine.units import count, counted

AGAIN = "Print the booklet again; if it comes out the same, please report it: nothing of yours is at fault."

_ENTRY = re.compile(r"(\d+) ([A-Z]{1,2})")
_SO_FAR = re.compile(r"so far ([\d,]+)")
_GROUP = re.compile(r"String this group ([\d,]+) times(?:, with another mark in its boxes each time)?:")
_ELSEWHERE = re.compile(r"String (the group|all) of list (\d+), page \d+, (?:once|([\d,]+) times):")
_TIMES = re.compile(r"([\d,]+) times?: so far ([\d,]+)")
_COLUMN = re.compile(r"Column (\d+): ([\d,]+)")
_END = re.compile(r"End of list (\d+): ([\d,]+) beads? in ([\d,]+) entr(?:y|ies)\.")
_HEAD = re.compile(r"List (\d+)")
_FOR = re.compile(r"For:? threads? ((?:[0-9]+|, | to | and )+)")
_THREADS = re.compile(r"(\d{1,6})(?: to (\d{1,6}))?")


class ReadSum(NamedTuple):
    """A sum printed after so many entries of a list: so far, after so many times a group, or of a column."""

    sort: str
    entries: int
    beads: int
    page: int


@dataclass(frozen=True)
class ReadList:
    """One list as printed: its runs with the page of each, and the sums among them; `end` is None where none stands.

    `threads` are the numbers of those that take it, none where there is but one.
    """

    number: int
    page: int
    runs: tuple[Run, ...]
    pages: tuple[int, ...]
    sums: tuple[ReadSum, ...]
    end: tuple[int, int] | None
    threads: tuple[int, ...] = ()


def read_lists(read: ReadBooklet) -> tuple[ReadList, ...]:
    """Every list between its head "List 1" and its end."""
    return lists_in(read.lines())


def lists_in(numbered: Iterable[tuple[int, str]]) -> tuple[ReadList, ...]:
    """The same in lines with the numbers of their pages.

    Raises EngineError where a group is said to repeat so often that no list could have as many entries.
    """
    return tuple(_reading(numbered))


def _reading(numbered: Iterable[tuple[int, str]]) -> Iterator[ReadList]:
    open_at: tuple[int, int] | None = None
    threads: tuple[int, ...] = ()
    entries: list[Run] = []
    pages: list[int] = []
    sums: list[ReadSum] = []
    times = begun = many = 0  # of a group: how often, where it begins among the entries, and its entries
    kept: dict[tuple[str, int], list[Run]] = {}  # what a later list may send back to, by its words and its list
    lines = (*numbered, (0, ""), (0, ""))
    for (page, line), *after in zip(lines, lines[1:], lines[2:], strict=False):
        flowing = " ".join((line, *(text for _, text in after)))  # a long line may be broken, and read in pieces
        if head := _HEAD.fullmatch(line):
            open_at, threads, entries, pages, sums, times = (int(head[1]), page), (), [], [], [], 0
        elif open_at is None:
            continue
        elif line.startswith("For") and (takes := _FOR.match(flowing)):
            threads = threads or tuple(_threads_of(takes[1]))
        elif entry := _ENTRY.fullmatch(line):
            entries.append(Run(entry[2], int(entry[1])))
            pages.append(page)
        elif group := _GROUP.match(flowing):
            times, begun = number(group[1]), len(entries)
        elif elsewhere := _ELSEWHERE.match(flowing):
            group_runs, again = kept.get((elsewhere[1], int(elsewhere[2])), []), number(elsewhere[3] or "1")
            begun, many = len(entries), len(group_runs)
            _check_entries(open_at, begun + many * again)
            entries += group_runs * again
            pages += [page] * (many * again)
        elif totals := _TIMES.findall(line):
            if times:  # the group is read once and stands for all its times
                kept["the group", open_at[0]] = entries[begun:]
                _check_entries(open_at, begun + (len(entries) - begun) * times)
                entries += entries[begun:] * (times - 1)
                pages += pages[begun:] * (times - 1)
                many, times = (len(entries) - begun) // times, 0
            sums += (ReadSum("group", begun + number(said) * many, number(total), page) for said, total in totals)
        elif so_far := _SO_FAR.fullmatch(line):
            sums.append(ReadSum("so far", len(entries), number(so_far[1]), page))
        elif column := _COLUMN.fullmatch(line):
            sums.append(ReadSum("column", len(entries), number(column[2]), page))
        elif flowing.startswith("End of list "):
            end = _END.match(flowing)
            kept["all", open_at[0]] = entries
            sums_up = (number(end[2]), number(end[3])) if end else None
            yield ReadList(
                number=open_at[0],
                page=open_at[1],
                runs=tuple(entries),
                pages=tuple(pages),
                sums=tuple(sums),
                end=sums_up,
                threads=threads,
            )
            open_at = None
    if open_at is not None:
        yield ReadList(
            number=open_at[0],
            page=open_at[1],
            runs=tuple(entries),
            pages=tuple(pages),
            sums=tuple(sums),
            end=None,
            threads=threads,
        )


def _threads_of(words: str) -> Iterator[int]:
    """The threads of words such as "1 to 3, 5 and 7", at most as many as a rope can have beads."""
    for first, last in _THREADS.findall(words):
        yield from range(int(first), min(int(last or first), int(first) + MOST_BEADS) + 1)


def _check_entries(head: tuple[int, int], entries: int) -> None:
    if entries > MOST_BEADS:
        raise EngineError(f"List {head[0]} on page {head[1]} has more entries than a rope has beads: {entries:,}.")


def list_remarks(
    size: Size, stringing: StringingList, printed: Sequence[PrintedList], lists: Sequence[ReadList]
) -> Iterator[Remark]:
    """What the printed lists have wrong: a run, a sum, a list that is missing or stands for other threads."""
    if [read.number for read in lists] != [wanted.number for wanted in printed]:
        yield Remark(
            True,
            "Stringing lists",
            f"{counted(len(lists), 'list')} can be read in the PDF where {count(len(printed))} should stand.",
            AGAIN,
        )
        return
    worked, codes = size.worked, size.pattern.palette.codes
    for read, repeated in zip(lists, stringing.distinct, strict=True):
        for thread in (stringing.threads[place - 1] for place in repeated.numbers):
            wanted = runs(worked[thread.first : thread.last], codes)
            if wanted != read.runs:
                yield _first_difference(read, wanted)
                break
        yield from wrong_sums(read)


def _first_difference(read: ReadList, wanted: Sequence[Run]) -> Remark:
    pairs = enumerate(zip_longest(read.runs, wanted), 1)
    place, (has, should) = next((place, pair) for place, pair in pairs if pair[0] != pair[1])
    page = read.pages[min(place, len(read.pages)) - 1] if read.pages else read.page
    return Remark(
        True,
        f"List {read.number}, entry {count(place)}, page {page}",
        f"The page says {_run(has)}; the chart gives {_run(should)}.",
        AGAIN,
    )


def _run(run: Run | None) -> str:
    return f"{run.beads} {run.code}" if run else "no entry"


def wrong_sums(read: ReadList) -> Iterator[Remark]:
    """Running totals, sums of columns and the sum at the end, held to the entries that stand there."""
    upto = [0]
    for run in read.runs:
        upto.append(upto[-1] + run.beads)
    begun = 0
    for told in read.sums:
        right = upto[told.entries] - (upto[begun] if told.sort == "column" else 0)
        if told.sort != "so far":
            begun = told.entries  # columns are summed from here
        if told.beads != right:
            yield Remark(
                True,
                f"List {read.number}, page {told.page}",
                f"A sum says {count(told.beads)}; the entries come to {count(right)}.",
                AGAIN,
            )
    if read.end != (upto[-1], len(read.runs)):
        yield Remark(
            True,
            f"List {read.number}, its end",
            f"The end of the list does not say {counted(upto[-1], 'bead')} in {count(len(read.runs))} entries.",
            AGAIN,
        )


def number(text: str) -> int:
    """A count as it is printed."""
    return int(text.replace(",", ""))
