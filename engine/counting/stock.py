"""Backwards: from the beads in hand to the longest rope, the colour that ends it, and what is left; and kits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor
from typing import NamedTuple

from engine.counting.answers import Answer
from engine.counting.kinds import Kind
from engine.counting.materials import ColourNeed
from engine.counting.purchase import SPARE, grams_at_most, grams_to_buy, with_spare
from engine.counting.rings import ring_step
from engine.counting.sizes import MOST_WORKED, Size, size_of_beads
from engine.counting.stopped import ToBuy, to_buy
from engine.errors import SizeError
from engine.pattern.pattern import Pattern
from engine.units import count

MOST_PIECES = 10_000


@dataclass(frozen=True)
class Longest:
    """The longest rope that beads in hand allow, the code of the colour that ends it, and beads left by code.

    `limit` is empty when the rope ends because it need not be longer. `to_buy` are the colours of which nothing was
    said to be in hand. `kept_back` is the share of every colour in hand, in percent, that was kept as spare.
    """

    size: Size
    limit: str
    left: tuple[tuple[str, int], ...]
    to_buy: tuple[ToBuy, ...]
    kept_back: float


class InHand(NamedTuple):
    """Beads in hand of one colour: so many packs of so much, in grams or, `counted`, in beads."""

    size: float
    packs: int = 1
    counted: bool = False

    def beads(self, per_gram: float) -> int:
        each = Fraction(str(self.size)) if self.counted else Fraction(str(self.size)) * Fraction(str(per_gram))
        return floor(self.packs * each)


def beads_in_hand(size: Size, held: Mapping[str, InHand]) -> dict[str, int]:
    """Beads of each code of which something is in hand, as many as its grams hold at least."""
    kinds = dict(zip(size.pattern.palette.codes, size.kinds, strict=True))
    return {code: amount.beads(kinds[code].fewest) for code, amount in held.items()}


def longest(asked: Size, beads: Mapping[str, int], spare: float = SPARE, kept_back: float = 0.0) -> Longest:
    """The longest rope of beads in hand, by code, that is closed and rounded as was asked.

    Colours that are not named are bought, with `spare` percent; of those in hand `kept_back` percent stay unused. The
    number of beads of each colour grows with the rope, so the last one that fits is searched by bisection. Raises
    SizeError where the beads make none, or where no colour of the rope is named.
    """
    pattern, used = asked.pattern, _in_rope(asked.pattern)
    usable = {code: floor(held * 100 / (100 + kept_back)) for code, held in beads.items()}
    if not any(code in used for code in usable):
        raise SizeError("Say of which colours of this rope there are beads, such as A 20.", "have")
    made = _longest_fitting(asked, usable)
    least = max(pattern.around, pattern.fixed_beads + _step(asked))
    if made < pattern.around or not _fits(pattern, made, usable):
        raise SizeError(
            f"These beads make not even {count(least)} beads of rope; {_missing(pattern, least, usable)} "
            "is missing first.",
            "have",
        )
    taken = _used(pattern, made)
    return Longest(
        size=size_of_beads(pattern, asked.question, made, asked.workshop),
        limit=_missing(pattern, made + _step(asked), usable) if made < MOST_WORKED else "",
        left=tuple((code, beads[code] - taken[code]) for code in pattern.palette.codes if code in beads),
        to_buy=tuple(
            to_buy(entry, kind, taken[entry.code], spare)
            for entry, kind in zip(pattern.palette, asked.kinds, strict=True)
            if entry.code not in beads and taken[entry.code]
        ),
        kept_back=kept_back,
    )


def _in_rope(pattern: Pattern) -> frozenset[str]:
    """Codes of the colours that are worked at all."""
    drawn = pattern.drawn
    return frozenset(code for index, code in enumerate(pattern.palette.codes) if index in drawn)


def _longest_fitting(asked: Size, usable: Mapping[str, int]) -> int:
    """The most beads of rope for which the usable beads are enough."""
    pattern, step = asked.pattern, _step(asked)
    low, high = 0, max(0, (MOST_WORKED - pattern.fixed_beads) // step)
    while low < high:
        middle = (low + high + 1) // 2
        if _fits(pattern, pattern.fixed_beads + middle * step, usable):
            low = middle
        else:
            high = middle - 1
    return pattern.fixed_beads + low * step


def _step(asked: Size) -> int:
    """By how many beads the rope may grow: a ring stays closed in colour."""
    if asked.question.rounding != "bead":
        return len(asked.pattern.main.beads)
    return ring_step(asked.pattern) if asked.closure.worked_shut else 1


def _used(pattern: Pattern, total: int) -> dict[str, int]:
    """Beads of each code in a rope of that many beads, without unfolding it."""
    between = total - pattern.fixed_beads
    passes, rest = divmod(between, len(pattern.main.beads))
    ends = pattern.start + pattern.main.beads[:rest] + pattern.end
    return {
        code: passes * pattern.main.beads.count(index) + ends.count(index)
        for index, code in enumerate(pattern.palette.codes)
    }


def _fits(pattern: Pattern, total: int, beads: Mapping[str, int]) -> bool:
    return total >= pattern.fixed_beads and not _missing(pattern, total, beads)


def _missing(pattern: Pattern, total: int, beads: Mapping[str, int]) -> str:
    """The code that falls shortest for a rope of that many beads, or empty when none does; others are bought."""
    total = max(total, pattern.fixed_beads)
    short = {code: used - beads[code] for code, used in _used(pattern, total).items() if code in beads}
    worst = max(short, key=short.__getitem__, default="")
    return worst if worst and short[worst] > 0 else ""


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

    def packs_for(self, beads: int, kind: Kind) -> int:
        """Packs that hold so many beads, even of those that weigh most."""
        size = Fraction(str(self.size))
        return ceil(beads / size if self.counted else grams_at_most(beads, kind) / size)

    def grams(self, kind: Kind) -> Fraction:
        """What a pack weighs."""
        size = Fraction(str(self.size))
        return size / Fraction(str(kind.per_gram)) if self.counted else size


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
    """The shopping list for that many pieces; `thread_mm` to buy, `cost` of all, `each` of one piece."""

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
    return Kit(pieces, lines, bill.buy_thread_mm * pieces, sum(line.cost for line in lines))


def _kit_line(need: ColourNeed, pieces: int, spare: float, pack: Pack | None) -> KitLine:
    beads = with_spare(need.beads * pieces, spare)
    if pack is None:
        return _line(need, beads, grams_to_buy(beads, need.kind), 0, 0.0)
    packs = pack.packs_for(beads, need.kind)
    return _line(need, beads, ceil(packs * pack.grams(need.kind)), packs, packs * pack.price)


def _line(need: ColourNeed, beads: int, grams: int, packs: int, cost: float) -> KitLine:
    return KitLine(code=need.code, name=need.name, beads=beads, grams=grams, packs=packs, cost=cost)
