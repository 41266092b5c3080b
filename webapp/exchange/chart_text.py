"""A chart for other tools: as text in our notation, and as a table with a line a bead."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import fill

from engine.errors import ChoiceError
from engine.pattern.differences import PARTS
from engine.pattern.lattice import first_of_row, place
from engine.pattern.notation import write
from engine.pattern.pattern import Pattern
from webapp.exchange.table import write_table

COLUMNS = ("part", "row", "place", "round", "bead", "code", "name")
LINE = 100


def as_text(pattern: Pattern, part: str = "chart", strung: bool = False) -> str:
    """The beads of a part in our notation, in working or in stringing order, ready to be pasted again.

    Raises ChoiceError for a part that is not one.
    """
    if part not in PARTS:
        raise ChoiceError("Part", part, PARTS, "part")
    return fill(write(getattr(pattern, part), pattern.palette.codes, strung), LINE) + "\n"


def as_table(pattern: Pattern) -> str:
    """CSV with a line a bead in working order: drawn row and place in it, round and bead in it, all from one."""
    return write_table(COLUMNS, _lines(pattern))


def _lines(pattern: Pattern) -> Iterator[tuple[str, int, int, int, int, str, str]]:
    around = pattern.around
    named = [(entry.code, entry.name) for entry in pattern.palette]
    for part in PARTS:
        for k, bead in enumerate(getattr(pattern, part)):
            row = place(around, k).row
            yield (part, row + 1, k - first_of_row(around, row) + 1, k // around + 1, k % around + 1, *named[bead])
