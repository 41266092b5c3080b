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


def named_parts(pattern: Pattern) -> dict[str, bytes]:
    """The beads that can be asked for by the name of their part.

    Start, chart and end; of a pattern in parts each by its number, and as the chart the main one.
    """
    if not pattern.in_parts:
        return {part: getattr(pattern, part) for part in PARTS}
    numbered = {str(number): part.beads for number, part in enumerate(pattern.parts, 1)}
    return {"chart": pattern.main.beads, **numbered}


def alone(pattern: Pattern, part: str = "chart") -> Pattern:
    """That part as the chart of a pattern of its own. Raises ChoiceError for a part that is not one, or is empty."""
    parts = {name: beads for name, beads in named_parts(pattern).items() if beads}
    if part not in parts:
        raise ChoiceError("Part", part, parts, "part")
    return pattern.alone(parts[part])


def as_text(pattern: Pattern, part: str = "chart", strung: bool = False) -> str:
    """The beads of a part in our notation, in working or in stringing order, ready to be pasted again.

    Raises ChoiceError for a part that is not one.
    """
    parts = named_parts(pattern)
    if part not in parts:
        raise ChoiceError("Part", part, parts, "part")
    return fill(write(parts[part], pattern.palette.codes, strung), LINE) + "\n"


def as_table(pattern: Pattern) -> str:
    """CSV with a line a bead in working order: drawn row and place in it, round and bead in it, all from one."""
    return write_table(COLUMNS, _lines(pattern))


def _lines(pattern: Pattern) -> Iterator[tuple[str, int, int, int, int, str, str]]:
    around = pattern.around
    named = [(entry.code, entry.name) for entry in pattern.palette]
    for part, beads in _labelled_parts(pattern):
        for k, bead in enumerate(beads):
            row = place(around, k).row
            yield (part, row + 1, k - first_of_row(around, row) + 1, k // around + 1, k % around + 1, *named[bead])


def _labelled_parts(pattern: Pattern) -> Iterator[tuple[str, bytes]]:
    """The parts as the table names them: start, chart and end, or by number and name."""
    if not pattern.in_parts:
        yield from named_parts(pattern).items()
    for number, part in enumerate(pattern.in_parts, 1):
        yield f"{number} {part.name}", part.beads
