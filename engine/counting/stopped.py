"""I stopped at bead k: what is still to string, from where, and what to buy."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from engine.counting.kinds import Kind
from engine.counting.purchase import SPARE, grams_to_buy, with_spare
from engine.counting.sizes import Size
from engine.counting.stringing import Run, runs
from engine.errors import SizeError
from engine.pattern.palette import Entry
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


def remaining(size: Size, worked: int, spare: float = SPARE) -> Remaining:
    """What is left after that many beads. `spare` in percent. Raises SizeError where the rope is not that long."""
    if not 0 <= worked < size.beads:
        raise SizeError(f"Bead {count(worked)} is not inside this rope of {count(size.beads)} beads.", "worked")
    rest = size.worked[worked:]
    wanted = Counter(rest)
    next_round, next_place = place_after(worked, size.around)
    return Remaining(
        worked=worked,
        next_round=next_round,
        next_place=next_place,
        beads=len(rest),
        strung_mm=sum(wanted[index] * kind.length_mm for index, kind in enumerate(size.kinds)),
        runs=runs(rest, size.pattern.palette.codes),
        to_buy=tuple(
            to_buy(entry, kind, wanted[index], spare)
            for index, (entry, kind) in enumerate(zip(size.pattern.palette, size.kinds, strict=True))
            if wanted[index]
        ),
    )


def to_buy(entry: Entry, kind: Kind, beads: int, spare: float) -> ToBuy:
    """So many beads of an entry, and the whole grams of them with spare in percent."""
    return ToBuy(entry.code, entry.name, beads, grams_to_buy(with_spare(beads, spare), kind))


def place_after(worked: int, around: int) -> tuple[int, int]:
    """Round and place of the bead after so many, both counted from one."""
    return worked // around + 1, worked % around + 1


def upto(round_number: int, place: int, around: int) -> int:
    """Beads worked when that place of that round is done, both counted from one. Raises SizeError."""
    if round_number < 1 or not 1 <= place <= around:
        raise SizeError(f"Place {place} of round {round_number} is not on a rope of {around} around.", "worked")
    return (round_number - 1) * around + place
