"""I ran out of thread, or of a colour: from where to go on, what is still to string, and what to buy."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from math import floor

from engine.counting.answers import Answer
from engine.counting.sizes import Workshop, kinds_of
from engine.counting.stopped import Remaining, ToBuy, place_after, remaining, to_buy
from engine.counting.stringing import Thread, runs
from engine.counting.thread import TAILS_MM
from engine.errors import SizeError
from engine.pattern.pattern import Pattern
from engine.units import count


@dataclass(frozen=True)
class OutOfThread:
    """A thread that ended before its beads were worked; `number` counts the threads of the list from one.

    `rest` are its beads that are strung anew, `joins` where the threads are cut then. `rest_mm` is the thread that they
    take, `all_mm` that of everything still to work, tails counted. `works` are the beads that `left_mm` of thread would
    still work, `buy_mm` what is wanting.
    """

    number: int
    remaining: Remaining
    rest: Thread
    joins: tuple[int, ...]
    rest_mm: float
    all_mm: float
    left_mm: float
    works: int
    buy_mm: float


@dataclass(frozen=True)
class Short:
    """A colour of which too few are left: beads still to work, beads left, and what to buy of the difference."""

    wanted: int
    left: int
    buy: ToBuy


@dataclass(frozen=True)
class OutOfColour:
    """A colour that ends before the rope does: after how many beads, of them `had` of this colour.

    `next_bead` is the first one wanting, counted from one, with its round and place; `joins` are where the threads are
    cut when a join is made before it. `short` are this colour and those others of which too few are left, where that
    was said.
    """

    code: str
    name: str
    worked: int
    had: int
    next_bead: int
    next_round: int
    next_place: int
    joins: tuple[int, ...]
    short: tuple[Short, ...]


def place_on_thread(answer: Answer, number: int, beads: int) -> int:
    """Beads worked in all when that many of a thread, counted from one, are worked. Raises SizeError."""
    threads = answer.stringing.threads
    if not 1 <= number <= len(threads):
        raise SizeError(f"There is no thread {count(number)}; this rope has {count(len(threads))}.", "out_thread")
    thread = threads[number - 1]
    if not 0 <= beads <= thread.beads:
        raise SizeError(f"Thread {count(number)} has {count(thread.beads)} beads, not {count(beads)}.", "out_thread")
    return thread.first + beads


def out_of_thread(
    pattern: Pattern, answer: Answer, worked: int, left_mm: float = 0.0, workshop: Workshop | None = None
) -> OutOfThread:
    """What to do when the thread ends after that many beads, with so much thread left on the reel. Raises SizeError."""
    rest_of_all = remaining(pattern, answer.size, worked, workshop)
    threads, use = answer.stringing.threads, answer.materials.use
    number = next(number for number, thread in enumerate(threads, 1) if worked < thread.last)
    rest = _rest(pattern, answer, threads[number - 1], worked, workshop)
    all_mm = use.of(rest_of_all.beads, len(threads) - number + 1)
    works = max(0, floor((left_mm - TAILS_MM) / use.per_bead_mm))
    return OutOfThread(
        number,
        rest_of_all,
        rest,
        _joined(answer, worked),
        use.of(rest.beads, 1),
        all_mm,
        left_mm,
        min(works, rest_of_all.beads),
        max(0.0, all_mm - left_mm),
    )


def _joined(answer: Answer, after: int) -> tuple[int, ...]:
    """Where the threads of that answer are joined, with a join after that bead."""
    return tuple(sorted({*(thread.first for thread in answer.stringing.threads), after} - {0}))


def _rest(pattern: Pattern, answer: Answer, thread: Thread, worked: int, workshop: Workshop | None) -> Thread:
    kinds = kinds_of(pattern, answer.size.question, workshop or Workshop())
    beads = pattern.worked(answer.size.beads)[worked : thread.last]
    return Thread(worked, thread.last, sum(kinds[bead].length_mm for bead in beads), runs(beads, pattern.palette.codes))


def out_of_colour(
    pattern: Pattern,
    answer: Answer,
    code: str,
    had: int | None = None,
    worked: int | None = None,
    left: Mapping[str, int] | None = None,
    workshop: Workshop | None = None,
) -> OutOfColour:
    """Where that colour ends in working order, when there were `had` beads of it, or when it ended after `worked`.

    `left` are beads in hand by code. Raises SizeError where the colour lasts to the end of the rope.
    """
    beads, index = pattern.worked(answer.size.beads), pattern.palette.index(code)
    if worked is None:
        worked = _where_it_ends(beads, index, had or 0, code)
    elif not 0 <= worked < len(beads):
        raise SizeError(f"Bead {count(worked)} is not inside this rope of {count(len(beads))} beads.", "out_colour")
    found = beads.find(index, worked)
    if found < 0:
        raise SizeError(f"No {code} is worked after bead {count(worked)}: what is there is enough.", "out_colour")
    short = _short(pattern, answer, beads[worked:], {**(left or {}), code: (left or {}).get(code, 0)}, workshop)
    return OutOfColour(
        code,
        pattern.palette[index].name,
        worked,
        beads[:worked].count(index),
        found + 1,
        *place_after(found, pattern.around),
        _joined(answer, found),
        short,
    )


def _where_it_ends(beads: bytes, index: int, had: int, code: str) -> int:
    """Beads worked when `had` of a colour are used up: the next bead would be of it."""
    taken = beads.count(index)
    if had >= taken:
        raise SizeError(f"This rope takes {count(taken)} beads of {code}: {count(had)} are enough.", "out_colour")
    at = -1
    for _ in range(had + 1):
        at = beads.find(index, at + 1)
    return at


def _short(
    pattern: Pattern, answer: Answer, rest: bytes, left: Mapping[str, int], workshop: Workshop | None
) -> tuple[Short, ...]:
    kinds = kinds_of(pattern, answer.size.question, workshop or Workshop())
    wanted = Counter(rest)
    return tuple(
        Short(
            wanted[index],
            left[entry.code],
            to_buy(entry, kind, wanted[index] - left[entry.code], answer.materials.spare),
        )
        for index, (entry, kind) in enumerate(zip(pattern.palette, kinds, strict=True))
        if entry.code in left and wanted[index] > left[entry.code]
    )
