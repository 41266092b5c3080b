"""Beads that a maker has written down elsewhere: a list, or a table, pasted as text or taken from a file."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from engine.errors import EngineError
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern, read_around
from engine.pattern.starts.colour_names import guessed
from engine.pattern.starts.pasted_tables import BOTTOM, TOP, read_table
from engine.pattern.starts.written_lists import read_list
from webapp.pages.forms.editor import NEW_COLOURS
from webapp.pages.forms.sent import Objections, Sent

STRUNG, WORKED, TABLE, TABLE_DOWN = "strung", "worked", "table", "table-down"
WRITINGS = {
    STRUNG: "A list, in stringing order",
    WORKED: "A list, in working order",
    TABLE: "A table, first row at the bottom",
    TABLE_DOWN: "A table, first row at the top",
}
MAKE, TAKE = "make", "file"  # what is pressed


@dataclass(frozen=True)
class TypedBrought:
    """The form as typed."""

    title: str = "Brought along"
    around: str = "8"
    kind: str = "11/0 round"
    written: str = STRUNG
    text: str = ""
    pages: str = ""


@dataclass(frozen=True)
class BroughtForm:
    """What was typed, what is wrong by field, the pattern when nothing is, and whether it is to be made."""

    typed: TypedBrought
    errors: Mapping[str, str]
    pattern: Pattern | None = None
    make: bool = False


def read_brought(pairs: Iterable[tuple[str, object]], designer: str = "") -> BroughtForm:
    """The form as it was sent; a table says itself how many beads go around."""
    sent, wrong, usual = Sent(pairs), Objections(), TypedBrought()
    typed = TypedBrought(
        title=sent.one("title") or usual.title,
        around=sent.one("around") or usual.around,
        kind=sent.one("kind") or usual.kind,
        written=sent.one("written") if sent.one("written") in WRITINGS else usual.written,
        text=sent.one("text"),
        pages=sent.one("pages"),
    )
    make = sent.one("do") == MAKE
    if not typed.text:
        return BroughtForm(
            typed, {"text": "Paste a list or a table first, or take a file."} if make else {}, None, make
        )
    try:
        pattern = _pattern(typed, wrong, designer)
    except EngineError as error:
        wrong.add(error.field if error.field in ("title", "around") else "text", error.message)
        pattern = None
    return BroughtForm(typed, wrong.by_field, None if wrong.by_field else pattern, make)


def _pattern(typed: TypedBrought, wrong: Objections, designer: str) -> Pattern:
    if typed.written in (TABLE, TABLE_DOWN):
        table = read_table(typed.text, TOP if typed.written == TABLE_DOWN else BOTTOM)
        entries = _entries(zip(table.codes, table.codes, table.colours, strict=True), typed.kind)
        return Pattern(typed.title, table.around, entries, table.beads, designer=designer)
    written = read_list(typed.text)
    beads = written.beads[::-1] if typed.written == STRUNG else written.beads
    told = ((bead.code, bead.name or f"Bead {bead.code}", guessed(bead.name)) for bead in written.palette)
    around = wrong.read("around", lambda: read_around(typed.around), 3)
    return Pattern(typed.title, around, _entries(told, typed.kind), beads, designer=designer)


def _entries(told: Iterable[tuple[str, str, str]], kind: str) -> Palette:
    """Codes, names and colours; where no colour is told, one that differs from its neighbours."""
    return Palette(
        tuple(
            Entry(
                code,
                name if len(name) > 2 else f"Bead {code}",
                colour or NEW_COLOURS[place % len(NEW_COLOURS)],
                kind=kind,
            )
            for place, (code, name, colour) in enumerate(told)
        )
    )
