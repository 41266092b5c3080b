"""What a piece costs and takes off the stock, what was made, and a price that follows from cost, hours and rate."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from engine.cabinet.bead import Bead
from engine.cabinet.cost import Cost, Price, cost, price
from engine.cabinet.money import Money
from engine.cabinet.stock import Take, take
from engine.counting.answers import Answer
from engine.counting.workshop import Workshop
from engine.units import counted, length, weighed, weighed_up
from webapp.money import shown
from webapp.pages.addresses import address
from webapp.pages.forms.answers import numbered
from webapp.pages.forms.cost import CostForm
from webapp.pages.forms.size import SizeForm, WorkedSize, work_size
from webapp.pages.views.frame import Frame, Head, head
from webapp.pages.views.measuring import Measuring, measuring
from webapp.pages.views.signs import Sign, signs
from webapp.records import MadePieces, MakerSettings, StoredPattern

UNKNOWN = "prices not known"


@dataclass(frozen=True)
class CostLineShown:
    """A bead of the bill with what it costs."""

    sign: Annotated[Sign, "The bead as drawn."]
    beads: Annotated[int, "Beads of a piece."]
    share: Annotated[str, "What these cost of a pack; empty where no price is known."]
    kit_beads: Annotated[int, "Beads to buy for all pieces, with spare."]
    packs: Annotated[int, "Whole packs that hold them; nought where no pack is known."]
    cost: Annotated[str, "What these cost; empty where no price is known."]


@dataclass(frozen=True)
class PriceLine:
    """A line of the price calculator."""

    name: Annotated[str, "What it is for."]
    amount: Annotated[str, "How much."]


@dataclass(frozen=True)
class StockLine:
    """A bead of the cabinet that the pieces take."""

    key: Annotated[str, "Its key; empty where the entry stands alone."]
    name: Annotated[str, "Its name."]
    codes: Annotated[str, "The codes of the pattern that point at it."]
    takes: Annotated[str, "What the pieces take."]
    stock: Annotated[str, "What is in stock; empty where the entry stands alone."]
    missing: Annotated[str, "What is missing; empty where enough is there."]


@dataclass(frozen=True)
class MadeLine:
    """Pieces that were made."""

    id: Annotated[int, "The number of the note."]
    made: Annotated[datetime, "When."]
    words: Annotated[str, "How many, and of which size."]
    took: Annotated[str, "What they took off the stock, all beads together."]
    undone: Annotated[bool, "Whether that was undone."]


@dataclass(frozen=True)
class CostPage:
    """Cost and stock at `/patterns/{id}/cost`."""

    frame: Frame
    head: Head
    form: Annotated[SizeForm, "The size fields as typed, and what is wrong."]
    cost_form: Annotated[CostForm, "Pieces, other material, hours and rate as typed, and what is wrong."]
    currency: Annotated[str, "The currency of what is typed."]
    sentence: Annotated[str, "The bill in one sentence; empty when something is wrong."]
    lines: Annotated[tuple[CostLineShown, ...], "The beads with what they cost."]
    pieces: Annotated[str, "For how many pieces the kit is, in words."]
    piece: Annotated[str, "What the beads of a piece cost, by currency; empty where no price is known."]
    kit: Annotated[str, "What the packs of the kit cost, by currency."]
    without_price: Annotated[str, "Codes of beads of which no price is known."]
    price: Annotated[tuple[PriceLine, ...], "The price that follows; empty where it cannot be worked out."]
    total: Annotated[str, "Their sum."]
    not_in_total: Annotated[str, "What the sum has not, in words; empty where it has all."]
    no_price: Annotated[str, "Why there is no price."]
    stock: Annotated[tuple[StockLine, ...], "What the pieces take of the cabinet."]
    enough: Annotated[bool, "Whether all of it is in stock."]
    linked: Annotated[bool, "Whether any bead is linked to the cabinet."]
    kept: Annotated[tuple[tuple[str, str], ...], "The question, to be sent with a note of what was made."]
    made: Annotated[tuple[MadeLine, ...], "What was made, the newest first."]
    shopping: Annotated[str, "Address of a shopping list for these pieces."]
    measuring: Annotated[Measuring | None, "What to measure, where no swatch stands behind the lengths."]


def cost_page(
    frame: Frame,
    stored: StoredPattern,
    form: SizeForm,
    cost_form: CostForm,
    workshop: Workshop,
    cabinet: Mapping[str, Bead],
    made: Iterable[MadePieces],
    maker: MakerSettings,
) -> CostPage:
    """The page for what the forms ask; `cabinet` has all beads by key."""
    done = work_size(stored.pattern, form, workshop, frame.units)
    answered = done.answer
    pieces = cost_form.pieces_meant
    costs = cost(answered.materials, by_code(stored, cabinet), pieces) if answered else None
    taken = take(stored.pattern.palette, answered.materials, cabinet, pieces) if answered else Take(pieces, (), ())
    worked, reason = _price(costs, cost_form, maker) if costs else (None, "")
    return CostPage(
        frame=frame,
        head=head(stored),
        form=done.form,
        cost_form=cost_form,
        currency=maker.currency,
        sentence=answered.sentence if answered else "",
        lines=tuple(_lines(stored, costs, maker)) if costs else (),
        pieces=counted(pieces, "piece"),
        piece=amounts(costs.piece, maker) if costs else "",
        kit=amounts(costs.kit, maker) if costs else "",
        without_price=", ".join(costs.without_price) if costs else "",
        price=_price_lines(worked, costs, maker) if worked and costs else (),
        total=shown(worked.total, maker.country) if worked else "",
        not_in_total=_unpriced(costs) if costs else "",
        no_price=reason,
        stock=tuple(_stock_lines(taken)),
        enough=taken.enough,
        linked=bool(taken.takings),
        kept=_kept(done, cost_form),
        made=tuple(_made(of) for of in made),
        shopping=_shopping(stored, done.form, cost_form),
        measuring=measuring(answered.size, frame) if answered else None,
    )


def by_code(stored: StoredPattern, cabinet: Mapping[str, Bead]) -> dict[str, Bead]:
    """The beads of the cabinet behind the codes of a pattern."""
    return {entry.code: cabinet[entry.bead] for entry in stored.pattern.palette if entry.bead in cabinet}


def amounts(sums: Iterable[Money], maker: MakerSettings) -> str:
    """Sums of several currencies in one line."""
    return " and ".join(shown(money, maker.country) for money in sums)


def size_in_words(answered: Answer, units: str) -> str:
    """The size of a piece as a note says it: "45.0 cm, clasp"."""
    return f"{length(answered.size.finished_mm, units)}, {answered.size.question.closure}"


def _lines(stored: StoredPattern, costs: Cost, maker: MakerSettings) -> Iterable[CostLineShown]:
    drawn = {sign.code: sign for sign in signs(stored.pattern.palette)}
    for line in costs.lines:
        yield CostLineShown(
            sign=drawn[line.code],
            beads=line.beads,
            share=shown(line.share, maker.country) if line.share else "",
            kit_beads=line.kit_beads,
            packs=line.packs,
            cost=shown(line.cost, maker.country) if line.cost else "",
        )


def _price(costs: Cost, form: CostForm, maker: MakerSettings) -> tuple[Price | None, str]:
    """The price of a piece, or why there is none."""
    if not (form.minutes or form.other_meant):
        return None, "Say how many hours a piece takes."
    if form.minutes and not form.rate_meant:
        return None, "Say what an hour of yours costs; the settings remember it."
    if [money.currency for money in costs.piece] not in ([], [maker.currency]):
        return None, f"Some prices are not in {maker.currency}, and nothing is converted."
    beads = costs.piece[0] if costs.piece else Money(0, maker.currency)
    return price(beads, form.other_meant, form.minutes, form.rate_meant), ""


def _price_lines(worked: Price, costs: Cost, maker: MakerSettings) -> tuple[PriceLine, ...]:
    without = f", without {', '.join(costs.without_price)}" if costs.without_price else ""
    beads = (f"Beads{without}", shown(worked.beads, maker.country)) if costs.piece else ("Beads", UNKNOWN)
    named = (("Other material", worked.other), ("Your hours", worked.work))
    return (PriceLine(*beads), *(PriceLine(name, shown(money, maker.country)) for name, money in named))


def _unpriced(costs: Cost) -> str:
    """The beads that no sum has."""
    return ", ".join(costs.without_price) if costs.piece else "beads"


def _stock_lines(taken: Take) -> Iterable[StockLine]:
    for of in taken.takings:
        yield StockLine(
            key=of.bead.key,
            name=of.bead.name,
            codes=", ".join(of.codes),
            takes=weighed_up(of.mg),
            stock=weighed(of.bead.stock_mg),
            missing=weighed_up(of.missing_mg) if of.missing_mg else "",
        )
    for alone in taken.alone:
        yield StockLine(
            key="", name=alone.name, codes=alone.code, takes=counted(alone.beads, "bead"), stock="", missing=""
        )


def _kept(done: WorkedSize, form: CostForm) -> tuple[tuple[str, str], ...]:
    typed = {name: value for name, value in vars(done.form.typed).items() if value}
    return (*typed.items(), ("pieces", form.pieces))


def _made(of: MadePieces) -> MadeLine:
    return MadeLine(
        id=of.id,
        made=of.made,
        words=", ".join(filter(None, (counted(of.pieces, "piece"), of.size))),
        took=weighed(sum(of.taken.values())),
        undone=of.undone,
    )


def _shopping(stored: StoredPattern, form: SizeForm, cost_form: CostForm) -> str:
    typed = form.typed
    return address(
        "shopping",
        pattern=numbered(stored.pattern.title, stored.id),
        pieces=cost_form.pieces,
        length=typed.length,
        closure=typed.closure,
    )
