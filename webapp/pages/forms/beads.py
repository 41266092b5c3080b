"""The cabinet as one asks for it, a bead as typed and as meant, and a place in its photograph."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, fields, replace
from typing import NamedTuple

from engine.cabinet.bead import Bead
from engine.cabinet.finding import SORTS, STOCKS, WantedBeads
from engine.errors import EngineError
from engine.numbers import typed_milligrams
from engine.units import plain
from webapp.money import currencies, read_amount, to_type
from webapp.pages.forms.sent import Objections, Sent
from webapp.records import MakerSettings

AREAS: Mapping[str, float] = {"small": 0.03, "medium": 0.08, "large": 0.2}
PICTURE_WIDTH = 320  # px in which the photograph stands on the page, so that a click tells its place
USUAL_COLOUR = "#2f7f76"

_COLOUR = re.compile(r"#[0-9a-f]{6}")


@dataclass(frozen=True)
class BeadFinder:
    """The search of the cabinet as it stands in the address; what cannot be meant takes its usual value."""

    wanted: WantedBeads = field(default_factory=WantedBeads)
    sort: str = "hue"
    archived: bool = False
    page: int = 1

    @property
    def query(self) -> dict[str, object]:
        """The values of an address that asks for the same again, without the page."""
        wanted = self.wanted
        return {
            "search": wanted.search,
            "kind": wanted.kind,
            "stock": wanted.stock,
            "near": wanted.near,
            "by_colour": "yes" if wanted.near else "",
            "sort": "" if self.sort == "hue" else self.sort,
            "archived": "yes" if self.archived else "",
        }


@dataclass(frozen=True)
class TypedBead:
    """A bead as typed; `pack` and `stock` in grams."""

    name: str = ""
    colour: str = USUAL_COLOUR
    kind: str = "11/0 round"
    finish: str = "opaque"
    maker_code: str = ""
    supplier: str = ""
    pack: str = ""
    price: str = ""
    currency: str = ""
    stock: str = ""
    note: str = ""


@dataclass(frozen=True)
class BeadForm:
    """What was typed, what is wrong by field, and the bead when nothing is."""

    typed: TypedBead
    errors: Mapping[str, str]
    bead: Bead | None = None


class PickedPlace(NamedTuple):
    """A place in a photograph, shares of its width and height, and how large an area counts: one of AREAS."""

    across: float
    down: float
    area: str


def read_bead_finder(pairs: Iterable[tuple[str, object]]) -> BeadFinder:
    """The search of a query."""
    sent = Sent(pairs)
    sort, stock, near, page = (sent.one(name) for name in ("sort", "stock", "near", "page"))
    wanted = WantedBeads(
        search=sent.one("search")[:200],
        kind=sent.one("kind")[:120],
        stock=stock if stock in STOCKS else "",
        near=near.lower() if sent.has("by_colour") and _COLOUR.fullmatch(near.lower()) else "",
    )
    return BeadFinder(
        wanted=wanted,
        sort=sort if sort in SORTS else ("near" if wanted.near else "hue"),
        archived=sent.one("archived") == "yes",
        page=int(page) if page.isascii() and page.isdigit() and 0 < len(page) < 7 else 1,
    )


def blank_bead(settings: MakerSettings) -> BeadForm:
    """The form for a new bead."""
    return BeadForm(TypedBead(currency=settings.currency), {})


def bead_form(bead: Bead, settings: MakerSettings) -> BeadForm:
    """The form filled with a bead as it is kept."""
    currency = bead.currency or settings.currency
    typed = TypedBead(
        name=bead.name,
        colour=bead.colour,
        kind=bead.kind,
        finish=bead.finish,
        maker_code=bead.maker_code,
        supplier=bead.supplier,
        pack=_grams(bead.pack_mg),
        price=to_type(bead.price, currency),
        currency=currency,
        stock=_grams(bead.stock_mg),
        note=bead.note,
    )
    return BeadForm(typed, {}, bead)


def read_bead(pairs: Iterable[tuple[str, object]], kinds: Iterable[str], key: str = "") -> BeadForm:
    """The bead that was sent, under that key."""
    sent, wrong = Sent(pairs), Objections()
    typed = TypedBead(**{of.name: sent.one(of.name) for of in fields(TypedBead)})
    typed = replace(typed, colour=typed.colour.lower(), finish=typed.finish or "opaque")
    if typed.kind not in set(kinds):
        wrong.add("kind", "Choose a bead kind from the list.")
    if typed.currency not in dict(currencies()):
        wrong.add("currency", "Choose a currency from the list.")
    pack, stock = (_typed_grams(typed, name, wrong) for name in ("pack", "stock"))
    price = 0
    if typed.price and "currency" not in wrong.by_field:
        price = wrong.read("price", lambda: read_amount(typed.price, typed.currency, "a price"), 0)
    if wrong.by_field:
        return BeadForm(typed, wrong.by_field)
    return _made(typed, pack, stock, price, key, wrong)


def read_place(pairs: Iterable[tuple[str, object]], width: int, height: int) -> PickedPlace:
    """Where a photograph of that size was clicked, or the place that was typed in percent. Raises EngineError."""
    sent = Sent(pairs)
    area = sent.one("area") if sent.one("area") in AREAS else "medium"
    if sent.has("at.x") and not sent.has("typed"):
        shown_height = PICTURE_WIDTH * height / width
        across, down = _pixels(sent.one("at.x")) / PICTURE_WIDTH, _pixels(sent.one("at.y")) / shown_height
    else:
        across, down = (_percent(sent.one(name)) for name in ("across", "down"))
    return PickedPlace(min(max(across, 0.0), 1.0), min(max(down, 0.0), 1.0), area)


def _made(typed: TypedBead, pack: int, stock: int, price: int, key: str, wrong: Objections) -> BeadForm:
    try:
        bead = Bead(
            name=typed.name,
            colour=typed.colour,
            kind=typed.kind,
            finish=typed.finish,
            maker_code=typed.maker_code,
            supplier=typed.supplier,
            pack_mg=pack,
            price=price,
            currency=typed.currency,
            stock_mg=stock,
            note=typed.note.replace("\r\n", "\n"),
            key=key,
        )
    except EngineError as error:
        wrong.add((error.field or "name").removesuffix("_mg"), error.message)
        return BeadForm(typed, wrong.by_field)
    return BeadForm(typed, {}, bead)


def _typed_grams(typed: TypedBead, name: str, wrong: Objections) -> int:
    text = getattr(typed, name)
    return wrong.read(name, lambda: typed_milligrams(text, f"a {name}"), 0) if text else 0


def _grams(mg: int) -> str:
    return plain(mg / 1000, 3).replace(",", "") if mg else ""


def _pixels(text: str) -> float:
    return float(text) if text.isascii() and text.isdigit() and len(text) < 6 else 0.0


def _percent(text: str) -> float:
    if not (text.isascii() and text.isdigit() and len(text) < 5 and int(text) <= 100):
        raise EngineError("Give the place in whole percent, 0 to 100, from the left and from the top.", "across")
    return int(text) / 100
