"""Follow-up questions to an answer: other sizes and kinds, beads in hand, kits, a stop, thread or colour that ended."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import TypeVar

from engine.counting.answers import Answer
from engine.counting.finished import named_question
from engine.counting.follow_up_text import (
    Held,
    OnThread,
    RanOut,
    read_held,
    read_left,
    read_out,
    read_packs,
    read_place,
    read_thread_left,
    read_worked,
)
from engine.counting.options import USUAL_CLOSURE, Errors
from engine.counting.questions import NamedSize, Question
from engine.counting.ran_out import OutOfColour, OutOfThread, out_of_colour, out_of_thread, place_on_thread
from engine.counting.size_table import SizeRow, in_kinds, in_sizes, size_table
from engine.counting.sizes import Size
from engine.counting.stock import Kit, Longest, Pack, beads_in_hand, kit, longest
from engine.counting.stopped import Remaining, remaining
from engine.errors import ChoiceError, EngineError, SizeError
from engine.numbers import typed_length

COMPARED = ("sizes", "kinds")
FOLLOW_UP_OPTIONS = (
    "compare",
    "compare_sizes",
    "have",
    "pieces",
    "packs",
    "worked",
    "out_thread",
    "thread_left",
    "out_colour",
    "beads_left",
)

T = TypeVar("T")


@dataclass(frozen=True)
class FollowUps:
    """What is asked after an answer; None, or empty, where it is not. `errors` are what cannot be read, by option.

    `compare` is one of COMPARED; with `sizes` those are compared. `packs`, `beads_left` and `thread_left_mm` belong to
    the questions beside them.
    """

    compare: str = ""
    sizes: tuple[NamedSize, ...] = ()
    held: Held | None = None
    packs: Mapping[str, Pack] = field(default_factory=dict)
    pieces: int | None = None
    worked: int | None = None
    out_thread: int | OnThread | None = None
    thread_left_mm: float = 0.0
    out_colour: RanOut | None = None
    beads_left: Mapping[str, int] = field(default_factory=dict)
    errors: Mapping[str, EngineError] = field(default_factory=dict)


@dataclass(frozen=True)
class FollowUpAnswers:
    """The answers, None where nothing was asked; an error leaves the others as they are."""

    compared: tuple[SizeRow, ...] = ()
    longest: Longest | None = None
    kit: Kit | None = None
    remaining: Remaining | None = None
    out_of_thread: OutOfThread | None = None
    out_of_colour: OutOfColour | None = None
    errors: Mapping[str, EngineError] = field(default_factory=dict)


def read_follow_ups(
    options: Mapping[str, str],
    size: Size,
    closure: str = "",
    units: str = "cm",
    sizes: Iterable[NamedSize] = (),
    packs: Mapping[str, Pack] | None = None,
) -> FollowUps:
    """What those options ask of that rope; sizes to compare take the `closure`, or the usual one of each.

    `packs` by code are those that are known where none are typed.
    """
    errors, text = Errors(), {name: options.get(name, "").strip() for name in FOLLOW_UP_OPTIONS}
    codes, around, beads = size.pattern.palette.codes, size.around, size.beads

    def read(name: str, reading: Callable[[], T]) -> T | None:
        return errors.read(name, reading, None) if text[name] else None

    packs = read("packs", lambda: read_packs(text["packs"], codes)) or packs or {}
    asks_for_kit = bool(text["pieces"] or (text["packs"] and not text["have"]))
    return FollowUps(
        compare=errors.read("compare", lambda: _read_compare(text), ""),
        sizes=read("compare_sizes", lambda: read_sizes(text["compare_sizes"], closure, units, sizes)) or (),
        held=read("have", lambda: read_held(text["have"], codes, packs)) if "packs" not in errors.by_name else None,
        packs=packs,
        pieces=_read_pieces(text["pieces"] or "1") if asks_for_kit else None,
        worked=read("worked", lambda: read_worked(text["worked"], around, beads)),
        out_thread=errors.read("out_thread", lambda: _read_out_thread(text, around, beads), None),
        thread_left_mm=read("thread_left", lambda: read_thread_left(text["thread_left"])) or 0.0,
        out_colour=errors.read("out_colour", lambda: _read_out_colour(text, codes, around, beads), None),
        beads_left=read("beads_left", lambda: read_left(text["beads_left"], codes)) or {},
        errors=errors.by_name,
    )


def answer_follow_ups(answer: Answer, asked: FollowUps, units: str = "cm") -> FollowUpAnswers:
    """The answers to those follow-up questions; what could not be read is not answered."""
    errors = Errors(dict(asked.errors))

    def work(wanted: object, options: tuple[str, ...], working: Callable[[], T]) -> T | None:
        if not wanted or any(name in errors.by_name for name in options):
            return None
        return errors.read(options[0], working, None)

    return FollowUpAnswers(
        compared=work(asked.compare, ("compare", "compare_sizes"), lambda: _compared(answer, asked, units)) or (),
        longest=work(
            asked.held is not None,
            ("have", "packs"),
            lambda: _longest(answer, asked),
        ),
        kit=work(asked.pieces is not None, ("pieces", "packs"), lambda: kit(answer, asked.pieces or 0, asked.packs)),
        remaining=work(
            asked.worked is not None,
            ("worked",),
            lambda: remaining(answer.size, asked.worked or 0, answer.materials.spare),
        ),
        out_of_thread=work(
            asked.out_thread is not None,
            ("out_thread", "thread_left"),
            lambda: out_of_thread(answer, _place(answer, asked), asked.thread_left_mm),
        ),
        out_of_colour=work(
            asked.out_colour is not None, ("out_colour", "beads_left"), lambda: _out_of_colour(answer, asked)
        ),
        errors=errors.by_name,
    )


def read_sizes(text: str, closure: str, units: str, own: Iterable[NamedSize] = ()) -> tuple[NamedSize, ...]:
    """Sizes to compare: "40 cm, 45 cm, Opera, 2-8"; the closure is the usual one of each where none is given.

    Raises an EngineError naming the option.
    """
    own = tuple(own)
    names = [name for name in (part.strip() for part in re.split(r",\s+|;|\n", text)) if name]
    try:
        return tuple(NamedSize("Compared", name, _asked_as(name, closure, units, own)) for name in names)
    except EngineError as error:
        raise error.at("compare_sizes") from None


def _asked_as(name: str, closure: str, units: str, own: tuple[NamedSize, ...]) -> Question:
    return named_question(name, closure, own) or Question(typed_length(name, units), closure or USUAL_CLOSURE)


def _read_compare(text: Mapping[str, str]) -> str:
    compare = text["compare"] or ("sizes" if text["compare_sizes"] else "")
    if compare and compare not in COMPARED:
        raise ChoiceError("Compare", compare, COMPARED, "compare")
    return compare


def _read_pieces(text: str) -> int:
    return int(text) if text.isdecimal() and len(text) < 7 else 0


def _read_out_thread(text: Mapping[str, str], around: int, beads: int) -> int | OnThread | None:
    if not text["out_thread"]:
        if text["thread_left"]:
            raise SizeError("Say where the thread ran out, such as 480, 12/3 or thread 2: 40.", "out_thread")
        return None
    return read_place(text["out_thread"], around, beads)


def _read_out_colour(text: Mapping[str, str], codes: tuple[str, ...], around: int, beads: int) -> RanOut | None:
    if not text["out_colour"]:
        if text["beads_left"]:
            raise SizeError(f"Say which colour ran out, such as {codes[0]} 120.", "out_colour")
        return None
    return read_out(text["out_colour"], codes, around, beads)


def _compared(answer: Answer, asked: FollowUps, units: str) -> tuple[SizeRow, ...]:
    if asked.compare == "kinds":
        return in_kinds(answer, units)
    if not asked.sizes:
        return size_table(answer, units)
    rows = in_sizes(answer, asked.sizes, units)
    worked = {row.size.name for row in rows}
    if too_short := [size.name for size in asked.sizes if size.name not in worked]:
        raise SizeError(f"{', '.join(too_short)} cannot be worked in this rope.", "compare_sizes")
    return rows


def _longest(answer: Answer, asked: FollowUps) -> Longest:
    held = asked.held or Held({}, 0.0)
    beads = beads_in_hand(answer.size, held.by_code)
    return longest(answer.size, beads, answer.materials.spare_asked, held.kept_back)


def _place(answer: Answer, asked: FollowUps) -> int:
    place = asked.out_thread
    return place_on_thread(answer, place.number, place.beads) if isinstance(place, OnThread) else place or 0


def _out_of_colour(answer: Answer, asked: FollowUps) -> OutOfColour:
    ran_out = asked.out_colour
    if ran_out is None:
        raise SizeError("Say which colour ran out.", "out_colour")
    return out_of_colour(answer, ran_out.code, ran_out.had, ran_out.worked, asked.beads_left)
