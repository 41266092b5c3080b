"""A shopping list over several patterns, and what can be made of what is in stock."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Annotated
from urllib.parse import urlencode

from engine.cabinet.money import summed
from engine.cabinet.stock import Makeable, ToBuyLine
from engine.units import counted, length, weighed, weighed_up
from webapp.pages.addresses import address, picture
from webapp.pages.forms.cost import TypedWanted
from webapp.pages.forms.size import SizeForm, closure_choices
from webapp.pages.views.cost import amounts
from webapp.pages.views.frame import Frame
from webapp.records import MakerSettings, StoredPattern

PICTURE_WIDTH = 320
LEAST_LINES = 3
COLUMNS = (
    "kind",
    "name",
    "maker_code",
    "supplier",
    "beads",
    "grams",
    "in_stock_grams",
    "missing_grams",
    "packs",
    "cost",
    "for",
)


@dataclass(frozen=True)
class WantedLine:
    """A pattern on the list as typed, and what is wrong with it."""

    typed: Annotated[TypedWanted, "Title or number, pieces, length and closure."]
    errors: Annotated[Mapping[str, str], "What is wrong, by field; empty where it is counted."]
    size: Annotated[str, "The size that was counted, in words; empty where none was."] = ""


@dataclass(frozen=True)
class BuyLine:
    """A bead to buy."""

    key: Annotated[str, "Key of the bead; empty where it is not of the cabinet."]
    name: Annotated[str, "Its name."]
    colour: Annotated[str, "Its colour, #rrggbb; empty where it is not of the cabinet."]
    words: Annotated[str, "Kind, maker's code and supplier."]
    wanted_for: Annotated[str, "The patterns that want it."]
    beads: Annotated[int, "Beads that are needed."]
    needs: Annotated[str, "Their weight at most."]
    stock: Annotated[str, "What is in stock; empty where it is not of the cabinet."]
    missing: Annotated[str, "What is missing; empty where enough is there."]
    packs: Annotated[int, "Packs to buy; nought where no pack is known, or nothing is missing."]
    cost: Annotated[str, "What these cost; may be empty."]


@dataclass(frozen=True)
class ShoppingPage:
    """A shopping list at `/beads/shopping`."""

    frame: Frame
    wanted: Annotated[tuple[WantedLine, ...], "The patterns on it, with empty lines at the end."]
    closures: Annotated[tuple[tuple[str, str], ...], "The closures to choose from."]
    lines: Annotated[tuple[BuyLine, ...], "What is needed, by kind and name."]
    missing: Annotated[int, "Of how many beads too few are in stock."]
    packed: Annotated[bool, "Whether any line has packs to buy."]
    priced: Annotated[bool, "Whether any line has a price."]
    total: Annotated[str, "What the packs cost, by currency; may be empty."]
    unpriced: Annotated[int, "How many of the missing beads have no price, and so are not in it."]
    spare: Annotated[float, "The spare that is counted with, in percent."]
    table: Annotated[str, "Address of the list as CSV."]
    text: Annotated[str, "Address of the list as text."]
    query: Annotated[str, "The list as it stands in an address."]
    bought: Annotated[tuple[tuple[str, str], ...], "Key and packs of beads that were just put into the stock."]


@dataclass(frozen=True)
class MakeableLine:
    """What the stock makes of a pattern."""

    id: Annotated[int, "The pattern's number."]
    title: Annotated[str, "Its title."]
    picture: Annotated[str, "Address of its rope."]
    pieces: Annotated[str, "Whole pieces, in words; empty where it cannot be told."]
    runs_out: Annotated[str, "The bead that runs out first; may be empty."]
    longest: Annotated[str, "The longest rope; may be empty."]
    why: Annotated[str, "Why nothing can be told; may be empty."]


@dataclass(frozen=True)
class MakeablePage:
    """What can be made of what is in stock, at `/beads/makeable`."""

    frame: Frame
    form: Annotated[SizeForm, "Length and closure as typed, and what is wrong."]
    lines: Annotated[tuple[MakeableLine, ...], "The patterns of this page, the most pieces first."]
    total: Annotated[int, "How many patterns point at the cabinet."]
    page: Annotated[int, "Which page of them this is, from one."]
    pages: Annotated[int, "How many pages there are."]
    newer: Annotated[str, "Address of the page before; empty on the first."]
    older: Annotated[str, "Address of the page after; empty on the last."]


def shopping_page(
    frame: Frame,
    wanted: Sequence[WantedLine],
    needed: Sequence[ToBuyLine],
    spare: float,
    maker: MakerSettings,
    bought: str = "",
) -> ShoppingPage:
    """The list of those patterns; `bought` are packs just put into the stock, as "key.2-key.1"."""
    query = urlencode([pair for line in wanted for pair in vars(line.typed).items()])
    return ShoppingPage(
        frame=frame,
        wanted=(*wanted, *(WantedLine(TypedWanted(), {}),) * max(1, LEAST_LINES - len(wanted))),
        closures=closure_choices(),
        lines=tuple(_buy_line(line, maker) for line in needed),
        missing=sum(line.missing_mg > 0 for line in needed),
        packed=any(line.packs for line in needed),
        priced=any(line.cost for line in needed),
        total=amounts(summed(line.cost for line in needed if line.cost), maker),
        unpriced=sum(line.missing_mg > 0 and line.cost is None for line in needed),
        spare=spare,
        table=f"{address('shopping_table')}?{query}",
        text=f"{address('shopping_text')}?{query}",
        query=query,
        bought=tuple((key, packs) for key, _, packs in (part.partition(".") for part in bought.split("-")) if packs),
    )


def shopping_rows(needed: Iterable[ToBuyLine], maker: MakerSettings) -> list[list[object]]:
    """The list as rows of a table, under COLUMNS."""
    return [
        [
            line.kind.name,
            line.name,
            line.bead.maker_code if line.bead else "",
            line.bead.supplier if line.bead else "",
            line.beads,
            line.mg / 1000,
            line.bead.stock_mg / 1000 if line.bead else 0,
            line.missing_mg / 1000,
            line.packs or "",
            amounts((line.cost,), maker) if line.cost else "",
            ", ".join(line.wanted_for),
        ]
        for line in needed
    ]


def shopping_text(needed: Sequence[ToBuyLine], maker: MakerSettings) -> str:
    """What is missing, a line a bead, to be sent or pasted."""
    missing = [line for line in needed if line.missing_mg]
    if not missing:
        return "Nothing is missing.\n"
    lines = [f"- {_in_words(line, maker)}" for line in missing]
    total = amounts(summed(line.cost for line in missing if line.cost), maker)
    return "\n".join(("To buy:", *lines, *((f"Together {total}.",) if total else ()))) + "\n"


def makeable_page(
    frame: Frame, form: SizeForm, lines: Iterable[MakeableLine], total: int, page: int, per_page: int
) -> MakeablePage:
    """The patterns of a page, those of which most pieces can be made first."""
    pages = max(1, -(-total // per_page))
    asked = {"length": form.typed.length, "closure": form.typed.closure}
    return MakeablePage(
        frame=frame,
        form=form,
        lines=tuple(lines),
        total=total,
        page=page,
        pages=pages,
        newer=address("makeable", **asked, page=page - 1) if page > 1 else "",
        older=address("makeable", **asked, page=page + 1) if page < pages else "",
    )


def makeable_line(stored: StoredPattern, made: Makeable | None, why: str, units: str) -> MakeableLine:
    """What the stock makes of a pattern, or `why` that cannot be told."""
    rope = made.longest if made else None
    return MakeableLine(
        id=stored.id,
        title=stored.pattern.title,
        picture=picture(stored.id, "rope", PICTURE_WIDTH, f"{stored.revision}-{stored.sequence}"),
        pieces=counted(made.pieces, "whole piece") if made else "",
        runs_out=made.runs_out.name if made else "",
        longest=length(rope.size.finished_mm, units) if rope else "",
        why=why,
    )


def _in_words(line: ToBuyLine, maker: MakerSettings) -> str:
    bead = line.bead
    sold = ", ".join(filter(None, (line.kind.name, bead.maker_code if bead else "", bead.supplier if bead else "")))
    packs = f", {counted(line.packs, 'pack')}" if line.packs else ""
    cost = f", {amounts((line.cost,), maker)}" if line.cost else ""
    return f"{line.name} ({sold}): {weighed_up(line.missing_mg)}{packs}{cost}"


def _buy_line(line: ToBuyLine, maker: MakerSettings) -> BuyLine:
    bead = line.bead
    words = (line.kind.name, bead.maker_code if bead else "", bead.supplier if bead else "")
    return BuyLine(
        key=bead.key if bead else "",
        name=line.name,
        colour=bead.colour if bead else "",
        words=" · ".join(filter(None, words)),
        wanted_for=", ".join(line.wanted_for),
        beads=line.beads,
        needs=weighed_up(line.mg),
        stock=weighed(bead.stock_mg) if bead else "",
        missing=weighed_up(line.missing_mg) if line.missing_mg else "",
        packs=line.packs,
        cost=amounts((line.cost,), maker) if line.cost else "",
    )
