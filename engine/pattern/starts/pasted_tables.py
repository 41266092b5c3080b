"""A chart pasted from a table: a cell a bead, as letters or as colours, rows as they stand on the page.

Rows of N + 1 and N cells by turns are drawn rows of the lattice; rows that are all N long are rounds, which is how such
charts are drawn on squares. Cells beyond the longest row that are empty count for nothing.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from string import ascii_uppercase

from engine.errors import NotationError, shortened
from engine.pattern.notation import LONGEST_TEXT, MOST_BEADS
from engine.pattern.palette import MOST_ENTRIES
from engine.pattern.pattern import LEAST_AROUND, MOST_AROUND

_COLOUR = re.compile(r"#?([0-9a-f]{6}|[0-9a-f]{3})", re.I)
_CELL = re.compile(r"[^\W\d_]{1,2}")
_BETWEEN = re.compile(r"\t|;|,|\s+")
BOTTOM, TOP = "bottom", "top"


@dataclass(frozen=True)
class PastedTable:
    """Beads in working order, how many go around, and the palette: codes, and the colours of cells told by colour."""

    beads: bytes
    around: int
    codes: tuple[str, ...]
    colours: tuple[str, ...]
    rounds: bool


def read_table(text: str, first: str = BOTTOM) -> PastedTable:
    """The chart of that table; `first` says where the row stands that is worked first: at the bottom, or at the top.

    Raises NotationError, which names line and column and what was expected.
    """
    if len(text) > LONGEST_TEXT:
        raise NotationError(1, 1, f"the text has {len(text):,} characters; at most {LONGEST_TEXT:,} are read.")
    lines = [(number, _cells(line, number)) for number, line in enumerate(text.splitlines(), 1) if line.strip("\t ,;")]
    if not lines:
        raise NotationError(1, 1, "there are no rows; paste one row a line, one bead a cell.")
    rows = lines if first == TOP else lines[::-1]
    around, rounds = _around([len(cells) for _, cells in rows], rows[0][0])
    _check_lengths(rows, around, rounds)
    cells = [cell for _, row in rows for cell in row]
    if len(cells) > MOST_BEADS:
        raise NotationError(1, 1, f"the rows come to {len(cells):,} beads; at most {MOST_BEADS:,} are read.")
    known = sorted(dict.fromkeys(cells), key=lambda cell: (cell.startswith("#"), "" if cell.startswith("#") else cell))
    if len(known) > MOST_ENTRIES:
        raise NotationError(1, 1, f"the cells have {len(known)} different beads; a palette has at most {MOST_ENTRIES}.")
    codes, colours = _palette(known)
    return PastedTable(
        beads=bytes(known.index(cell) for cell in cells), around=around, codes=codes, colours=colours, rounds=rounds
    )


def _cells(line: str, number: int) -> list[str]:
    """The cells of a line: letters set close, or parted by tabs, commas or spaces; colours as #rrggbb."""
    parts = [part for part in _BETWEEN.split(line.strip()) if part]
    if len(parts) == 1 and not _COLOUR.fullmatch(parts[0]) and parts[0].isalpha():
        parts = list(parts[0])
    return [_cell(part, number, column) for column, part in enumerate(parts, 1)]


def _cell(text: str, line: int, column: int) -> str:
    if text.startswith("#") and _COLOUR.fullmatch(text):
        digits = text[1:].lower()
        return f"#{digits if len(digits) == 6 else ''.join(2 * digit for digit in digits)}"
    if _CELL.fullmatch(text):
        return text.upper()
    raise NotationError(
        line,
        column,
        f"cell {column} holds “{shortened(text)}”; expected one or two letters, or a colour such as #2f7f76.",
    )


def _around(lengths: Sequence[int], line: int) -> tuple[int, bool]:
    """Beads around of rows of that length, the first worked first; and whether rows are rounds."""
    first = lengths[0]
    rounds = first <= LEAST_AROUND or len(lengths) == 1 or lengths[1] != first - 1
    around = first if rounds else first - 1
    if not LEAST_AROUND <= around <= MOST_AROUND:
        raise NotationError(
            line, 1, f"the row has {first} cells; expected {LEAST_AROUND} to {MOST_AROUND + 1}, as many as go around."
        )
    return around, rounds


def _check_lengths(rows: Sequence[tuple[int, list[str]]], around: int, rounds: bool) -> None:
    """Raises NotationError for a row that is not as long as it should be; the last worked may be short."""
    for place, (line, cells) in enumerate(rows):
        wanted = around if rounds or place % 2 else around + 1
        if len(cells) > wanted or (len(cells) < wanted and place < len(rows) - 1):
            by_turns = "" if rounds else f", because rows hold {around + 1} and {around} by turns"
            raise NotationError(line, 1, f"this row has {len(cells)} cells; expected {wanted}{by_turns}.")


def _palette(known: Sequence[str]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Codes and colours in the order of the beads; a cell that is a colour takes the next code that is free."""
    taken = {cell for cell in known if not cell.startswith("#")}
    free = iter(
        code
        for code in (
            *ascii_uppercase,
            *(f"Z{letter}" for letter in ascii_uppercase),
            *(f"Y{letter}" for letter in ascii_uppercase),
        )
        if code not in taken
    )
    codes = tuple(next(free) if cell.startswith("#") else cell for cell in known)
    return codes, tuple(cell if cell.startswith("#") else "" for cell in known)
