"""The stringing list: runs in stringing order, one list a thread; the last bead worked is strung first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from typing import NamedTuple

from engine.counting.cuts import BALANCED, Plan, StrungLength, cuts_of
from engine.counting.parts import WorkedPart, parts_between, worked_parts
from engine.counting.sizes import Size
from engine.pattern.chart import stretches


class Run(NamedTuple):
    """Consecutive beads of one colour: its code and how many."""

    code: str
    beads: int


@dataclass(frozen=True)
class Thread:
    """The worked beads `first` … `last` − 1 on one thread; `runs` stand in stringing order.

    `parts` are the names of the parts that these beads belong to, in working order; none of a rope of one part.
    """

    first: int
    last: int
    strung_mm: float
    runs: tuple[Run, ...]
    parts: tuple[str, ...] = ()

    @property
    def beads(self) -> int:
        return self.last - self.first


class Repeated(NamedTuple):
    """A list that is strung for the threads of those numbers, counted from one, the first worked first.

    `thread` is the first of them, with the parts of all.
    """

    thread: Thread
    numbers: tuple[int, ...]


@dataclass(frozen=True)
class StringingList:
    """`beads`, `repeat` and `runs` are of one pass of the main part; `threads` stand first worked first.

    `parts` are those of the rope.
    """

    beads: int
    repeat: int
    runs: tuple[Run, ...]
    threads: tuple[Thread, ...]
    parts: tuple[WorkedPart, ...] = ()

    @property
    def joins(self) -> int:
        return len(self.threads) - 1

    @cached_property
    def distinct(self) -> tuple[Repeated, ...]:
        """The lists that differ, each with the threads it is strung for."""
        numbers_of: dict[tuple[Run, ...], list[int]] = {}
        for number, thread in enumerate(self.threads, 1):
            numbers_of.setdefault(thread.runs, []).append(number)
        return tuple(self._repeated(numbers) for numbers in numbers_of.values())

    def _repeated(self, numbers: Sequence[int]) -> Repeated:
        threads = [self.threads[number - 1] for number in numbers]
        parts = dict.fromkeys(name for thread in threads for name in thread.parts)
        return Repeated(replace(threads[0], parts=tuple(parts)), tuple(numbers))

    @property
    def strung_mm(self) -> float:
        return sum(thread.strung_mm for thread in self.threads)


def string(size: Size, plan: Plan = BALANCED) -> StringingList:
    """The list for that size. `plan`: one of PLANS, metres of strung beads at most, or the beads after which a thread
    is joined, counted in working order.

    No thread is longer or heavier than the workshop allows. Raises PlanError where not even one round fits on a thread,
    and for joins that do not rise or do not lie inside the rope.
    """
    pattern, beads, codes = size.pattern, size.worked, size.pattern.palette.codes
    strung_mm = StrungLength(beads, tuple(kind.length_mm for kind in size.kinds))
    chart, parts = pattern.main.beads, worked_parts(size)
    runs_of = {chart: runs(chart, codes)}
    threads = []
    for first, last in pairwise(cuts_of(size, plan, strung_mm)):
        stretch = beads[first:last]
        if stretch not in runs_of:
            runs_of[stretch] = runs(stretch, codes)
        names = tuple(dict.fromkeys(part.name for part in parts_between(parts, first, last)))
        threads.append(
            Thread(first=first, last=last, strung_mm=strung_mm.between(first, last), runs=runs_of[stretch], parts=names)
        )
    return StringingList(
        beads=len(chart), repeat=pattern.repeat, runs=runs_of[chart], threads=tuple(threads), parts=parts
    )


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
