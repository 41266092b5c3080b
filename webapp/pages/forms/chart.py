"""The form for a blank chart: title, beads around, rounds, and the colour it begins with."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields

from engine.errors import EngineError
from engine.numbers import whole_number
from engine.pattern.notation import MOST_BEADS
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern, read_around
from webapp.pages.forms.editor import NEW_COLOURS
from webapp.pages.forms.sent import Objections, Sent


@dataclass(frozen=True)
class TypedBlank:
    """The form as typed."""

    title: str = ""
    around: str = "12"
    rounds: str = "40"
    colour: str = NEW_COLOURS[0]
    finish: str = "opaque"
    kind: str = "11/0 round"


@dataclass(frozen=True)
class BlankForm:
    """What was typed, what is wrong by field, and the pattern when nothing is."""

    typed: TypedBlank
    errors: Mapping[str, str]
    pattern: Pattern | None = None


def blank_form() -> BlankForm:
    """The form as one comes to it."""
    return BlankForm(TypedBlank(), {})


def read_blank(pairs: Iterable[tuple[str, object]], designer: str = "") -> BlankForm:
    """The form as it was sent."""
    sent, wrong = Sent(pairs), Objections()
    typed = TypedBlank(**{field.name: sent.one(field.name) for field in fields(TypedBlank)})
    around = wrong.read("around", lambda: read_around(typed.around), 0)
    rounds = wrong.read("rounds", lambda: _rounds(typed.rounds, around), 0)
    if not typed.title:
        wrong.add("title", "A pattern needs a title.")
    if wrong.by_field:
        return BlankForm(typed, wrong.by_field)
    try:
        pattern = Pattern(typed.title, around, _palette(typed), bytes(around * rounds), designer=designer)
        return BlankForm(typed, {}, pattern)
    except EngineError as error:
        return BlankForm(typed, {(error.field or "").rpartition(".")[2]: error.message})


def _rounds(text: str, around: int) -> int:
    rounds = whole_number(text, "how many rounds the chart has, such as 40")
    if not 1 <= rounds * max(around, 1) <= MOST_BEADS:
        raise EngineError(f"A chart has at least one round and at most {MOST_BEADS:,} beads.")
    return rounds


def _palette(typed: TypedBlank) -> Palette:
    """The bead that was chosen, and one of another colour, so that there is something to draw with."""
    other = next(colour for colour in NEW_COLOURS[1:] if colour != typed.colour.lower())
    return Palette(
        (
            Entry(code="A", name="Background", colour=typed.colour.lower(), finish=typed.finish, kind=typed.kind),
            Entry(code="B", name="Bead B", colour=other, finish=typed.finish, kind=typed.kind),
        )
    )
