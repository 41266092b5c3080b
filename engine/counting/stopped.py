"""I stopped at bead k, or ran out of thread or of a colour: what is still to string, from where, and what to buy."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from engine.counting.sizes import Size, Workshop, kinds_of
from engine.counting.stringing import Run, runs
from engine.errors import SizeError
from engine.pattern.pattern import Pattern
from engine.units import count


@dataclass(frozen=True)
class ToBuy:
    """Beads of one colour that are still to come, with spare, in whole grams."""

    code: str
    name: str
    beads: int
    grams: int


@dataclass(frozen=True)
class Remaining:
    """The rest of a rope of which `worked` beads are done: round and place of the next bead, both counted from one.

    `runs` is what is still to string, in stringing order.
    """

    worked: int
    next_round: int
    next_place: int
    beads: int
    strung_mm: float
    runs: tuple[Run, ...]
    to_buy: tuple[ToBuy, ...]


def remaining(pattern: Pattern, size: Size, worked: int, workshop: Workshop | None = None,
              spare: float = 10) -> Remaining:
    """What is left after that many beads. `spare` in percent. Raises SizeError where the rope is not that long."""
    if not 0 <= worked < size.beads:
        raise SizeError(f"Bead {count(worked)} is not inside this rope of {count(size.beads)} beads.", "worked")
    kinds = kinds_of(pattern, size.question, workshop or Workshop())
    rest = pattern.worked(size.beads)[worked:]
    found = Counter(rest)
    to_buy = []
    for index, (entry, kind) in enumerate(zip(pattern.palette, kinds, strict=True)):
        if beads := found[index]:
            wanted = ceil(beads * (1 + Fraction(str(spare)) / 100))
            to_buy.append(ToBuy(entry.code, entry.name, beads, ceil(wanted / Fraction(str(kind.per_gram)))))
    strung_mm = sum(found[index] * kind.length_mm for index, kind in enumerate(kinds))
    return Remaining(worked, worked // pattern.around + 1, worked % pattern.around + 1, len(rest), strung_mm,
                     runs(rest, pattern.palette.codes), tuple(to_buy))


def upto(round_number: int, place: int, around: int) -> int:
    """Beads worked when that place of that round is done, both counted from one. Raises SizeError."""
    if round_number < 1 or not 1 <= place <= around:
        raise SizeError(f"Place {place} of round {round_number} is not on a rope of {around} around.", "worked")
    return (round_number - 1) * around + place
