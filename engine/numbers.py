"""Numbers and lengths as people type them: point or comma, a length with a unit or in the unit usual for them."""

from __future__ import annotations

import re

from engine.errors import EngineError, LengthError, shortened
from engine.units import INCH_MM, parse_length, plain

_GRAMS = re.compile(r"\s*(?P<whole>[0-9]{1,6})(?:[.,](?P<part>[0-9]{1,3}))?\s*g?\s*")
_BARE_NUMBER = re.compile(r"\s*(?:[0-9]*[.,]?[0-9]+|[0-9]+\s+[0-9]+/[0-9]+|[0-9]*[½¼¾⅓⅔⅛⅜⅝⅞])\s*")
NOUGHT = re.compile(r"\s*0+([.,]0*)?\s*[a-z]*")
_WHOLE_NUMBER = re.compile(r"[0-9]{1,9}")
_NUMBER = re.compile(r"[0-9]{1,9}([.,][0-9]{1,9})?")


def whole_number(text: str, what: str) -> int:
    """A count that was typed. Raises EngineError."""
    if not _WHOLE_NUMBER.fullmatch(text.strip()):
        raise EngineError(f"“{shortened(text)}” is not a whole number; say {what}.")
    return int(text)


def decimal_number(text: str, what: str) -> float:
    """A number that was typed, with point or comma. Raises EngineError."""
    if not _NUMBER.fullmatch(text.strip()):
        raise EngineError(f"“{shortened(text)}” is not a number; say {what}.")
    return float(text.replace(",", "."))


def typed_milligrams(text: str, what: str) -> int:
    """Whole milligrams of grams that were typed, with point or comma and at most three places. Raises EngineError.

    >>> typed_milligrams("12,5", "the stock"), typed_milligrams("20 g", "a pack")
    (12500, 20000)
    """
    typed = _GRAMS.fullmatch(text)
    if typed is None:
        raise EngineError(f"“{shortened(text)}” is not {what} in grams; write a number such as 12.5.")
    return int(typed["whole"] + (typed["part"] or "").ljust(3, "0"))


def typed_length(text: str, units: str = "cm", field: str = "length") -> float:
    """Millimetres of a length that was typed; a bare number is in the maker's own unit. Raises LengthError.

    >>> typed_length("17,5"), typed_length("20 in")
    (175.0, 508.0)
    """
    if not text.strip():
        raise LengthError(f"Say how long, such as 16 {usual_unit(units)}.", field)
    bare = _BARE_NUMBER.fullmatch(text)
    return parse_length(f"{text.strip()} {usual_unit(units)}" if bare else text, field)


def typed_nought_or_length(text: str, units: str = "cm", field: str = "length") -> float:
    """As `typed_length`, but nothing at all may be said as 0."""
    return 0.0 if NOUGHT.fullmatch(text) else typed_length(text, units, field)


def usual_unit(units: str) -> str:
    """The unit of a bare number: inches for those who measure in inches only."""
    return "in" if units == "in" else "cm"


def length_to_type(mm: float, units: str = "cm") -> str:
    """A length as a person would type it: "17.5 cm"."""
    in_unit = mm / INCH_MM if usual_unit(units) == "in" else mm / 10
    return f"{plain(in_unit, 2)} {usual_unit(units)}"
