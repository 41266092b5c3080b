"""The stringing list: runs in stringing order, one list a thread; the last bead worked is strung first."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate, pairwise
from math import inf
from typing import NamedTuple

from engine.counting.kinds import Kind
from engine.counting.sizes import Size
from engine.counting.workshop import Workshop
from engine.errors import PlanError
from engine.pattern.chart import stretches
from engine.pattern.pattern import Pattern
from engine.units import count, metres

PLANS = ("whole", "chart")
Plan = str | float | tuple[int, ...]
PLANS_IN_WORDS = "whole, chart or metres such as 4, or the beads after which a thread is joined: joins 480, 960"


class Run(NamedTuple):
    """Consecutive beads of one colour: its code and how many."""

    code: str
    beads: int


@dataclass(frozen=True)
class Thread:
    """The worked beads `first` … `last` − 1 on one thread; `runs` stand in stringing order."""

    first: int
    last: int
    strung_mm: float
    runs: tuple[Run, ...]

    @property
    def beads(self) -> int:
        return self.last - self.first


class Repeated(NamedTuple):
    """A list that is strung for the threads of those numbers, counted from one, the first worked first."""

    thread: Thread
    numbers: tuple[int, ...]


@dataclass(frozen=True)
class StringingList:
    """`beads`, `repeat` and `runs` are of one pass of the chart; `threads` stand first worked first."""

    beads: int
    repeat: int
    runs: tuple[Run, ...]
    threads: tuple[Thread, ...]

    @property
    def joins(self) -> int:
        return len(self.threads) - 1

    @cached_property
    def distinct(self) -> tuple[Repeated, ...]:
        """The lists that differ, each with the threads it is strung for."""
        numbers_of: dict[tuple[Run, ...], list[int]] = {}
        for number, thread in enumerate(self.threads, 1):
            numbers_of.setdefault(thread.runs, []).append(number)
        return tuple(Repeated(self.threads[numbers[0] - 1], tuple(numbers)) for numbers in numbers_of.values())

    @property
    def strung_mm(self) -> float:
        return sum(thread.strung_mm for thread in self.threads)


def string(size: Size, plan: Plan = "chart") -> StringingList:
    """The list for that size. `plan`: "whole", "chart" (one pass a thread), metres of strung beads at most, or the
    beads after which a thread is joined, counted in working order.

    No thread is longer or heavier than the workshop allows. Raises PlanError where not even one round fits on a thread,
    and for joins that do not rise or do not lie inside the rope.
    """
    pattern, beads = size.pattern, size.worked
    strung_mm = _StrungLength(beads, tuple(kind.length_mm for kind in size.kinds))
    cuts = _cuts(pattern, len(beads), plan, strung_mm, limit_mm(size.kinds, size.workshop))
    codes = pattern.palette.codes
    runs_of = {pattern.chart: runs(pattern.chart, codes)}
    threads = []
    for first, last in pairwise(cuts):
        stretch = beads[first:last]
        if stretch not in runs_of:
            runs_of[stretch] = runs(stretch, codes)
        threads.append(Thread(first, last, strung_mm.between(first, last), runs_of[stretch]))
    return StringingList(len(pattern.chart), pattern.repeat, runs_of[pattern.chart], tuple(threads))


def limit_mm(kinds: Sequence[Kind], workshop: Workshop) -> float:
    """The most strung beads that the workshop allows on a thread, in mm, as if all were of the heaviest kind."""
    longest = workshop.longest_mm or inf
    heaviest = max(1 / (kind.per_gram * kind.length_mm) for kind in kinds)
    return min(longest, workshop.heaviest_g / heaviest) if workshop.heaviest_g else longest


def runs(beads: bytes, codes: Sequence[str]) -> tuple[Run, ...]:
    """The runs of beads given in working order, as they are strung."""
    known = _KnownRuns(codes)
    return tuple(known[stretch] for stretch in stretches(beads[::-1]))


class _KnownRuns(dict[bytes, Run]):
    """The run of a stretch, made once."""

    def __init__(self, codes: Sequence[str]) -> None:
        self.codes = codes

    def __missing__(self, stretch: bytes) -> Run:
        run = self[stretch] = Run(self.codes[stretch[0]], len(stretch))
        return run


class _StrungLength:
    """Length of strung beads between two places of the worked rope, in mm."""

    def __init__(self, beads: bytes, lengths: Sequence[float]) -> None:
        self.even = lengths[0] if len(set(lengths)) == 1 else None
        self.upto = () if self.even else (0.0, *accumulate(lengths[bead] for bead in beads))

    def between(self, first: int, last: int) -> float:
        return (last - first) * self.even if self.even else self.upto[last] - self.upto[first]


def _cuts(pattern: Pattern, total: int, plan: Plan, strung_mm: _StrungLength, limit_mm: float) -> tuple[int, ...]:
    """Places where the worked rope is cut, from 0 to `total`; no thread is longer than the limit."""
    if isinstance(plan, tuple):
        return tuple(_limited((*_checked(plan, total), total), pattern.around, strung_mm, limit_mm))
    if plan == "chart":
        return tuple(_limited(_pass_ends(pattern, total), pattern.around, strung_mm, limit_mm))
    if plan == "whole":
        return _at_most(pattern, total, limit_mm, strung_mm)
    if isinstance(plan, str):
        raise PlanError(f"“{plan}” is not a plan for threads; expected {PLANS_IN_WORDS}.", "threads")
    return _at_most(pattern, total, min(plan * 1000, limit_mm), strung_mm)


def _checked(joins: tuple[int, ...], total: int) -> tuple[int, ...]:
    """Those joins, which rise and lie inside the rope. Raises PlanError."""
    for before, join in pairwise((0, *joins)):
        if join >= total:
            raise PlanError(
                f"A join after bead {count(join)} is not inside this rope of {count(total)} beads.", "threads"
            )
        if join <= before:
            raise PlanError(
                f"The join after bead {count(join)} cannot follow the one after bead {count(before)}; "
                "joins rise and each stands once."
                if before
                else "A join comes after bead 1 or later.",
                "threads",
            )
    return joins


def _at_most(pattern: Pattern, total: int, most_mm: float, strung_mm: _StrungLength) -> tuple[int, ...]:
    """Cuts so that no thread is longer: after whole passes where one fits, else after whole rounds."""
    if strung_mm.between(0, total) <= most_mm:
        return 0, total
    begin, ends = len(pattern.start), _pass_ends(pattern, total)
    if strung_mm.between(begin, ends[0]) > most_mm:
        ends = ()
    return 0, *_by_length((begin, *ends), pattern.around, total, most_mm, strung_mm)


def _limited(ends: Sequence[int], around: int, strung_mm: _StrungLength, limit_mm: float) -> Iterator[int]:
    """0 and those ends of threads, with further ones after whole rounds where a thread would be over the limit."""
    at = 0
    yield at
    for end in ends:
        yield from _by_length((), around, end, limit_mm, strung_mm, at)
        at = end


def _pass_ends(pattern: Pattern, total: int) -> tuple[int, ...]:
    """Where passes end, `total` last; the end goes with the pass or part of a pass before it."""
    start, chart = len(pattern.start), len(pattern.chart)
    last = total - len(pattern.end)
    return (*range(start + chart, last, chart), total)


def _by_length(
    ends: Sequence[int], around: int, total: int, most_mm: float, strung_mm: _StrungLength, at: int = 0
) -> Iterator[int]:
    """Cuts so that each thread reaches the last of the `ends` that fits, else holds the most whole rounds."""
    while at < total:
        if strung_mm.between(at, total) <= most_mm:
            at = total
        else:
            at = _last_fitting(at, ends, most_mm, strung_mm) or _last_fitting(
                at, range(at + around, total, around), most_mm, strung_mm
            )
        if not at:
            raise PlanError(f"Not even one round fits on {metres(most_mm)} of strung beads; allow more.", "threads")
        yield at


def _last_fitting(at: int, places: Sequence[int], most_mm: float, strung_mm: _StrungLength) -> int:
    """The last of those places up to which the beads from `at` fit, or nought."""
    low = bisect_right(places, at)
    fitting = bisect_right(places, most_mm, lo=low, key=lambda place: strung_mm.between(at, place))
    return places[fitting - 1] if fitting > low else 0
