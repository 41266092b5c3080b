"""The form of a starting point: title, beads around, colours, and what that start asks."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from string import ascii_uppercase

from engine.errors import EngineError
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern, read_around
from engine.pattern.starts.bitmap import Letters
from engine.pattern.starts.start import MOST_COLOURS, Start
from webapp.pages.forms.editor import NEW_COLOURS
from webapp.pages.forms.sent import Objections, Sent

AROUND = "8"
ADD, REMOVE = "add", "remove"


@dataclass(frozen=True)
class TypedStart:
    """The form as typed; `colours` in the order of their codes A, B, C; `answers` by the key of what is asked."""

    title: str
    around: str
    kind: str
    colours: tuple[str, ...]
    answers: Mapping[str, str]


@dataclass(frozen=True)
class StartForm:
    """What was typed, what is wrong by field, and the pattern when nothing is."""

    start: Start
    typed: TypedStart
    errors: Mapping[str, str]
    pattern: Pattern | None = None


def read_start(
    start: Start, pairs: Iterable[tuple[str, object]], designer: str = "", letters: Letters | None = None
) -> StartForm:
    """The form as it stands in an address or was sent; what is left out is as usual. `letters` draw those of a font."""
    sent, wrong = Sent(pairs), Objections()
    typed = TypedStart(
        title=sent.one("title") or start.label,
        around=sent.one("around", AROUND),
        kind=sent.one("kind", "11/0 round"),
        colours=_colours(start, sent),
        answers={ask.key: sent.one(ask.key) or ask.usual for ask in start.asks},
    )
    around = wrong.read("around", lambda: read_around(typed.around), 0)
    try:
        palette = palette_of(typed.colours, typed.kind)
        beads = start.beads(around, palette.codes, typed.answers, letters) if around else b""
        hand = start.hand(typed.answers)
        pattern = Pattern(typed.title, around, palette, beads, hand=hand, designer=designer) if beads else None
    except EngineError as error:
        wrong.add((error.field or "").rpartition(".")[2], error.message)
        pattern = None
    return StartForm(start, typed, wrong.by_field, None if wrong.by_field else pattern)


def palette_of(colours: Iterable[str], kind: str) -> Palette:
    """The palette of those colours, A, B, C. Raises a PatternError."""
    return Palette(
        tuple(
            Entry(code, f"Bead {code}", colour.lower(), kind=kind)
            for code, colour in zip(ascii_uppercase, colours, strict=False)
        )
    )


def _colours(start: Start, sent: Sent) -> tuple[str, ...]:
    colours = sent.all("colour")[:MOST_COLOURS] or NEW_COLOURS[: start.colours]
    if sent.one("do") == ADD and len(colours) < MOST_COLOURS:
        return (*colours, NEW_COLOURS[len(colours) % len(NEW_COLOURS)])
    if sent.one("do") == REMOVE and len(colours) > 1:
        return colours[:-1]
    return colours
