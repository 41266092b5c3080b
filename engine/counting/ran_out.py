"""I ran out of thread, or of a colour: from where to go on, what is still to string, and what to buy."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from math import floor

from engine.counting.answers import Answer
from engine.counting.sizes import Size
from engine.counting.stopped import Remaining, ToBuy, place_after, remaining, to_buy
from engine.counting.stringing import Thread, runs
from engine.counting.thread import TAILS_MM
from engine.errors import SizeError
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


def out_of_thread(answer: Answer, worked: int, left_mm: float = 0.0) -> OutOfThread:
    """What to do when the thread ends after that many beads, with so much thread left on the reel. Raises SizeError."""
    rest_of_all = remaining(answer.size, worked)
    threads, use = answer.stringing.threads, answer.materials.use
    number = next(number for number, thread in enumerate(threads, 1) if worked < thread.last)
    rest = _rest(answer.size, threads[number - 1], worked)
    all_mm = use.of(rest_of_all.beads, len(threads) - number + 1)
    works = max(0, floor((left_mm - TAILS_MM) / use.per_bead_mm))
    return OutOfThread(
        number=number,
        remaining=rest_of_all,
        rest=rest,
        joins=_joined(answer, worked),
        rest_mm=use.of(rest.beads, 1),
        all_mm=all_mm,
        left_mm=left_mm,
        works=min(works, rest_of_all.beads),
        buy_mm=max(0.0, all_mm - left_mm),
    )


def _joined(answer: Answer, after: int) -> tuple[int, ...]:
    """Where the threads of that answer are joined, with a join after that bead."""
    return tuple(sorted({*(thread.first for thread in answer.stringing.threads), after} - {0}))


def _rest(size: Size, thread: Thread, worked: int) -> Thread:
    beads = size.worked[worked : thread.last]
    strung_mm = sum(size.kinds[bead].length_mm for bead in beads)
    return Thread(worked, thread.last, strung_mm, runs(beads, size.pattern.palette.codes))


def out_of_colour(
    answer: Answer,
    code: str,
    had: int | None = None,
    worked: int | None = None,
    left: Mapping[str, int] | None = None,
) -> OutOfColour:
    """Where that colour ends in working order, when there were `had` beads of it, or when it ended after `worked`.

    `left` are beads in hand by code. Raises SizeError where the colour lasts to the end of the rope.
    """
    beads, palette = answer.size.worked, answer.pattern.palette
    index = palette.index(code)
    if worked is None:
        worked = _where_it_ends(beads, index, had or 0, code)
    elif not 0 <= worked < len(beads):
        raise SizeError(f"Bead {count(worked)} is not inside this rope of {count(len(beads))} beads.", "out_colour")
    missing = beads.find(index, worked)
    if missing < 0:
        raise SizeError(f"No {code} is worked after bead {count(worked)}: what is there is enough.", "out_colour")
    next_round, next_place = place_after(missing, answer.size.around)
    return OutOfColour(
        code=code,
        name=palette[index].name,
        worked=worked,
        had=beads[:worked].count(index),
        next_bead=missing + 1,
        next_round=next_round,
        next_place=next_place,
        joins=_joined(answer, missing),
        short=_short(answer, beads[worked:], {code: 0, **(left or {})}),
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


def _short(answer: Answer, rest: bytes, left: Mapping[str, int]) -> tuple[Short, ...]:
    wanted, size = Counter(rest), answer.size
    return tuple(
        Short(
            wanted[index],
            left[entry.code],
            to_buy(entry, kind, wanted[index] - left[entry.code], answer.materials.spare),
        )
        for index, (entry, kind) in enumerate(zip(size.pattern.palette, size.kinds, strict=True))
        if entry.code in left and wanted[index] > left[entry.code]
    )
