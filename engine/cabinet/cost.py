"""What a piece and a kit cost, from prices and packs; and a price worked out from cost, hours and rate."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from engine.cabinet.bead import Bead
from engine.cabinet.money import Money, summed, whole_coins
from engine.counting.kinds import Kind
from engine.counting.materials import ColourNeed, Materials
from engine.counting.purchase import grams_at_most, with_spare
from engine.counting.stock import MOST_PIECES, Pack
from engine.errors import SizeError
from engine.pattern.palette import Palette
from engine.units import count


@dataclass(frozen=True)
class CostLine:
    """One colour: `beads` of a piece, `share` what these cost of a pack, None where no price is known.

    For the kit: `kit_beads` with spare, whole packs, and what these cost.
    """

    code: str
    name: str
    beads: int
    share: Money | None
    kit_beads: int
    packs: int
    cost: Money | None


@dataclass(frozen=True)
class Cost:
    """What the beads of a piece, and of a kit for so many pieces, cost. Sums are by currency.

    `without_price` are the codes that no sum has; `spare` is in percent.
    """

    pieces: int
    spare: float
    lines: tuple[CostLine, ...]
    piece: tuple[Money, ...]
    kit: tuple[Money, ...]
    without_price: tuple[str, ...]


def cost(bill: Materials, beads: Mapping[str, Bead], pieces: int = 1) -> Cost:
    """The cost of that bill; `beads` are those of the cabinet by code. Raises SizeError unless 1 to 10,000 pieces.

    A piece takes its share of each pack, counted with the fewest beads in a gram, so that it is not too little; a kit
    takes whole packs.
    """
    if not 1 <= pieces <= MOST_PIECES:
        raise SizeError(f"A kit is for 1 to {count(MOST_PIECES)} pieces.", "pieces")
    lines = tuple(_line(need, beads.get(need.code), pieces, bill.spare) for need in bill.colours if need.beads)
    return Cost(
        pieces=pieces,
        spare=bill.spare,
        lines=lines,
        piece=summed(line.share for line in lines if line.share),
        kit=summed(line.cost for line in lines if line.cost),
        without_price=tuple(line.code for line in lines if line.cost is None),
    )


def _line(need: ColourNeed, bead: Bead | None, pieces: int, spare: float) -> CostLine:
    kit_beads = with_spare(need.beads * pieces, spare)
    packs = packs_for(kit_beads, need.kind, bead) if bead else 0
    priced = bead if bead and bead.price and bead.pack_mg else None
    return CostLine(
        code=need.code,
        name=need.name,
        beads=need.beads,
        share=Money(_share(need, priced), priced.currency) if priced else None,
        kit_beads=kit_beads,
        packs=packs,
        cost=Money(packs * priced.price, priced.currency) if priced else None,
    )


def packs_for(beads: int, kind: Kind, bead: Bead) -> int:
    """Packs that hold so many beads, even of those that weigh most; nought where no pack is known."""
    return bead.pack.packs_for(beads, kind) if bead.pack and beads else 0


def packs_of(bill: Materials, palette: Palette, cabinet: Mapping[str, Bead]) -> dict[str, Pack]:
    """The packs of the cabinet by code, without prices, of the colours that are strung with a bead of that kind."""
    kinds = {need.code: need.kind.name for need in bill.colours}
    beads = {entry.code: cabinet[entry.bead] for entry in palette if entry.bead in cabinet}
    return {code: bead.pack for code, bead in beads.items() if bead.pack and bead.kind == kinds.get(code)}


def _share(need: ColourNeed, bead: Bead) -> int:
    return whole_coins(grams_at_most(need.beads, need.kind) * 1000 / bead.pack_mg * bead.price)


class Price(NamedTuple):
    """A price that was worked out, in one currency: what beads, other material and work come to."""

    beads: Money
    other: Money
    work: Money

    @property
    def total(self) -> Money:
        return Money(sum(part.amount for part in self), self.beads.currency)


def price(beads: Money, other: int, minutes: int, rate: int) -> Price:
    """Cost of the beads and of other material, and so many minutes at a rate an hour; coins of the beads' currency."""
    work = whole_coins(Fraction(minutes, 60) * rate)
    return Price(beads, Money(other, beads.currency), Money(work, beads.currency))
