"""A table of beads that arrives: what it would bring, and which of its rows cannot be taken."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated

from engine.cabinet.arrivals import Arrivals, Changed
from engine.cabinet.bead import Bead
from engine.cabinet.money import Money
from engine.units import exact_grams
from webapp.money import shown
from webapp.pages.views.frame import Frame
from webapp.records import BeadTable, MakerSettings

LISTED = 100  # lines of each sort that are shown; of the others it is said how many
COLUMN_OF = {"pack_mg": "pack", "stock_mg": "stock", "maker_code": "maker’s code"}


@dataclass(frozen=True)
class BeadTablePage:
    """Where a table of beads is handed in, at `/beads/import`."""

    frame: Frame
    columns: Annotated[tuple[str, ...], "The columns that are read."]
    largest: Annotated[int, "The most megabytes that are read."]
    wrong: Annotated[str, "Why the table was refused; empty before one was sent."]


@dataclass(frozen=True)
class ComingBead:
    """A bead that is new or changed."""

    number: Annotated[int, "Its row."]
    name: Annotated[str, "Its name."]
    colour: Annotated[str, "Its colour, #rrggbb."]
    words: Annotated[str, "What is new or changed."]


@dataclass(frozen=True)
class WrongLine:
    """A row that is not taken."""

    number: Annotated[int, "Its row."]
    column: Annotated[str, "Its column; may be empty."]
    sentence: Annotated[str, "Why."]


@dataclass(frozen=True)
class BeadPreviewPage:
    """What a table would bring."""

    frame: Frame
    new: Annotated[tuple[ComingBead, ...], "The first of the beads that are new."]
    changed: Annotated[tuple[ComingBead, ...], "The first of the beads that it changes."]
    wrong: Annotated[tuple[WrongLine, ...], "The first of the rows that are not taken."]
    counts: Annotated[tuple[int, int, int, int], "How many are new, changed, the same, and not taken."]
    unknown: Annotated[tuple[str, ...], "Columns that say nothing here."]
    table: Annotated[str, "The table itself, to be sent again."]


def bead_table_page(frame: Frame, columns: tuple[str, ...], largest: int, wrong: str = "") -> BeadTablePage:
    """The page before a table is read, or after it was refused; at most so many bytes are read."""
    return BeadTablePage(frame, columns, largest // 1_000_000, wrong)


def bead_preview_page(
    frame: Frame, read: BeadTable, found: Arrivals, table: str, maker: MakerSettings
) -> BeadPreviewPage:
    """What the table would bring."""
    wrong = [WrongLine(row.number, row.column, row.sentence) for row in read.wrong]
    wrong += [
        WrongLine(clash.number, "", f"Row {clash.earlier} is about the same bead and says something else.")
        for clash in found.clashes
    ]
    wrong.sort(key=lambda line: line.number)
    return BeadPreviewPage(
        frame=frame,
        new=tuple(
            ComingBead(row.number, row.bead.name, row.bead.colour, _new_words(row.bead, maker))
            for row in found.new[:LISTED]
        ),
        changed=tuple(
            ComingBead(of.number, of.now.name, of.now.colour, "; ".join(_changes(of, maker)))
            for of in found.changed[:LISTED]
        ),
        wrong=tuple(wrong[:LISTED]),
        counts=(len(found.new), len(found.changed), found.same, len(wrong)),
        unknown=read.unknown,
        table=table,
    )


def _new_words(bead: Bead, maker: MakerSettings) -> str:
    pack, stock = (_value(bead, name, maker) for name in ("pack_mg", "stock_mg"))
    words = (bead.kind, bead.finish, bead.maker_code, bead.supplier, pack, _value(bead, "price", maker))
    return " · ".join(filter(None, (*words, f"stock {stock}" if stock else "")))


def _changes(changed: Changed, maker: MakerSettings) -> Iterator[str]:
    for name in changed.fields:
        was, now = (_value(bead, name, maker) or "nothing" for bead in (changed.was, changed.now))
        yield f"{COLUMN_OF.get(name, name)} {was} → {now}"


def _value(bead: Bead, name: str, maker: MakerSettings) -> str:
    value = getattr(bead, name)
    if name in ("pack_mg", "stock_mg"):
        return exact_grams(value) if value else ""
    if name == "price":
        return shown(Money(value, bead.currency), maker.country) if value else ""
    return str(value)
