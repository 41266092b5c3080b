"""A stretch of beads on the lattice: its runs, its rows, and its letter picture."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from string import ascii_lowercase, ascii_uppercase, digits

from engine.pattern.lattice import first_of_row, row_length, rows

LETTERS = ascii_uppercase + ascii_lowercase + digits + "+/"

# one branch a palette index: twice as fast as a back reference
_RUN = re.compile(b"|".join(re.escape(bytes([index])) + b"+" for index in range(64)))


@dataclass(frozen=True)
class Chart:
    """`beads` are palette indices in working order, `around` the beads in a round; str() is the letter picture."""

    around: int
    beads: bytes

    @property
    def rows(self) -> int:
        return rows(self.around, len(self.beads))

    def row(self, row: int) -> bytes:
        """The beads of one drawn row, from left to right; the last row may be short."""
        first = first_of_row(self.around, row)
        return self.beads[first : first + row_length(self.around, row)]

    def turned_rows(self) -> Chart:
        """The chart whose drawn rows stand in reverse, each in its own place."""
        return Chart(self.around, b"".join(self.row(row)[::-1] for row in range(self.rows)))

    def __str__(self) -> str:
        return letter_picture(self.around, self.beads)


def runs(beads: bytes) -> Iterator[tuple[int, int]]:
    """Consecutive beads of one colour, in the order given: (palette index, count)."""
    return ((stretch[0], len(stretch)) for stretch in stretches(beads))


def stretches(beads: bytes) -> list[bytes]:
    """The beads cut where the colour changes."""
    return _RUN.findall(beads)


def letter_picture(around: int, beads: bytes, letters: Sequence[str] = LETTERS) -> str:
    """The chart in letters as it is drawn: last row on top, odd rows half a bead in.

    >>> print(letter_picture(3, bytes([0, 0, 1, 1, 2, 2, 2])))
     C C C
    A A B B
    """
    chart = Chart(around, beads)
    lines = (" " * (row % 2) + " ".join(letters[bead] for bead in chart.row(row)) for row in range(chart.rows))
    return "\n".join(reversed(list(lines)))
