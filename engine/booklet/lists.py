"""Cuts the stringing lists into pages of columns, and the columns into blocks of ten runs."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from engine.booklet.papers import Paper
from engine.counting.stringing import Repeated, Run
from engine.units import count, metres

TEN = 10
MOST_COLUMNS = 6
SIGNS = 11.4  # box to tick, square with the symbol, and the gaps beside them, in mm
TOTAL, FOOT = 5.4, 6.5  # heights of the line after ten entries and of a column's sum, in mm
DIGIT, LETTER, GAP = 2.45, 3.0, 4.6  # widths in print, in mm

_ENTRY = re.compile(r"\d\s*[A-Za-z]{1,2}\b")


@dataclass(frozen=True)
class Block:
    """Ten runs, the last block of a list may have fewer: their lines, their codes, and the beads strung so far."""

    figure: str
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
class PrintedList:
    """One stringing list on its pages; `times` is how often it is strung, `threads` for which threads, in words.

    `columns` fit side by side, each `column` mm wide; together they are `height` mm high.
    """

    number: int
    title: str
    threads: str
    times: int
    beads: int
    entries: int
    strung: str
    codes: frozenset[str]
    columns: int
    column: float
    height: float
    pages: tuple[tuple[Column, ...], ...]

    @property
    def facts(self) -> tuple[tuple[str, str], ...]:
        """What stands at the head of the list."""
        return (("For", self.threads), ("Beads", count(self.beads)), ("Entries", count(self.entries)),
                ("Strung length", self.strung))

    @property
    def end(self) -> str:
        """What stands behind the last entry."""
        beads, entries = ("bead" if self.beads == 1 else "beads"), ("entry" if self.entries == 1 else "entries")
        return f"End of list {self.number}: {count(self.beads)} {beads} in {count(self.entries)} {entries}."


def printed(lists: Sequence[Repeated], threads: int, paper: Paper) -> tuple[PrintedList, ...]:
    """The lists that differ, numbered from one in the order in which they are first worked."""
    return tuple(_printed(number, repeated, threads, paper) for number, repeated in enumerate(lists, 1))


def reads_as_entry(text: str) -> bool:
    """Whether something in the text, or the text behind a number, could be taken for an entry such as "3 A"."""
    return _ENTRY.search(f"1 {text}") is not None


def numbers_in_words(numbers: Sequence[int]) -> str:
    """"1 to 8, 10 and 12" for those numbers, which rise."""
    stretches: list[list[int]] = []
    for number in numbers:
        if stretches and number == stretches[-1][-1] + 1:
            stretches[-1].append(number)
        else:
            stretches.append([number])
    said = [word for stretch in stretches for word in _stretch_in_words(stretch)]
    return said[0] if len(said) == 1 else f"{', '.join(said[:-1])} and {said[-1]}"


def _stretch_in_words(stretch: Sequence[int]) -> Sequence[str]:
    return [f"{stretch[0]} to {stretch[-1]}"] if len(stretch) > 2 else [str(number) for number in stretch]


def _printed(number: int, repeated: Repeated, threads: int, paper: Paper) -> PrintedList:
    thread, numbers = repeated
    wide, letters = max(len(str(run.beads)) for run in thread.runs), max(len(run.code) for run in thread.runs)
    columns = min(MOST_COLUMNS, int(paper.text / (SIGNS + DIGIT * (wide + 1) + LETTER * letters + GAP)))
    blocks = _blocks(number, thread.runs, wide)
    deep = min(paper.blocks, ceil(len(blocks) / columns))
    made = _columns(blocks, deep)
    return PrintedList(
        number, f"List {number}", _said(numbers, threads), len(numbers), thread.beads, len(thread.runs),
        metres(thread.strung_mm), frozenset(run.code for run in thread.runs), columns,
        round(paper.text / columns, 2), round(deep * (TEN * paper.line + TOTAL) + FOOT, 2),
        tuple(made[i : i + columns] for i in range(0, len(made), columns)))


def _said(numbers: Sequence[int], threads: int) -> str:
    if threads == 1:
        return "the whole rope, on one thread"
    if len(numbers) == 1:
        return f"thread {numbers[0]}"
    return f"threads {numbers_in_words(numbers)}: string this list {count(len(numbers))} times"


def _blocks(number: int, runs: Sequence[Run], wide: int) -> tuple[Block, ...]:
    found, so_far = [], 0
    for at in range(0, len(runs), TEN):
        ten = runs[at : at + TEN]
        so_far += sum(run.beads for run in ten)
        lines = "\n".join(f"{run.beads:>{wide}} {run.code}" for run in ten)
        found.append(Block(f"list-{number}-{at // TEN + 1}", lines, tuple(run.code for run in ten), so_far))
    return tuple(found)


def _columns(blocks: Sequence[Block], deep: int) -> tuple[Column, ...]:
    found, before = [], 0
    for number, at in enumerate(range(0, len(blocks), deep), 1):
        part = tuple(blocks[at : at + deep])
        found.append(Column(number, part, part[-1].so_far - before))
        before = part[-1].so_far
    return tuple(found)
