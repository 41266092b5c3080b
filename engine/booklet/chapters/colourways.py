"""The bills of other colourways: the same chart and list, worked in other beads."""

from __future__ import annotations

from dataclasses import dataclass, replace

from engine.booklet.choices import Choices
from engine.cabinet.colourways import in_colourway
from engine.counting.answers import answer
from engine.counting.workshop import Workshop
from engine.pattern.palette import Palette
from engine.pattern.pattern import Pattern
from engine.units import count, counted


@dataclass(frozen=True)
class WayBead:
    """A bead of a colourway: the key of its swatch, code and name, what it is, beads, and what to buy."""

    figure: str
    code: str
    name: str
    sort: str
    beads: str
    buy: str


@dataclass(frozen=True)
class WayBill:
    """The bill of a colourway; `palette` is as its swatches are drawn."""

    name: str
    beads: tuple[WayBead, ...]
    palette: Palette


def way_bills(pattern: Pattern, choices: Choices, workshop: Workshop | None) -> tuple[WayBill, ...]:
    """A bill for each of the other colourways, for the same size. Raises as `answer` does."""
    bills = []
    for number, colourway in enumerate(choices.others, 1):
        worked = in_colourway(pattern, colourway)
        needs = answer(worked, choices.question, workshop, choices.plan, choices.spare).materials.colours
        beads = tuple(
            WayBead(
                figure=f"way-{number}-{need.code}",
                code=need.code,
                name=need.name,
                sort=", ".join(filter(None, (need.kind.name, entry.finish, _sold(entry.maker_code)))),
                beads=count(need.beads),
                buy=f"{counted(need.buy_beads, 'bead')}, {count(need.buy_grams)} g",
            )
            for need, entry in zip(needs, worked.palette, strict=True)
            if need.beads
        )
        bills.append(WayBill(colourway.name, beads, worked.palette))
    return tuple(bills)


def drawn_in(bill: WayBill, colour: str) -> WayBill:
    """The bill with all its swatches in one colour, where ink is saved."""
    return replace(bill, palette=Palette(tuple(replace(entry, colour=colour) for entry in bill.palette)))


def _sold(maker_code: str) -> str:
    return f"maker’s code {maker_code}" if maker_code else ""
