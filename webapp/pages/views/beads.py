"""The cabinet, and one bead of it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Annotated

from engine.cabinet.bead import Bead
from engine.cabinet.finding import find_beads
from engine.cabinet.money import Money
from engine.cabinet.nearness import nearest
from engine.pattern.colour import TOO_NEAR
from engine.pattern.palette import FINISHES
from engine.units import exact_grams, fixed, weighed
from webapp.money import currencies, shown
from webapp.pages.addresses import address
from webapp.pages.forms.beads import AREAS, PICTURE_WIDTH, USUAL_COLOUR, BeadFinder, BeadForm
from webapp.pages.views.frame import Frame
from webapp.records import BeadPicture, KeptBead, MakerSettings

PER_PAGE = 60
MOST_NEAR = 5
SORT_WORDS = (
    ("hue", "Hue"),
    ("name", "Name"),
    ("kind", "Kind"),
    ("stock", "Most in stock"),
    ("near", "Nearest to the colour"),
)


@dataclass(frozen=True)
class BeadLine:
    """A bead of the cabinet in one line."""

    key: Annotated[str, "Its key, for its addresses."]
    name: Annotated[str, "Its name."]
    colour: Annotated[str, "Its colour, #rrggbb."]
    words: Annotated[str, "Kind and finish."]
    bought: Annotated[str, "Maker's code and supplier; may be empty."]
    pack: Annotated[str, "What a pack holds and costs; may be empty."]
    stock: Annotated[str, "What is in stock; empty for nothing."]
    used: Annotated[int, "How many patterns use it."]


@dataclass(frozen=True)
class BeadsPage:
    """The cabinet at `/beads`."""

    frame: Frame
    lines: Annotated[tuple[BeadLine, ...], "The beads of this page of the list."]
    total: Annotated[int, "How many beads were found."]
    empty: Annotated[bool, "Whether the cabinet holds nothing at all."]
    finder: Annotated[BeadFinder, "The search as typed."]
    narrowed: Annotated[bool, "Whether anything narrows the list."]
    colour: Annotated[str, "The colour that is sought, or one to begin with."]
    sorts: Annotated[tuple[tuple[str, str], ...], "The orders to choose from."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to narrow by."]
    page: Annotated[int, "Which page of the list this is, from one."]
    pages: Annotated[int, "How many pages the list has."]
    newer: Annotated[str, "Address of the page before; empty on the first."]
    older: Annotated[str, "Address of the page after; empty on the last."]
    archived: Annotated[int, "How many beads are archived."]
    table: Annotated[str, "Address of the table of what was found."]


@dataclass(frozen=True)
class Neighbour:
    """A bead of the cabinet that looks much like another one."""

    key: Annotated[str, "Its key."]
    name: Annotated[str, "Its name."]
    colour: Annotated[str, "Its colour, #rrggbb."]
    difference: Annotated[str, "How far its colour is from the other, CIEDE2000."]


@dataclass(frozen=True)
class ShownPicture:
    """The photograph of a bead as the page shows it."""

    address: Annotated[str, "Where it is."]
    width: Annotated[int, "Its width on the page in px."]
    height: Annotated[int, "Its height on the page in px."]


@dataclass(frozen=True)
class BeadPage:
    """One bead at `/beads/{bead}/edit`, or a new one."""

    frame: Frame
    key: Annotated[str, "Its key; empty for a new one."]
    title: Annotated[str, "Its name, or that it is new."]
    form: Annotated[BeadForm, "The bead as typed, and what is wrong."]
    archived: Annotated[bool, "Whether it is archived."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds to choose from."]
    finishes: Annotated[tuple[tuple[str, str], ...], "The finishes to choose from."]
    currencies: Annotated[tuple[tuple[str, str], ...], "The currencies to choose from."]
    used: Annotated[tuple[tuple[int, str], ...], "Number and title of patterns that use it."]
    near: Annotated[tuple[Neighbour, ...], "Other beads of its kind that look like it."]
    picture: Annotated[ShownPicture | None, "Its photograph."]
    sampled: Annotated[str, "The colour that was just taken from the photograph; may be empty."]
    areas: Annotated[tuple[tuple[str, str], ...], "How large an area of the photograph counts."]
    wrong: Annotated[str, "What is wrong with a picture or a place in it; may be empty."]


def beads_page(
    frame: Frame,
    finder: BeadFinder,
    shelf: Sequence[Bead],
    archived: int,
    uses: Mapping[str, int],
    maker: MakerSettings,
) -> BeadsPage:
    """The cabinet for what was asked; `shelf` are the beads in question by hue, `archived` how many are archived."""
    listed = find_beads(shelf, finder.wanted, finder.sort)
    pages = max(1, -(-len(listed) // PER_PAGE))
    page = min(finder.page, pages)
    query = finder.query
    return BeadsPage(
        frame=frame,
        lines=tuple(
            bead_line(bead, maker, uses.get(bead.key, 0)) for bead in listed[(page - 1) * PER_PAGE :][:PER_PAGE]
        ),
        total=len(listed),
        empty=not shelf and not archived,
        finder=finder,
        narrowed=any((finder.wanted.kind, finder.wanted.stock, finder.wanted.near)),
        colour=finder.wanted.near or USUAL_COLOUR,
        sorts=SORT_WORDS,
        kinds=(("", "Any"), *((kind, kind) for kind in sorted({bead.kind for bead in shelf}))),
        page=page,
        pages=pages,
        newer=address("beads", **query, page=page - 1 if page > 2 else "") if page > 1 else "",
        older=address("beads", **query, page=page + 1) if page < pages else "",
        archived=archived,
        table=address("bead_table", **query),
    )


def bead_line(bead: Bead, maker: MakerSettings, used: int = 0) -> BeadLine:
    """A bead in one line."""
    price = shown(Money(bead.price, bead.currency), maker.country) if bead.price else ""
    return BeadLine(
        key=bead.key,
        name=bead.name,
        colour=bead.colour,
        words=f"{bead.kind} · {bead.finish}",
        bought=" · ".join(filter(None, (bead.maker_code, bead.supplier))),
        pack=" · ".join(filter(None, (exact_grams(bead.pack_mg) if bead.pack_mg else "", price))),
        stock=weighed(bead.stock_mg) if bead.stock_mg else "",
        used=used,
    )


def bead_page(
    frame: Frame,
    form: BeadForm,
    kinds: Iterable[str],
    kept: KeptBead | None = None,
    used: Sequence[tuple[int, str]] = (),
    others: Sequence[Bead] = (),
    photograph: BeadPicture | None = None,
    sampled: str = "",
    wrong: str = "",
) -> BeadPage:
    """The page of a bead; `others` are those of the cabinet."""
    bead = kept.bead if kept else None
    offered = dict.fromkeys((*kinds, *((bead.kind,) if bead else ())))
    return BeadPage(
        frame=frame,
        key=bead.key if bead else "",
        title=bead.name if bead else "A new bead",
        form=form,
        archived=bool(kept and kept.archived),
        kinds=tuple((kind, kind) for kind in offered),
        finishes=tuple((finish, finish.capitalize()) for finish in FINISHES),
        currencies=currencies(),
        used=tuple(used),
        near=_neighbours(bead, others) if bead else (),
        picture=_shown_picture(kept, photograph) if kept and photograph else None,
        sampled=sampled,
        areas=tuple((area, area.capitalize()) for area in AREAS),
        wrong=wrong,
    )


def _neighbours(bead: Bead, others: Sequence[Bead]) -> tuple[Neighbour, ...]:
    rivals = [other for other in others if other.kind == bead.kind and other.key != bead.key]
    return tuple(
        Neighbour(key=near.key, name=near.name, colour=near.colour, difference=fixed(difference, 1))
        for near, difference in nearest(bead.colour, rivals, MOST_NEAR)
        if difference < TOO_NEAR
    )


def _shown_picture(kept: KeptBead, photograph: BeadPicture) -> ShownPicture:
    return ShownPicture(
        address=address("bead_picture", bead=kept.bead.key, version=kept.picture),
        width=PICTURE_WIDTH,
        height=max(1, round(PICTURE_WIDTH * photograph.height / photograph.width)),
    )
