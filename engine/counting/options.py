"""The options of a question as people write them, on the command line, in an address or in a form, to engine values."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import TypeVar

from engine.counting.finished import named_question, ring_question
from engine.counting.purchase import SPARE, check_spare
from engine.counting.questions import NamedSize, Question
from engine.counting.stringing import PLANS, PLANS_IN_WORDS, Plan
from engine.errors import ChoiceError, EngineError, LengthError, PlanError, SizeError, shortened
from engine.numbers import NOUGHT, typed_length
from engine.pattern.pattern import HANDS, Pattern, keep_the_picture, left_handed
from engine.units import parse_length

SIZE_OPTIONS = ("length", "closure", "kind", "stitch", "wrist", "ease", "round", "pass_length", "hand_girth", "inner")
LENGTHS = ("wrist", "ease", "hand_girth", "inner", "pass_length")
USUAL = "usual"  # the closure that is taken for granted
USUAL_CLOSURE = "clasp"

_NUMBER = re.compile(r"[0-9]{1,9}(?:[.,][0-9]{1,9})?")
_JOINS = re.compile(r"joins\b\s*(?:after\s+)?(.*)", re.IGNORECASE | re.DOTALL)
_PLACE = re.compile(r"[0-9]{1,9}")
_UNCLEAR = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+")

T = TypeVar("T")


@dataclass
class Errors:
    """What is wrong with options, the first error of each by its name."""

    by_name: dict[str, EngineError] = field(default_factory=dict)

    def read(self, name: str, reading: Callable[[], T], otherwise: T) -> T:
        """What the reading gives, or the other value and its error kept under the name that the error gives."""
        try:
            return reading()
        except EngineError as error:
            self.by_name.setdefault(error.field or name, error)
            return otherwise

    def check(self) -> None:
        """Raises the first error."""
        for name, error in self.by_name.items():
            raise error.at(name)


def read_question(options: Mapping[str, str | None], units: str = "", sizes: Iterable[NamedSize] = ()) -> Question:
    """The question that the size options ask; those left out or empty take their defaults.

    `length` may be the name of a finished size, of `sizes` too, or of a bangle size. A bare number is a length in those
    `units`, and an error without them. Raises LengthError, ChoiceError or SizeError, naming the option.
    """
    errors = Errors()
    question = question_of(options, errors, units, sizes)
    errors.check()
    return question


def question_of(
    options: Mapping[str, str | None], errors: Errors, units: str = "", sizes: Iterable[NamedSize] = ()
) -> Question:
    """As `read_question`; every error is kept by its option, and the question is then that of one pass."""
    given = {name: text.strip() for name, text in options.items() if text and text.strip()}
    lengths = {
        name: errors.read(name, lambda name=name: _length(given[name], units, name), None)  # type: ignore[misc]
        for name in LENGTHS
        if name in given
    }
    asked = errors.read("length", lambda: _asked(given, units, tuple(sizes)), Question())
    if errors.by_name:
        return Question()
    return errors.read("", lambda: _with_options(asked, given, lengths), Question())


def _asked(given: Mapping[str, str], units: str, sizes: tuple[NamedSize, ...]) -> Question:
    """The size that `length` and `closure` ask for. Raises an EngineError."""
    closure = given.get("closure", "")
    text = given.get("length", "")
    if question := named_question(text, "" if closure == USUAL else closure, sizes):
        return question
    return Question(
        length_mm=_length(text, units, "length") if text else None,
        closure=_usual_closure(given) if closure == USUAL else closure or "open",
    )


def _usual_closure(given: Mapping[str, str]) -> str:
    """What is taken for granted: a clasp where a length or a wrist is asked for."""
    if "hand_girth" in given or "inner" in given:
        return "ring"
    return USUAL_CLOSURE if "length" in given or "wrist" in given else "open"


def _with_options(asked: Question, given: Mapping[str, str], lengths: Mapping[str, float | None]) -> Question:
    question = replace(
        asked,
        kind=given.get("kind"),
        stitch=given.get("stitch"),
        wrist_mm=lengths.get("wrist", asked.wrist_mm),
        ease_mm=lengths.get("ease", asked.ease_mm),
        rounding=given.get("round", "bead"),
        pass_mm=lengths.get("pass_length"),
    )
    return ring_question(question, lengths.get("hand_girth"), lengths.get("inner"))


def _length(text: str, units: str, name: str) -> float:
    if name == "ease" and NOUGHT.fullmatch(text):
        return 0.0
    return typed_length(text, units, name) if units else parse_length(text, name)


def read_plan(text: str | None) -> Plan:
    """The plan for threads: "whole", "chart" (the default), metres such as 4, or "joins 480, 960". Raises PlanError."""
    given = (text or "chart").strip()
    if given in PLANS:
        return given
    if joins := _JOINS.fullmatch(given):
        return read_joins(joins[1])
    try:
        metres = _number(given) if _NUMBER.fullmatch(given) else parse_length(given, "threads") / 1000
    except LengthError:
        metres = 0.0
    if metres <= 0:
        raise PlanError(f"“{shortened(given)}” is not a plan for threads; expected {PLANS_IN_WORDS}.", "threads")
    return metres


def read_joins(text: str) -> tuple[int, ...]:
    """The beads after which a thread is joined: "480, 960". Raises PlanError."""
    parts = [part for part in re.split(r"[,;]?\s+(?:and\s+)?|;", text.strip().rstrip(".,;")) if part]
    for part in parts:
        if _UNCLEAR.fullmatch(part):
            raise PlanError(
                f"“{shortened(part)}” may be one bead or several; write large numbers without a comma, and "
                "a space between joins.",
                "threads",
            )
    places = [place for part in parts for place in part.split(",")]
    if not places or not all(_PLACE.fullmatch(place) for place in places):
        raise PlanError(
            f"“{shortened(text)}” does not say where threads are joined; expected beads counted from the "
            "first one worked, such as 480, 960.",
            "threads",
        )
    return tuple(map(int, places))


def read_spare(text: str | None, otherwise: float = SPARE) -> float:
    """Spare in percent, or what is usual where nothing is said. Raises SizeError."""
    given = (text or "").strip().removesuffix("%").strip()
    if not given:
        return otherwise
    if not _NUMBER.fullmatch(given):
        raise SizeError(f"“{shortened(given)}” is not a spare; expected percent such as 10.", "spare")
    spare = _number(given)
    check_spare(spare)
    return spare


def in_hand(pattern: Pattern, hand: str | None, keep_picture: bool = False) -> Pattern:
    """The pattern for that hand: as it is, mirrored, or with its picture kept. Raises ChoiceError."""
    if not hand or hand == pattern.hand:
        return pattern
    if hand not in HANDS:
        raise ChoiceError("Hand", hand, HANDS, "hand")
    return keep_the_picture(pattern) if keep_picture else left_handed(pattern)


def _number(text: str) -> float:
    return float(text.replace(",", "."))
