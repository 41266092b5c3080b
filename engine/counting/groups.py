"""Lists that repeat, told as groups: "1 D 2 C 1 B 3 A, 132 times", with what stands before and what is left over.

A list is told so where that makes it shorter by half or more, and where a group is short enough to be read and ticked
as one: it has at most MOST_IN_GROUP runs; on paper it may also be a pass of the chart. Every run stands in exactly one
of `before`, the group that many times, and `after`, so `Grouped.runs` is the list again.
JSON and the sums of the proof read lists run by run.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from engine.counting.stringing import Run

MOST_IN_GROUP = 24
TEN = 10
SLACK_ENTRIES = 40  # by which a list may be longer than half and is still told as a group


@dataclass(frozen=True)
class Grouped:
    """A list as `before`, the `group` so many `times`, and `after`; all in stringing order."""

    before: tuple[Run, ...]
    group: tuple[Run, ...]
    times: int
    after: tuple[Run, ...]

    @property
    def runs(self) -> tuple[Run, ...]:
        """The list run by run."""
        return self.before + self.group * self.times + self.after

    @property
    def entries(self) -> int:
        """How many entries a person reads; the group is read once."""
        return len(self.before) + len(self.group) + len(self.after)

    @property
    def group_beads(self) -> int:
        return beads_of(self.group)

    @property
    def before_beads(self) -> int:
        return beads_of(self.before)

    @property
    def totals(self) -> tuple[tuple[int, int], ...]:
        """After every ten groups and after the last: how many groups, and beads strung by then in all."""
        numbers = [*range(TEN, self.times, TEN), self.times]
        return tuple((number, self.before_beads + number * self.group_beads) for number in numbers)


def beads_of(runs: Sequence[Run]) -> int:
    """Beads of those runs together."""
    return sum(run.beads for run in runs)


def group_runs(runs: Sequence[Run]) -> Grouped | None:
    """The list told as groups, or None where it is not shorter by half.

    >>> told = group_runs([Run("B", 1), *[Run("A", 3), Run("B", 2)] * 9, Run("A", 1)])
    >>> len(told.before), len(told.group), told.times, len(told.after)
    (1, 2, 9, 1)
    """
    told = min(_ways(tuple(runs)), key=lambda way: way.entries, default=None)
    return told if told is not None and 2 * told.entries <= len(runs) else None


def group_passes(runs: tuple[Run, ...]) -> Grouped | None:
    """The list told as groups of more runs than MOST_IN_GROUP, such as a pass of the chart, or None.

    Only for paper, where such a group fills columns of its own. A list is told so where that makes it shorter by half;
    half of SLACK_ENTRIES may be wanting.
    """
    window = runs[1 : 1 + MOST_IN_GROUP]
    for length in range(MOST_IN_GROUP + 1, len(runs) // 2 + 1):
        if runs[1 + length : 1 + length + len(window)] == window and (candidate := _group_of_length(runs, length)):
            return candidate
    return None


def group_known(runs: tuple[Run, ...], group: tuple[Run, ...]) -> Grouped | None:
    """The list told by a group that stands elsewhere: where it stands most often in a row; None for a short one.

    >>> long = tuple(Run("AB"[i % 2], 1 + i) for i in range(30))
    >>> told = group_known((Run("C", 2), *long, *long, Run("A", 1)), long)
    >>> len(told.before), told.times, len(told.after)
    (1, 2, 1)
    """
    length = len(group)
    if length <= MOST_IN_GROUP:
        return None
    best = Grouped(runs, group, 0, ())
    at = 0
    while at <= len(runs) - length:
        times = _times_at(runs, group, at)
        if times > best.times:
            best = Grouped(runs[:at], group, times, runs[at + times * length :])
        at += max(1, times * length)
    return best if best.times else None


def _times_at(runs: tuple[Run, ...], group: tuple[Run, ...], at: int) -> int:
    """How often in a row the group stands from there on."""
    times, length = 0, len(group)
    while runs[at] == group[0] and runs[at : at + length] == group:
        times, at = times + 1, at + length
        if at >= len(runs):
            break
    return times


def _group_of_length(runs: tuple[Run, ...], length: int) -> Grouped | None:
    """The list with a group of that length from its first or second entry on; None where it is not shorter by half."""
    first = 0 if runs[0] == runs[length] else 1
    same = next((at for at in range(first, len(runs) - length) if runs[at] != runs[at + length]), len(runs) - length)
    times = (same - first) // length + 1
    if times < 2 or 2 * (len(runs) - (times - 1) * length) > len(runs) + SLACK_ENTRIES:
        return None
    end = first + times * length
    return Grouped(runs[:first], runs[first : first + length], times, runs[end:])


def _ways(runs: tuple[Run, ...]) -> list[Grouped]:
    """For every length of a group the longest stretch of the list that says one again and again."""
    ways = []
    for length in range(1, min(MOST_IN_GROUP, len(runs) // 2) + 1):
        again = [run == other for run, other in zip(runs, runs[length:], strict=False)]
        first, same = _longest_stretch(again)
        times = (same + length) // length
        if times > 1:
            last = first + times * length
            ways.append(Grouped(runs[:first], runs[first : first + length], times, runs[last:]))
    return ways


def _longest_stretch(values: Sequence[bool]) -> tuple[int, int]:
    """Where the longest row of true values begins, and how long it is."""
    best, at = (0, 0), 0
    for value, row in groupby(values):
        length = len(list(row))
        if value and length > best[1]:
            best = (at, length)
        at += length
    return best
