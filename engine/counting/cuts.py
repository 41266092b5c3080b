"""Where the worked rope is cut into threads: the plans, and the most strung beads that a thread may hold.

Places are counted in beads from the first one worked; cuts rise from 0 to the length of the rope.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate, islice, pairwise
from math import ceil, inf

from engine.counting.kinds import Kind
from engine.counting.sizes import Size
from engine.counting.workshop import Workshop
from engine.errors import PlanError
from engine.pattern.part import only_fill
from engine.pattern.shares import LaidPart
from engine.units import count, plain, whole

BALANCED, WHOLE, CHART = PLANS = ("balanced", "whole", "chart")
Plan = str | float | tuple[int, ...]
PLANS_IN_WORDS = (
    "balanced, whole, chart or metres such as 4, or the beads after which a thread is joined: joins 480, 960"
)
USUAL_LONGEST_MM, USUAL_HEAVIEST_G = 4000.0, 60.0  # a string that is handled with ease (common practice, no source)
QUARTER = 0.25  # of a thread: a rest that is shorter goes with its neighbour
MOST_TRIED = 64  # numbers of threads, or of pieces, that are tried from the fewest on
EXACT_MM = 1e-6  # by which a thread may be longer than it may be, for sums of lengths are not exact


class StrungLength:
    """Length of strung beads between two places of the worked rope, in mm."""

    def __init__(self, beads: bytes, lengths: Sequence[float]) -> None:
        self.shortest = min(lengths)  # of the beads there are, used or not
        self.even = lengths[0] if len(set(lengths)) == 1 else None
        self.upto = () if self.even else (0.0, *accumulate(lengths[bead] for bead in beads))

    def between(self, first: int, last: int) -> float:
        return (last - first) * self.even if self.even else self.upto[last] - self.upto[first]


def cuts_of(size: Size, plan: Plan, strung_mm: StrungLength) -> tuple[int, ...]:
    """The cuts of that rope by that plan. Raises PlanError for a plan that is none or cannot be kept to."""
    cutting = _Cutting(size.laid, size.around, strung_mm, easy_limit_mm(size) if plan == BALANCED else limit_mm(size))
    if isinstance(plan, tuple):
        return cutting.limited((*_checked(plan, size.beads), size.beads))
    if plan == BALANCED:
        return cutting.balanced()
    if plan == CHART:
        return cutting.limited(cutting.pass_ends)
    if plan == WHOLE:
        return cutting.at_most(cutting.limit_mm)
    if isinstance(plan, str):
        raise PlanError(f"“{plan}” is not a plan for threads; expected {PLANS_IN_WORDS}.", "threads")
    return cutting.at_most(min(plan * 1000, cutting.limit_mm))


def limit_mm(size: Size) -> float:
    """The most strung beads that the maker allows on a thread, in mm, as if all were of the heaviest kind used."""
    return _limit_mm(size, size.workshop.longest_mm or inf, size.workshop.heaviest_g or inf)


def easy_limit_mm(size: Size) -> float:
    """As `limit_mm`, and where the maker says nothing what is handled with ease."""
    own: Workshop = size.workshop
    return _limit_mm(size, own.longest_mm or USUAL_LONGEST_MM, own.heaviest_g or USUAL_HEAVIEST_G)


def _limit_mm(size: Size, longest_mm: float, heaviest_g: float) -> float:
    whole = (part for part in size.laid if part.beads >= len(part.part.beads))
    used = {index for part in whole for index in set(part.part.beads)}
    used |= {index for part in size.laid if part.beads < len(part.part.beads) for index in part.worked}
    kinds: set[Kind] = {size.kinds[index] for index in used}
    heaviest_per_mm = max(1 / (kind.per_gram * kind.length_mm) for kind in kinds)
    return min(longest_mm, heaviest_g / heaviest_per_mm)


@dataclass(frozen=True)
class _Cutting:
    """A worked rope of those parts, and the most strung beads that a thread of it may hold.

    Most ropes are one chart that fills, with a start and an end or without: their threads are whole passes of it, and
    what stands before the first whole pass and behind the last part that fills goes with a neighbour.
    """

    laid: tuple[LaidPart, ...]
    around: int
    strung_mm: StrungLength
    limit_mm: float

    @property
    def total(self) -> int:
        return self.laid[-1].last

    @cached_property
    def one_chart(self) -> LaidPart | None:
        """The only part that fills, where no more than one part worked once stands before and behind it."""
        only = only_fill([part.part for part in self.laid])
        return next((part for part in self.laid if part.part is only), None)

    @property
    def pass_ends(self) -> tuple[int, ...]:
        """Where passes end, `total` last; what is no pass of the only chart goes with the one before or behind it."""
        only = self.one_chart
        if only is None:
            return tuple(end for part in self.laid for end in part.pass_ends)
        chart = len(only.part.beads)
        return (*range(only.begin + chart, only.last, chart), self.total)

    def fits(self, first: int, last: int, most_mm: float) -> bool:
        return self.strung_mm.between(first, last) <= most_mm + EXACT_MM

    # at most so many metres

    def at_most(self, most_mm: float) -> tuple[int, ...]:
        """Cuts so that no thread is longer: after the most whole passes that fit, else the most whole rounds."""
        return (0, *self._by_length(self.pass_ends, self.total, most_mm, 0))

    def limited(self, ends: Sequence[int]) -> tuple[int, ...]:
        """0 and those ends of threads, with further ones after whole rounds where a thread would be over the limit."""
        cuts = [0]
        for end in ends:
            cuts += self._by_length((), end, self.limit_mm, cuts[-1])
        return tuple(cuts)

    def _by_length(self, ends: Sequence[int], total: int, most_mm: float, at: int) -> Iterator[int]:
        while at < total:
            if self.fits(at, total, most_mm):
                at = total
            else:
                at = self._last_fitting(at, ends, most_mm, self._after_a_whole_pass(at, ends)) or self._last_fitting(
                    at, range(at + self.around, total, self.around), most_mm
                )
            if not at:
                most = f"{plain(most_mm / 1000, 3)} m"
                raise PlanError(f"Not even one round fits on {most} of strung beads; allow more.", "threads")
            yield at

    def _after_a_whole_pass(self, at: int, ends: Sequence[int]) -> int:
        """Which of the ends is the first behind which a thread that begins there holds a whole pass or more."""
        first = self.one_chart.begin if self.one_chart else 0
        return 0 if first >= at else min(bisect_left(ends, at) + 1, len(ends))

    def _last_fitting(self, at: int, places: Sequence[int], most_mm: float, low: int = 0) -> int:
        """The last of those places, from number `low` on, up to which the beads from `at` fit, or nought."""
        low = bisect_right(places, at, lo=low)
        fitting = bisect_right(places, most_mm + EXACT_MM, lo=low, key=lambda place: self.strung_mm.between(at, place))
        return places[fitting - 1] if fitting > low else 0

    # balanced

    def balanced(self) -> tuple[int, ...]:
        """Threads of whole passes, as few and as even as can be; a longer pass in even pieces of whole rounds."""
        if self.fits(0, self.total, self.limit_mm):
            return 0, self.total
        only = self.one_chart
        if only is None:
            return self._over_parts()
        passes = (only.last - only.begin) // len(only.part.beads)
        if passes and self.fits(only.begin, only.begin + len(only.part.beads), self.limit_mm):
            return self._of_whole_passes(only, passes)
        return self._of_pieces(only, passes)

    def _of_whole_passes(self, only: LaidPart, passes: int) -> tuple[int, ...]:
        """The fewest threads over which the passes can be spread evenly, with what is left at the end."""
        chart, start = len(only.part.beads), only.begin
        pass_mm, start_mm = self.strung_mm.between(start, start + chart), self.strung_mm.between(0, start)
        fewest = ceil(passes / max(1, int((self.limit_mm + EXACT_MM) // pass_mm)))
        behind_start = ceil(passes / max(1, int((self.limit_mm + EXACT_MM - start_mm) // pass_mm)))
        tried = {fewest, *range(behind_start, min(passes, behind_start + MOST_TRIED) + 1)}
        spread = (self._spread(only, passes, threads) for threads in sorted(tried))
        fitting = islice((cuts for cuts in spread if self._all_fit(cuts)), 2)
        ends = {start + chart * number for number in range(1, passes + 1)}
        best = min(fitting, key=lambda cuts: (len(cuts), len(set(cuts[1:-1]) - ends)), default=None)
        return best or self.limited((start, *sorted(ends), self.total))

    def _spread(self, only: LaidPart, passes: int, threads: int) -> tuple[int, ...]:
        """Cuts for the passes spread evenly over so many threads."""
        shares = [passes // threads + (number < passes % threads) for number in range(threads)]
        ends = (only.begin + len(only.part.beads) * worked for worked in accumulate(shares))
        return self._with_rest((0, *ends), self.total - only.last)

    def _all_fit(self, cuts: tuple[int, ...]) -> bool:
        return all(self.fits(first, last, self.limit_mm) for first, last in pairwise(cuts))

    def _with_rest(self, cuts: tuple[int, ...], end: int) -> tuple[int, ...]:
        """The cuts with what is left behind the last one, of it `end` beads the end: on a thread of its own, or with
        its neighbour.

        With its neighbour goes a short rest, and one with which that thread is no longer than the longest. Where a
        short rest does not fit there, both are shared evenly by two threads, after a whole round.
        """
        last, before = cuts[-1], cuts[-2]
        if last == self.total:
            return cuts
        rest_mm, thread_mm = self.strung_mm.between(last, self.total), self.strung_mm.between(before, last)
        only_the_end = self.total - last == end
        longest_mm = max(self.strung_mm.between(*thread) for thread in pairwise(cuts))
        if not only_the_end and rest_mm >= QUARTER * thread_mm and rest_mm + thread_mm > longest_mm + EXACT_MM:
            return (*cuts, self.total)
        if self.fits(before, self.total, self.limit_mm):
            return (*cuts[:-1], self.total)
        around = self.around
        middle = before + around * whole((self.total - before) / 2 / around)
        return (*cuts[:-1], middle, self.total)

    def _of_pieces(self, only: LaidPart, passes: int) -> tuple[int, ...]:
        """Every pass cut alike into the fewest even pieces of whole rounds; start and short rests with a neighbour."""
        start, last = only.begin, only.last
        stretch = len(only.part.beads) if passes else last - start
        inside = self._piece_ends(start, stretch)
        begins = range(start, last, stretch) if stretch else ()
        ends = [begin + end for begin in begins for end in inside if begin + end < last]
        if not ends:
            return self.limited((start, last, self.total))
        cuts = self._with_rest((0, *ends), self.total - last)
        if not self.fits(0, cuts[1], self.limit_mm):
            cuts = (0, start, *cuts[1:])
        return self.limited(cuts[1:])

    def _piece_ends(self, start: int, stretch: int) -> tuple[int, ...]:
        """Where the pieces of a stretch end, counted from its first bead."""
        around = self.around
        rounds = ceil(stretch / around)
        most = int((self.limit_mm + EXACT_MM) // (around * self.strung_mm.shortest))  # rounds of a piece
        fewest = max(2, ceil(rounds / most)) if most else rounds + 1
        for pieces in range(fewest, min(rounds, fewest + MOST_TRIED) + 1):
            ends = (*(around * whole(rounds * piece / pieces) for piece in range(1, pieces)), stretch)
            if all(self._piece_fits(start + first, start + end) for first, end in pairwise((0, *ends))):
                return ends
        return (stretch,)

    def _piece_fits(self, first: int, last: int) -> bool:
        return self.fits(min(first, self.total), min(last, self.total), self.limit_mm)

    # several parts

    def _over_parts(self) -> tuple[int, ...]:
        """The fewest even threads; cut where parts end, else passes, else rounds, as near as that keeps them even."""
        parts, rounds = tuple(part.last for part in self.laid[:-1]), range(self.around, self.total, self.around)
        fewest = ceil(self.strung_mm.between(0, self.total) / self.limit_mm - EXACT_MM)
        most = len(rounds) + len(self.pass_ends)
        for threads in range(fewest, min(fewest + 3, most)):
            for places in ((parts, self.pass_ends, rounds), (self.pass_ends, rounds), (rounds,)):
                cuts = self._near_even(threads, places)
                if self._all_fit(cuts):
                    return cuts
        return self.limited(self.pass_ends)

    def _near_even(self, threads: int, kinds_of_places: Sequence[Sequence[int]]) -> tuple[int, ...]:
        """Cuts of even threads, each moved to the nearest of the first places that is not far from it."""
        thread_mm = self.strung_mm.between(0, self.total) / threads
        cuts = [0, self.total]
        for number in range(1, threads):
            ideal_mm = thread_mm * number
            nearest = [self._nearest(places, ideal_mm) for places in kinds_of_places if places]
            near = [cut for cut in nearest if abs(self.strung_mm.between(0, cut) - ideal_mm) <= QUARTER * thread_mm]
            cuts.append((near or nearest[-1:] or [self.total])[0])
        return tuple(sorted(set(cuts)))

    def _nearest(self, places: Sequence[int], strung_mm: float) -> int:
        """The place nearest to that length of strung beads from the first one."""
        at = bisect_right(places, strung_mm, key=lambda place: self.strung_mm.between(0, place))
        return min(places[max(0, at - 1) : at + 1], key=lambda place: abs(self.strung_mm.between(0, place) - strung_mm))


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
