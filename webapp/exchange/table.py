"""Tables for spreadsheets, as CSV."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence

RUN = ("=", "+", "-", "@", "\t", "\r", "\n")  # a text that begins so may be run as a formula


def write_table(columns: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """The CSV of these rows under their names."""
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(columns)
    writer.writerows(map(harmless, rows))
    return text.getvalue()


def harmless(row: Sequence[object]) -> list[object]:
    """A text that a spreadsheet would run as a formula is set behind an apostrophe."""
    return [f"'{cell}" if isinstance(cell, str) and cell.startswith(RUN) else cell for cell in row]
