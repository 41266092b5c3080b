"""Where a short row of beads fits a long one best, and how it differs there: beads missing, too many, or others.

The least number of changes to every end of the long row (Sellers, "The theory and computation of evolutionary
distances", 1980, from memory), a row of sums at a time; then, where it is least, the steps back to the beginning.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Sums = NDArray[np.int32]
SAME, OTHER, MISSING, EXTRA = "same", "other", "missing", "extra"


class Step(NamedTuple):
    """One step along both rows: which kind, and the bead of the long row and of the short one at which it stands."""

    kind: str
    long: int
    short: int


def least_changes(long: bytes, short: bytes) -> Sums:
    """For every end in the long row, 0 to its length, the fewest changes of the short row that fit it there."""
    text, places = np.frombuffer(long, np.uint8), np.arange(len(long) + 1, dtype=np.int32)
    sums = np.zeros(len(long) + 1, np.int32)
    for row, bead in enumerate(short, 1):
        own = np.empty_like(sums)
        own[0] = row
        np.minimum(sums[:-1] + (text != bead), sums[1:] + 1, out=own[1:])
        sums = np.minimum.accumulate(own - places) + places
    return sums


def steps(long: bytes, short: bytes, end: int, changes: int) -> tuple[Step, ...]:
    """The steps of a fit that ends before bead `end` of the long row, in order; `changes` is how many it needs."""
    first = max(0, end - len(short) - changes)
    window = long[first:end]
    table = [list(range(len(short) + 1))]  # a column a bead of the window, from the top: beads of the short row
    for bead in window:
        before, column = table[-1], [0]
        for row, own in enumerate(short, 1):
            column.append(min(before[row - 1] + (own != bead), before[row] + 1, column[row - 1] + 1))
        table.append(column)
    return tuple(reversed(_back(table, window, short, first)))


def _back(table: list[list[int]], window: bytes, short: bytes, first: int) -> list[Step]:
    taken, column, row = [], len(window), len(short)
    while row:
        here = table[column][row]
        if column and here == table[column - 1][row - 1] + (short[row - 1] != window[column - 1]):
            column, row = column - 1, row - 1
            taken.append(Step(SAME if short[row] == window[column] else OTHER, first + column, row))
        elif column and here == table[column - 1][row] + 1:
            column -= 1
            taken.append(Step(MISSING, first + column, row))
        else:
            row -= 1
            taken.append(Step(EXTRA, first + column, row))
    return taken
