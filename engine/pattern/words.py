"""Titles, names and notes: how long they may be, and that nothing unprintable hides in them."""

from __future__ import annotations

from unicodedata import category

from engine.errors import PatternError

UNPRINTABLE = ("Cc", "Cs")  # control characters and halves of surrogate pairs


def check_line(text: str, what: str, most: int, field: str, least: int = 1) -> None:
    """Raises PatternError where the text is too short, too long, or more than one printable line."""
    length = len(text.strip())
    if length < least:
        raise PatternError(f"The {what} is empty; expected 1 to {most} characters.", field)
    _check(text, what, most, field, allowed="")


def check_text(text: str, what: str, most: int, field: str) -> None:
    """As `check_line`, for text of several lines that may be empty."""
    _check(text, what, most, field, allowed="\n\r\t")


def _check(text: str, what: str, most: int, field: str, allowed: str) -> None:
    if len(text) > most:
        raise PatternError(f"The {what} has {len(text):,} characters; at most {most:,} fit.", field)
    if any(category(letter) in UNPRINTABLE and letter not in allowed for letter in text):
        raise PatternError(f"A character in the {what} cannot be printed; please type it anew.", field)
