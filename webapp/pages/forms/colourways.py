"""A colourway as it is asked for, and a bead that stands alone in it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace

from engine.cabinet.colourways import LONGEST_NAME
from engine.errors import EngineError
from engine.numbers import typed_length
from engine.pattern.palette import Entry, Palette
from webapp.pages.forms.sent import Objections, Sent

LONGEST_SENT = 120
BEFORE = "was_"  # begins the names of what a bead was, in an address
DRAWN, STOCK = BEGINNINGS = ("drawn", "stock")


@dataclass(frozen=True)
class ColourwayForm:
    """A new colourway as typed: its name, what it begins with, and the length for which the stock is to be enough.

    `length_mm` is None where any stock will do.
    """

    name: str
    begins: str
    length: str
    errors: Mapping[str, str]
    length_mm: float | None = None

    def refused(self, field: str, sentence: str) -> ColourwayForm:
        """The form with one more objection."""
        return replace(self, errors={field: sentence, **self.errors})


@dataclass(frozen=True)
class TypedEntry:
    """A bead of a palette as typed; `points` is the key of the bead that it pointed at before, empty for none."""

    name: str = ""
    colour: str = ""
    finish: str = "opaque"
    kind: str = ""
    maker_code: str = ""
    points: str = ""


@dataclass(frozen=True)
class EntryForm:
    """What was typed, what is wrong by field, and the entry when nothing is."""

    typed: TypedEntry
    errors: Mapping[str, str]
    entry: Entry | None = None


def blank_colourway() -> ColourwayForm:
    """The form for a new colourway."""
    return ColourwayForm("", DRAWN, "", {})


def read_colourway(pairs: Iterable[tuple[str, object]], units: str) -> ColourwayForm:
    """The colourway that was asked for."""
    sent, wrong = Sent(pairs), Objections()
    name, begins, length = sent.one("name"), sent.one("begins"), sent.one("length")
    if not 0 < len(name) <= LONGEST_NAME:
        wrong.add("name", f"Give it a name of at most {LONGEST_NAME} characters.")
    length_mm = wrong.read("length", lambda: typed_length(length, units), None) if length else None
    return ColourwayForm(
        name=name,
        begins=begins if begins in BEGINNINGS else DRAWN,
        length=length,
        errors=wrong.by_field,
        length_mm=length_mm,
    )


def entry_form(entry: Entry) -> EntryForm:
    """The form filled with an entry."""
    return EntryForm(typed_entry(entry), {}, entry)


def typed_entry(entry: Entry) -> TypedEntry:
    """An entry as one would type it, with what it points at."""
    return TypedEntry(
        name=entry.name,
        colour=entry.colour,
        finish=entry.finish,
        kind=entry.kind,
        maker_code=entry.maker_code,
        points=entry.bead,
    )


def typed_before(pairs: Iterable[tuple[str, object]]) -> TypedEntry:
    """What an address says that a bead was before it was exchanged."""
    sent = Sent(pairs)
    return TypedEntry(**{of.name: sent.one(f"{BEFORE}{of.name}")[:LONGEST_SENT] for of in fields(TypedEntry)})


def read_entry(pairs: Iterable[tuple[str, object]], was: Entry, kinds: Iterable[str]) -> EntryForm:
    """An entry in the place of another, whose code and symbol it keeps; it stands alone unless `points` was sent."""
    sent = Sent(pairs)
    typed = TypedEntry(**{of.name: sent.one(of.name) for of in fields(TypedEntry)})
    typed = replace(typed, colour=typed.colour.lower())
    if typed.kind not in {*kinds, was.kind}:
        return EntryForm(typed, {"kind": "Choose a bead kind from the list."})
    entry = Entry(
        code=was.code,
        name=typed.name,
        colour=typed.colour,
        finish=typed.finish,
        kind=typed.kind,
        symbol=was.symbol,
        maker_code=typed.maker_code,
        bead=typed.points,
    )
    try:
        Palette((entry,))
    except EngineError as error:
        return EntryForm(typed, {(error.field or "name").rpartition(".")[2]: error.message})
    return EntryForm(typed, {}, entry)
