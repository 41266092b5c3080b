"""Days in words."""

from __future__ import annotations

import re
from calendar import monthrange

MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)


_DAY = re.compile("([0-9]{4})-(0[1-9]|1[0-2])-([0-9]{2})")


def is_day(text: str) -> bool:
    """Whether that is a day of the calendar written YYYY-MM-DD.

    >>> [is_day(text) for text in ("2024-02-29", "2026-02-29", "2026-2-1")]
    [True, False, False]
    """
    written = _DAY.fullmatch(text)
    if not written:
        return False
    year, month, day = map(int, written.groups())
    return year > 0 and 1 <= day <= monthrange(year, month)[1]


def day_of(text: str) -> str:
    """A date written YYYY-MM-DD in words: "23 November 2026"."""
    year, month, day = text.split("-")
    return f"{int(day)} {MONTHS[int(month) - 1]} {year}"
