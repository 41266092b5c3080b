"""Days in words."""

from __future__ import annotations

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


def day_of(text: str) -> str:
    """A date written YYYY-MM-DD in words: "23 November 2026"."""
    year, month, day = text.split("-")
    return f"{int(day)} {MONTHS[int(month) - 1]} {year}"
