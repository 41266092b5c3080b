"""The desk's question: which pattern, how large, how closed; and what is asked beside it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from typing import NamedTuple
from urllib.parse import parse_qsl, urlencode

from engine.counting.options import SIZE_OPTIONS, is_relative, read_question
from engine.counting.options import USUAL as USUAL_ENDING
from engine.counting.questions import NamedSize, Question
from engine.counting.reply import SECTIONS, USUAL
from engine.errors import EngineError
from webapp.pages.forms.sent import Sent
from webapp.pages.forms.size import SizeForm, read_size
from webapp.records import MakerSettings

_NUMBERED = re.compile(r"(?:(?P<title>.+), number )?(?P<number>[0-9]{1,9})")


@dataclass(frozen=True)
class TypedDesk:
    """What only the desk asks, as it was typed; `length` also takes the name of a size or a bangle size.

    `units` are those of the answer, the maker's own where none are said. `last` and `before` are the question that was
    answered last and the one before it, as in an address. From `compare` on: follow-up questions.
    """

    pattern: str = ""
    length: str = ""
    wrist: str = ""
    hand_girth: str = ""
    inner: str = ""
    neck: str = ""
    last: str = ""
    before: str = ""
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


class Earlier(NamedTuple):
    """A question asked before: the number of its pattern, its options as in an address, and what they ask.

    Without one the number is nought, and the question None.
    """

    pattern: int
    options: str
    question: Question | None


NOTHING_EARLIER = Earlier(0, "", None)


@dataclass(frozen=True)
class DeskForm:
    """What was typed, what is wrong by field, the size that is meant, and the sections of the reply.

    `compared_with` is the question asked before; `now` are the options of this one, and `before` what was asked before
    it, as the next question is sent with them.
    """

    typed: TypedDesk
    errors: Mapping[str, str]
    size: SizeForm
    sections: tuple[str, ...]
    compared_with: Earlier = NOTHING_EARLIER
    now: str = ""
    before: str = ""


def read_desk(pairs: Iterable[tuple[str, object]], settings: MakerSettings, own: Iterable[NamedSize] = ()) -> DeskForm:
    """The question of an address."""
    sent = Sent(pairs)
    typed = TypedDesk(**{field.name: sent.one(field.name) for field in fields(TypedDesk)})
    own = tuple(own)
    others = [(name, value) for name, value in sent.pairs if name != "closure"]
    last, before = _earlier(typed.last, settings, own), _earlier(typed.before, settings, own)
    size = read_size([("closure", typed.closure or USUAL_ENDING), *others], settings, own, last.question)
    sections = tuple(section for section in SECTIONS if section in sent.all("say")) if sent.has("say") else USUAL
    now = _as_options(size)
    stays = bool(size.errors) or is_relative(typed.length) or now == last.options
    return DeskForm(
        typed=typed,
        errors=size.errors,
        size=size,
        sections=sections,
        compared_with=before if now == last.options else last,
        now=last.options if stays else now,
        before=typed.before if stays else typed.last,
    )


def _as_options(size: SizeForm) -> str:
    """The question as it stands in an address."""
    typed = {name: getattr(size.typed, name) for name in SIZE_OPTIONS}
    return urlencode({name: text for name, text in typed.items() if text})


def _earlier(text: str, settings: MakerSettings, own: tuple[NamedSize, ...]) -> Earlier:
    """A question that was kept so: "pattern=3&length=45+cm"; one that cannot be read is none."""
    options = dict(parse_qsl(text))
    pattern = options.pop("pattern", "")
    number = int(pattern) if pattern.isdecimal() and len(pattern) < 10 else 0
    try:
        question = read_question(options, settings.units, own) if number else None
    except EngineError:
        question = None
    return Earlier(number, urlencode(options), question)


def numbered(title: str, number: int) -> str:
    """The name of a pattern whose title alone does not tell it from others."""
    return f"{title}, number {number}"


def number_in(text: str) -> int | None:
    """The number of a pattern as it was typed, alone or behind its title; None where there is none."""
    numbered = _NUMBERED.fullmatch(text)
    return int(numbered["number"]) if numbered else None
