"""Backwards: from the beads in hand to the longest rope, the colour that ends it, and what is left; and kits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor
from typing import NamedTuple

from engine.counting.answers import Answer
from engine.counting.materials import ColourNeed
from engine.counting.purchase import grams_of, grams_to_buy, with_spare
from engine.counting.rings import ring_step
from engine.counting.sizes import MOST_WORKED, Size, size_of_beads
from engine.errors import SizeError
from engine.pattern.pattern import Pattern
from engine.units import count

MOST_PIECES = 10_000


@dataclass(frozen=True)
class Longest:
    """The longest rope that beads in hand allow, the code of the colour that ends it, and beads left by code.

    `limit` is empty when the rope ends because it need not be longer.
    """

    size: Size
    limit: str
    left: tuple[tuple[str, int], ...]


class InHand(NamedTuple):
    """Beads in hand of one colour: so many packs of so much, in grams or, `counted`, in beads."""

    size: float
    packs: int = 1
    counted: bool = False

    def beads(self, per_gram: float) -> int:
        each = Fraction(str(self.size)) if self.counted else Fraction(str(self.size)) * Fraction(str(per_gram))
        return floor(self.packs * each)


def beads_in_hand(size: Size, held: Mapping[str, InHand]) -> dict[str, int]:
    """Beads of each code that are in hand; none of a code that is not named."""
    return {
        entry.code: held.get(entry.code, InHand(0)).beads(kind.per_gram)
        for entry, kind in zip(size.pattern.palette, size.kinds, strict=True)
    }


def longest(asked: Size, beads: Mapping[str, int]) -> Longest:
    """The longest rope of beads in hand, by code, that is closed and rounded as was asked.

    The number of beads of each colour grows with the rope, so the last rope that fits is found by halving. Raises
    SizeError where the beads make none.
    """
    pattern = asked.pattern
    codes, fixed = pattern.palette.codes, pattern.fixed_beads
    total = min(MOST_WORKED, sum(beads.get(code, 0) for code in codes))
    step = _step(asked)
    low, high = 0, max(0, (total - fixed) // step)
    while low < high:
        middle = (low + high + 1) // 2
        if _fits(pattern, fixed + middle * step, beads):
            low = middle
        else:
            high = middle - 1
    made = fixed + low * step
    if made < pattern.around or not _fits(pattern, made, beads):
        least = max(pattern.around, fixed + step)
        raise SizeError(
            f"These beads make not even {count(least)} beads of rope; {_missing(pattern, least, beads)} "
            "is missing first.",
            "have",
        )
    used = _used(pattern, made)
    return Longest(
        size=size_of_beads(pattern, asked.question, made, asked.workshop),
        limit=_missing(pattern, made + step, beads),
        left=tuple((code, beads.get(code, 0) - used[code]) for code in codes),
    )


def _step(asked: Size) -> int:
    """By how many beads the rope may grow: a ring stays closed in colour."""
    if asked.question.rounding != "bead":
        return len(asked.pattern.chart)
    return ring_step(asked.pattern) if asked.closure.worked_shut else 1


def _used(pattern: Pattern, total: int) -> dict[str, int]:
    """Beads of each code in a rope of that many beads, without unfolding it."""
    between = total - pattern.fixed_beads
    passes, rest = divmod(between, len(pattern.chart))
    ends = pattern.start + pattern.chart[:rest] + pattern.end
    return {
        code: passes * pattern.chart.count(index) + ends.count(index)
        for index, code in enumerate(pattern.palette.codes)
    }


def _fits(pattern: Pattern, total: int, beads: Mapping[str, int]) -> bool:
    return total >= pattern.fixed_beads and not _missing(pattern, total, beads)


def _missing(pattern: Pattern, total: int, beads: Mapping[str, int]) -> str:
    """The code that falls shortest for a rope of that many beads, or empty when none does."""
    total = max(total, pattern.fixed_beads)
    short = {code: used - beads.get(code, 0) for code, used in _used(pattern, total).items()}
    worst = max(short, key=short.__getitem__)
    return worst if short[worst] > 0 else ""


@dataclass(frozen=True)
class Pack:
    """How a bead is sold: grams in a pack, or beads where it is `counted`, and its price in any money.

    Raises SizeError for a pack of nothing.
    """

    size: float
    price: float = 0.0
    counted: bool = False

    def __post_init__(self) -> None:
        if not (0 < self.size <= 100_000 and 0 <= self.price <= 1_000_000):
            raise SizeError("A pack holds more than nought grams or beads, and costs nought or more.", "packs")

    def grams(self, per_gram: float) -> Fraction:
        size = Fraction(str(self.size))
        return size / Fraction(str(per_gram)) if self.counted else size


@dataclass(frozen=True)
class KitLine:
    """One colour for all pieces: beads with spare, grams, packs and what they cost."""

    code: str
    name: str
    beads: int
    grams: int
    packs: int
    cost: float


@dataclass(frozen=True)
class Kit:
    """The shopping list for that many pieces; `cost` of all, `each` of one piece."""

    pieces: int
    lines: tuple[KitLine, ...]
    thread_mm: float
    cost: float

    @property
    def each(self) -> float:
        return self.cost / self.pieces


def kit(answer: Answer, pieces: int, packs: Mapping[str, Pack] | None = None) -> Kit:
    """The shopping list for that many pieces; packs by code. Raises SizeError unless 1 to 10,000 pieces."""
    if not 1 <= pieces <= MOST_PIECES:
        raise SizeError(f"A kit is for 1 to {count(MOST_PIECES)} pieces.", "pieces")
    bill, packs = answer.materials, packs or {}
    lines = tuple(_kit_line(need, pieces, bill.spare, packs.get(need.code)) for need in bill.colours if need.beads)
    return Kit(pieces, lines, bill.thread_mm * pieces, sum(line.cost for line in lines))


def _kit_line(need: ColourNeed, pieces: int, spare: float, pack: Pack | None) -> KitLine:
    beads = with_spare(need.beads * pieces, spare)
    if pack is None:
        return _line(need, beads, grams_to_buy(beads, need.kind), 0, 0.0)
    pack_grams = pack.grams(need.kind.per_gram)
    packs = ceil(grams_of(beads, need.kind) / pack_grams)
    return _line(need, beads, ceil(packs * pack_grams), packs, packs * pack.price)


def _line(need: ColourNeed, beads: int, grams: int, packs: int, cost: float) -> KitLine:
    return KitLine(code=need.code, name=need.name, beads=beads, grams=grams, packs=packs, cost=cost)
