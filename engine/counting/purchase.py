"""What is bought, so that it is enough: beads with spare, whole grams that hold them, and thread.

Weights are told by the usual count of beads in a gram, purchases by the fewest. Where a length was asked for and the
rope is an estimate of ±e, the beads may make only (1 − e) of it, so spare is at least 1 / (1 − e) − 1.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from engine.counting.kinds import Kind
from engine.errors import SizeError

SPARE = 10.0  # percent; the usual advice (common practice, no source)
MOST_SPARE = 1000.0
MEASURED_THREAD, ESTIMATED_THREAD = 1.05, 1.15  # of the thread that is reckoned with, to buy


def check_spare(spare: float) -> None:
    """Raises SizeError for a spare that is not 0 to 1,000 percent."""
    if not 0 <= spare <= MOST_SPARE:
        raise SizeError("Spare is between 0 and 1,000 percent.", "spare")


def covering_spare(error: float) -> float:
    """Spare in percent that covers an error of the length (0.15 is ±15 %), rounded up to a tenth.

    >>> covering_spare(0.15)
    17.7
    """
    share = Fraction(str(error))
    return ceil(1000 * (1 / (1 - share) - 1)) / 10


def with_spare(beads: int, spare: float) -> int:
    """Beads and so many percent more, rounded up; exact, for a tenth is no binary fraction."""
    return ceil(beads * (1 + Fraction(str(spare)) / 100))


def grams_to_buy(beads: int, kind: Kind) -> int:
    """The whole grams that hold so many beads, even of those that weigh most."""
    return ceil(grams_at_most(beads, kind))


def grams_at_most(beads: int, kind: Kind) -> Fraction:
    """What so many beads weigh where a gram holds the fewest."""
    return Fraction(beads) / Fraction(str(kind.fewest))


def thread_to_buy_mm(thread_mm: float, measured: bool) -> float:
    """Thread to buy for so much that is reckoned with."""
    return thread_mm * (MEASURED_THREAD if measured else ESTIMATED_THREAD)
