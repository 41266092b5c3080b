"""The desk's question: which pattern, how large, how closed; and what is asked beside it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields

from engine.counting.options import USUAL as USUAL_ENDING
from engine.counting.questions import NamedSize
from engine.counting.reply import SECTIONS, USUAL
from webapp.pages.forms.sent import Sent
from webapp.pages.forms.size import SizeForm, read_size
from webapp.records import MakerSettings

_NUMBERED = re.compile(r"(?:(?P<title>.+), number )?(?P<number>[0-9]{1,9})")


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
    sent = Sent(pairs)
    typed = TypedDesk(**{field.name: sent.one(field.name) for field in fields(TypedDesk)})
    others = [(name, value) for name, value in sent.pairs if name != "closure"]
    size = read_size([("closure", typed.closure or USUAL_ENDING), *others], settings, own)
    sections = tuple(section for section in SECTIONS if section in sent.all("say")) if sent.has("say") else USUAL
    return DeskForm(typed, size.errors, size, sections)


def numbered(title: str, number: int) -> str:
    """The name of a pattern whose title alone does not tell it from others."""
    return f"{title}, number {number}"


def number_in(text: str) -> int | None:
    """The number of a pattern as it was typed, alone or behind its title; None where there is none."""
    numbered = _NUMBERED.fullmatch(text)
    return int(numbered["number"]) if numbered else None
