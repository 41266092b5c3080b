"""What is bought: beads with spare, and whole grams that hold them."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from engine.counting.kinds import Kind
from engine.errors import SizeError

SPARE = 10.0  # percent; the usual advice (common practice, no source)
MOST_SPARE = 1000.0


def check_spare(spare: float) -> None:
    """Raises SizeError for a spare that is not 0 to 1,000 percent."""
    if not 0 <= spare <= MOST_SPARE:
        raise SizeError("Spare is between 0 and 1,000 percent.", "spare")


def with_spare(beads: int, spare: float) -> int:
    """Beads and so many percent more, rounded up; exact, for a tenth is no binary fraction."""
    return ceil(beads * (1 + Fraction(str(spare)) / 100))


def grams_to_buy(beads: int, kind: Kind) -> int:
    """The whole grams that hold so many beads."""
    return ceil(grams_of(beads, kind))


def grams_of(beads: int, kind: Kind) -> Fraction:
    """What so many beads weigh, exactly."""
    return Fraction(beads) / Fraction(str(kind.per_gram))
