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
from engine.counting.rings import pass_shares, ring_shares, round_down
from engine.counting.sizes import MOST_WORKED, Size, size_of_shares
from engine.counting.stopped import ToBuy, to_buy
from engine.errors import SizeError
from engine.pattern.pattern import Pattern
from engine.pattern.shares import lay, shared
from engine.units import count

MOST_PIECES = 10_000
MOST_TRIED = 2000  # lengths tried beyond the one that bisection finds


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
    number of beads of each colour grows with the rope, but for some beads more or less where three parts or more fill,
    so the last one that fits is searched by bisection. Raises SizeError where the beads make none, or where no colour
    of the rope is named.
    """
    pattern, used = asked.pattern, _in_rope(asked.pattern)
    usable = {code: floor(held * 100 / (100 + kept_back)) for code, held in beads.items()}
    if not any(code in used for code in usable):
        raise SizeError("Say of which colours of this rope there are beads, such as A 20.", "have")
    made = _longest_fitting(asked, usable)
    if made is None:
        least = _shares(asked, pattern.around)
        raise SizeError(
            f"These beads make not even {count(pattern.fixed_beads + sum(least))} beads of rope; "
            f"{_missing(pattern, least, usable)} is missing first.",
            "have",
        )
    taken = _used(pattern, made)
    longer = _longer(asked, made)
    return Longest(
        size=size_of_shares(pattern, asked.question, made, asked.workshop),
        limit=_missing(pattern, longer, usable) if longer else "",
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


def _longest_fitting(asked: Size, usable: Mapping[str, int]) -> tuple[int, ...] | None:
    """The shares of the longest rope for which the usable beads are enough; None where they make none."""
    pattern = asked.pattern
    low, high = pattern.around - 1, MOST_WORKED
    while low < high:
        middle = (low + high + 1) // 2
        if _missing(pattern, _shares(asked, middle), usable):
            high = middle - 1
        else:
            low = middle
    further = range(low + 1, min(low + _uneven(pattern), MOST_WORKED) + 1)
    last = max((beads for beads in further if not _missing(pattern, _shares(asked, beads), usable)), default=low)
    return _shares(asked, last) if last >= pattern.around else None


def _uneven(pattern: Pattern) -> int:
    """Over how many beads a longer rope may take fewer of a colour.

    Where a fill between fixed parts gains a pass, those at the ends lose as many beads.
    """
    inner = [part for part in pattern.parts[1:-1] if part.fills] if pattern.fills_an_end else []
    return min(MOST_TRIED, sum(len(part.beads) for part in inner) * len(pattern.fills))


def _shares(asked: Size, beads: int) -> tuple[int, ...]:
    """Beads of every part that fills, of the longest rope of at most so many beads; a ring stays closed in colour.

    Where that is none, of the shortest.
    """
    pattern, bead_mm = asked.pattern, asked.fill_mm
    if asked.question.rounding == "bead" and asked.closure.worked_shut:
        return ring_shares(pattern, beads, round_down, bead_mm)
    if asked.question.rounding != "bead" or not pattern.fills_an_end:
        return pass_shares(pattern, beads, round_down, bead_mm)
    return shared(pattern.parts, max(1, beads - pattern.fixed_beads), bead_mm)


def _longer(asked: Size, made: tuple[int, ...]) -> tuple[int, ...]:
    """The shares of the next longer rope; none where there is none, or where it would be longer than is counted."""
    beads = asked.pattern.fixed_beads + sum(made)
    further = (_shares(asked, longer) for longer in range(beads + 1, MOST_WORKED + 1))
    return next((shares for shares in further if sum(shares) > sum(made)), ()) if made else ()


def _used(pattern: Pattern, shares: tuple[int, ...]) -> dict[str, int]:
    """Beads of each code in a rope that shares its beads so, without unfolding it."""
    used = dict.fromkeys(pattern.palette.codes, 0)
    for part in lay(pattern.parts, shares):
        passes, rest = divmod(part.beads, len(part.part.beads))
        cut = part.part.beads[len(part.part.beads) - rest :] if part.cut_first else part.part.beads[:rest]
        for index, code in enumerate(pattern.palette.codes):
            used[code] += passes * part.part.beads.count(index) + cut.count(index)
    return used


def _missing(pattern: Pattern, shares: tuple[int, ...], beads: Mapping[str, int]) -> str:
    """The code that falls shortest for a rope that shares its beads so, or empty when none does; others are bought."""
    short = {code: used - beads[code] for code, used in _used(pattern, shares).items() if code in beads}
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
