"""The desk's question: which pattern, how large, how closed; and what is asked beside it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace
from math import pi

from engine.counting.finished import NAMED, bangle_mm
from engine.counting.reply import SECTIONS, USUAL
from engine.counting.sizes import CLOSURES, NamedSize, Question
from engine.errors import EngineError
from webapp.pages.forms.numbers import typed_length
from webapp.pages.forms.sent import Objections, Sent
from webapp.pages.forms.size import SizeForm, read_size
from webapp.records import MakerSettings

USUAL_CLOSURE = "clasp"

_NUMBERED = re.compile(r"(?:(?P<title>.+), number )?(?P<number>[0-9]{1,9})")
_BANGLE = re.compile(r"\d\s*[-/]\s*\d{1,2}")


@dataclass(frozen=True)
class TypedDesk:
    """What only the desk asks, as it was typed; `length` also takes the name of a size or a bangle size.

    `units` are those of the answer, the maker's own where none are said. From `compare` on: what is asked beside it.
    """

    pattern: str = ""
    length: str = ""
    wrist: str = ""
    hand_girth: str = ""
    inner: str = ""
    closure: str = ""
    units: str = ""
    compare: str = ""
    compare_sizes: str = ""
    have: str = ""
    pieces: str = ""
    packs: str = ""
    worked: str = ""
    out_thread: str = ""
    thread_left: str = ""
    out_colour: str = ""
    beads_left: str = ""


@dataclass(frozen=True)
class DeskForm:
    """What was typed, what is wrong by field, the size that is meant, and the sections of the reply."""

    typed: TypedDesk
    errors: Mapping[str, str]
    size: SizeForm
    sections: tuple[str, ...]


def read_desk(pairs: Iterable[tuple[str, object]], settings: MakerSettings, own: Iterable[NamedSize] = ()) -> DeskForm:
    """The question of an address."""
    sent, wrong = Sent(pairs), Objections()
    typed = TypedDesk(**{field.name: sent.one(field.name) for field in fields(TypedDesk)})
    none: dict[str, str] = {}
    meant = wrong.read("length", lambda: _meant(typed, own), none)
    others = [(name, value) for name, value in sent.pairs if name not in ("length", "closure", *meant)]
    size = read_size([*meant.items(), *others], settings)
    sections = tuple(section for section in SECTIONS if section in sent.all("say")) if sent.has("say") else USUAL
    return DeskForm(typed, {**size.errors, **wrong.found}, size, sections)


def numbered(title: str, number: int) -> str:
    """The name of a pattern whose title alone does not tell it from others."""
    return f"{title}, number {number}"


def number_in(text: str) -> int | None:
    """The number of a pattern as it was typed, alone or behind its title; None where there is none."""
    found = _NUMBERED.fullmatch(text)
    return int(found["number"]) if found else None


def read_sizes(text: str, closure: str, units: str, own: Iterable[NamedSize] = ()) -> tuple[NamedSize, ...]:
    """Sizes to compare: "40 cm, 45 cm, Opera, 2-8"; the closure is the usual one of each where none is said.

    Raises an EngineError naming the field.
    """
    own = tuple(own)
    parts = [part for part in (part.strip() for part in re.split(r",\s+|;|\n", text)) if part]
    try:
        return tuple(
            NamedSize(
                "Compared",
                part,
                _asked_by_name(part, closure, own) or Question(typed_length(part, units), closure or USUAL_CLOSURE),
            )
            for part in parts
        )
    except EngineError as error:
        raise error.at("compare_sizes") from None


def _asked_by_name(text: str, closure: str, own: Iterable[NamedSize]) -> Question | None:
    """The question of a named size or of a bangle size, if the text is one. Raises SizeError."""
    known = {size.name.casefold(): size.question for size in (*NAMED, *own)} | {
        size.key: size.question for size in (*NAMED, *own)
    }
    if found := known.get(text.casefold()):
        return found if found.over_hand else replace(found, closure=closure or found.closure)
    if _BANGLE.fullmatch(text):
        return Question(pi * bangle_mm(text), closure or "ring")
    return None


def _meant(typed: TypedDesk, own: Iterable[NamedSize]) -> dict[str, str]:
    """The size fields that the finished size stands for: a name, a bangle size, or a length. Raises SizeError."""
    if found := _asked_by_name(typed.length, typed.closure if typed.closure in CLOSURES else "", own):
        if found.over_hand:
            return {"length": "", "hand_girth": _mm(found.length_mm or 0.0), "closure": typed.closure or "ring"}
        return _fields_of(found, typed.closure or found.closure)
    if typed.hand_girth or typed.inner:
        return {"length": typed.length, "closure": typed.closure or "ring"}
    asked = typed.length or typed.wrist
    return {"length": typed.length, "closure": typed.closure or (USUAL_CLOSURE if asked else "open")}


def _fields_of(question: Question, closure: str) -> dict[str, str]:
    lengths = {"length": question.length_mm, "wrist": question.wrist_mm, "ease": question.ease_mm}
    return {"closure": closure, **{name: _mm(mm) for name, mm in lengths.items() if mm is not None}}


def _mm(mm: float) -> str:
    return f"{mm:.9f}".rstrip("0").rstrip(".") + " mm"
