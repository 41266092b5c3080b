"""The one home of rounding and of number-to-text: millimetres, grams and counts as people read them.

Everything rounds half up (2.5 → 3, −2.5 → −2), because that is what a person with a pocket calculator does.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from decimal import ROUND_FLOOR, Decimal
from math import floor, isfinite

from engine.errors import LengthError, shortened

INCH_MM = 25.4
UNIT_MM = {
    1.0: ("mm", "millimetre", "millimetres", "millimeter", "millimeters"),
    10.0: ("cm", "centimetre", "centimetres", "centimeter", "centimeters"),
    1000.0: ("m", "metre", "metres", "meter", "meters"),
    INCH_MM: ("in", "inch", "inches", '"', "″", "”"),
    12 * INCH_MM: ("ft", "foot", "feet"),
    36 * INCH_MM: ("yd", "yard", "yards"),
}
TO_MM = {name: mm for mm, names in UNIT_MM.items() for name in names}
FRACTIONS = {"½": 0.5, "¼": 0.25, "¾": 0.75, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 0.125, "⅜": 0.375, "⅝": 0.625, "⅞": 0.875}
LONGEST_MM = 100_000.0
UNITS = ("cm", "in", "both")  # in which lengths can be told

_LENGTH = re.compile(
    r"\s*(?P<number>[0-9]{1,9}(?:[.,][0-9]{1,9})?|[.,][0-9]{1,9})?"
    r"\s*(?:(?P<over>(?<![0-9])[0-9]{1,3})/(?P<under>[0-9]{1,3})|(?P<sign>[½¼¾⅓⅔⅛⅜⅝⅞]))?"
    r"\s*(?P<unit>[^\W\d]+|[\"″”])?\s*\.?\s*"
)
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_MIXED = re.compile(r"[0-9]+")


def parse_length(text: str, field: str | None = "length") -> float:
    """Millimetres of a length with its unit: "50 cm", "500mm", "1,5 m", "19.5 in", "6 1/2 in", "2 ft".

    Raises LengthError for a length without a unit, with an unknown one, of nought, over 100 m, or with a comma that may
    part thousands or decimals.
    """
    quoted = shortened(text)
    parts = _LENGTH.fullmatch(text) if len(text) < 60 else None
    number = _mixed_number(parts) if parts else None
    if parts is None or number is None:
        raise LengthError(f"“{quoted}” is not a length; write a number and a unit, such as 50 cm or 19.5 in.", field)
    unit = parts["unit"]
    if unit is None:
        raise LengthError(
            f"“{quoted}” has no unit; write mm, cm, m or in behind it, such as {quoted.strip()} cm.", field
        )
    if unit.lower() not in TO_MM:
        raise LengthError(f"“{shortened(unit)}” is not a unit of length here; use mm, cm, m, in, ft or yd.", field)
    if _THOUSANDS.fullmatch(parts["number"] or ""):
        whole_part, thousandths = parts["number"].split(",")
        raise LengthError(
            f"“{quoted}” may be {whole_part}{thousandths} {unit} or {float(f'{whole_part}.{thousandths}'):g} {unit}; "
            "write it without the comma, or with a point.",
            field,
        )
    mm = number * TO_MM[unit.lower()]
    if not 0 < mm <= LONGEST_MM:
        raise LengthError(f"“{quoted}” is out of range; a length is more than 0 and at most 100 m.", field)
    return mm


def _mixed_number(parts: re.Match[str]) -> float | None:
    """A number, a fraction, or a whole number with a fraction behind it; None for anything else."""
    number, over, under, sign = parts.group("number", "over", "under", "sign")
    if over is None and sign is None:
        return None if number is None else float(number.replace(",", "."))
    if (number is not None and not _MIXED.fullmatch(number)) or (under is not None and int(under) == 0):
        return None
    if over is not None and int(over) >= int(under):
        return None
    fraction = FRACTIONS[sign] if sign else int(over) / int(under)
    return float(number or 0) + fraction


def whole(value: float) -> int:
    """The nearest whole number, half up."""
    return floor(value + 0.5)


def fixed(value: float, places: int) -> str:
    """The number with that many decimals, half up, with thousands set apart by commas."""
    if not isfinite(value):
        raise ValueError(f"not a number for people: {value}")
    step = Decimal(1).scaleb(-places)
    rounded = (Decimal(repr(value)) / step + Decimal("0.5")).to_integral_value(ROUND_FLOOR) * step
    return f"{abs(rounded) if rounded == 0 else rounded:,.{places}f}"


def plain(value: float, places: int) -> str:
    """As `fixed`, without noughts at the end: 2.50 → "2.5", 3.00 → "3"."""
    text = fixed(value, places)
    return text.rstrip("0").rstrip(".") if "." in text else text


def count(value: float) -> str:
    """Beads, rounds, runs: "1,500"."""
    return fixed(value, 0)


def counted(number: float, noun: str, many: str = "") -> str:
    """A count with its noun: "1 bead", "1,500 beads"; `many` where the plural is not made with an s."""
    return f"{count(number)} {noun if number == 1 else many or noun + 's'}"


def grams(value: float) -> str:
    """One decimal: "6.4 g", and "under 0.1 g" for what is too little for it and yet something."""
    return "under 0.1 g" if 0 < value < 0.05 else f"{fixed(value, 1)} g"


def exact_grams(mg: int) -> str:
    """Milligrams as grams, to the milligram: "12.5 g"."""
    return f"{plain(mg / 1000, 3)} g"


def weighed(mg: int) -> str:
    """Milligrams of stock as scales say it, one decimal: "18.4 g"."""
    return grams(mg / 1000)


def weighed_up(mg: int) -> str:
    """As `weighed`, rounded up, so that what is bought is enough: 12,601 mg are "12.7 g"."""
    return grams(-(-mg // 100) / 10)


def millimetres(value: float) -> str:
    """One decimal: "9.9 mm"."""
    return f"{fixed(value, 1)} mm"


def metres(mm: float) -> str:
    """Millimetres as metres with two decimals: "9.83 m"."""
    return f"{fixed(mm / 1000, 2)} m"


def length(mm: float, units: str = "cm") -> str:
    """A finished length, one decimal, in "cm", "in" or "both": "45.0 cm", "17.7 in", "45.0 cm (17.7 in)"."""
    metric, inches = f"{fixed(mm / 10, 1)} cm", f"{fixed(mm / INCH_MM, 1)} in"
    return {"cm": metric, "in": inches, "both": f"{metric} ({inches})"}[units]


def degrees(value: float) -> str:
    """Whole degrees with their sign: "+29°", "0°"."""
    text = fixed(value, 0)
    return f"{'+' if value >= 0.5 else ''}{text}°"


def percent(value: float) -> str:
    """At most one decimal: "10 %"."""
    return f"{plain(value, 1)} %"


def numbers_in_words(numbers: Iterable[int]) -> str:
    """Rising numbers with three or more in a row drawn together.

    >>> numbers_in_words([1, 2, 3, 5, 7, 8])
    '1 to 3, 5, 7 and 8'
    """
    rows: list[list[int]] = []
    for number in numbers:
        if rows and number == rows[-1][-1] + 1:
            rows[-1].append(number)
        else:
            rows.append([number])
    said = [words for row in rows for words in _row_in_words(row)]
    return " and ".join(filter(None, (", ".join(said[:-1]), *said[-1:])))


def _row_in_words(row: Sequence[int]) -> list[str]:
    return [f"{row[0]} to {row[-1]}"] if len(row) > 2 else [str(number) for number in row]
