"""The options of a question as people write them, on the command line, in an address or in a form, to engine values."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import NamedTuple, TypeVar

from engine.counting.cuts import BALANCED, PLANS, PLANS_IN_WORDS, Plan
from engine.counting.finished import named_question, ring_question
from engine.counting.purchase import SPARE, check_spare
from engine.counting.questions import NamedSize, Question
from engine.errors import ChoiceError, EngineError, LengthError, PlanError, SizeError, shortened
from engine.numbers import NOUGHT, typed_length
from engine.pattern.pattern import HANDS, Pattern, keep_the_picture, left_handed
from engine.units import length, parse_length

SIZE_OPTIONS = (
    "length",
    "closure",
    "kind",
    "stitch",
    "wrist",
    "neck",
    "ease",
    "round",
    "pass_length",
    "hand_girth",
    "inner",
    "closure_length",
    "middle",
)
LENGTHS = ("wrist", "neck", "ease", "hand_girth", "inner", "closure_length")
USUAL = "usual"  # the closure that is taken for granted
USUAL_CLOSURE = "clasp"

_CHANGED = re.compile(r"(?P<by>.+?)\s+(?P<way>shorter|less|longer|more)", re.IGNORECASE)
_PASSES = re.compile(
    r"(?P<passes>[0-9]{1,5})\s*(?:passes|pass|times|x|×)\s*(?:measure|measures|make|are|=|:)?\s*(?P<length>.+)",
    re.IGNORECASE,
)
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


def read_question(
    options: Mapping[str, str | None],
    units: str = "",
    sizes: Iterable[NamedSize] = (),
    last: Question | None = None,
) -> Question:
    """The question that the size options ask; those left out or empty take their defaults.

    `length` may be the name of a finished size, of `sizes` too, or of a bangle size, or be told by the `last` question:
    "1 cm shorter". A bare number is a length in those `units`, and an error without them. Raises LengthError,
    ChoiceError or SizeError, naming the option.
    """
    errors = Errors()
    question = question_of(options, errors, units, sizes, last)
    errors.check()
    return question


def question_of(
    options: Mapping[str, str | None],
    errors: Errors,
    units: str = "",
    sizes: Iterable[NamedSize] = (),
    last: Question | None = None,
) -> Question:
    """As `read_question`; every error is kept by its option, and the question is then that of one pass."""
    given = {name: text.strip() for name, text in options.items() if text and text.strip()}
    lengths = {
        name: errors.read(name, lambda name=name: _length(given[name], units, name), None)  # type: ignore[misc]
        for name in LENGTHS
        if name in given
    }
    measured = errors.read("pass_length", lambda: _read_own_pass(given.get("pass_length", ""), units), None)
    asked = errors.read("length", lambda: _asked(given, units, tuple(sizes), last), Question())
    if errors.by_name:
        return Question()
    return errors.read("", lambda: _with_options(asked, given, lengths, measured), Question())


def _asked(given: Mapping[str, str], units: str, sizes: tuple[NamedSize, ...], last: Question | None) -> Question:
    """The size that `length` and `closure` ask for. Raises an EngineError."""
    closure = given.get("closure", "")
    text = given.get("length", "")
    if question := named_question(text, "" if closure == USUAL else closure, sizes):
        return question
    if changed := _CHANGED.fullmatch(text):
        return _changed(changed, closure, units, last)
    return Question(
        length_mm=_length(text, units, "length") if text else None,
        closure=_usual_closure(given) if closure == USUAL else closure or "open",
    )


def is_relative(text: str) -> bool:
    """Whether a length is told by the last one: "1 cm shorter"."""
    return _CHANGED.fullmatch(text.strip()) is not None


def _changed(changed: re.Match[str], closure: str, units: str, last: Question | None) -> Question:
    """The last question with another length: "1 cm shorter". Raises SizeError where it had none."""
    if last is None or last.length_mm is None:
        raise SizeError(
            f"“{shortened(changed[0])}” goes by the length asked for before; ask for a length first.", "length"
        )
    by_mm = _length(changed["by"], units, "length")
    length_mm = last.length_mm + (-by_mm if changed["way"].lower() in ("shorter", "less") else by_mm)
    if length_mm <= 0:
        raise SizeError(f"Nothing is left of the length asked for before, {length(last.length_mm)}.", "length")
    return replace(last, length_mm=length_mm, closure=last.closure if closure in ("", USUAL) else closure)


def _usual_closure(given: Mapping[str, str]) -> str:
    """What is taken for granted: a clasp where a length, a wrist or a neck is asked for, a ring for a bangle."""
    if "hand_girth" in given or "inner" in given:
        return "ring"
    return USUAL_CLOSURE if {"length", "wrist", "neck"} & set(given) else "open"


def _with_options(
    asked: Question, given: Mapping[str, str], lengths: Mapping[str, float | None], measured: OwnPass | None
) -> Question:
    question = replace(
        asked,
        kind=given.get("kind"),
        stitch=given.get("stitch"),
        wrist_mm=lengths.get("wrist", asked.wrist_mm),
        girth_mm=lengths.get("neck", asked.girth_mm),
        ease_mm=lengths.get("ease", asked.ease_mm),
        rounding=given.get("round", "bead"),
        pass_mm=measured.pass_mm if measured else None,
        passes_measured=measured.passes if measured else 1,
        closure_mm=lengths.get("closure_length"),
        middle=given.get("middle", "keep"),
    )
    return ring_question(question, lengths.get("hand_girth"), lengths.get("inner"))


class OwnPass(NamedTuple):
    """What a pass measures in the asker's own hands, read over so many passes at once."""

    pass_mm: float
    passes: int


def _read_own_pass(text: str, units: str) -> OwnPass | None:
    """ "61 mm" for one pass, or "20 passes measure 36 mm". Raises an EngineError."""
    if not text:
        return None
    several = _PASSES.fullmatch(text)
    if several is None:
        return OwnPass(_length(text, units, "pass_length"), 1)
    passes = int(several["passes"])
    if passes < 1:
        raise SizeError("Measure one pass or more.", "pass_length")
    return OwnPass(_length(several["length"], units, "pass_length") / passes, passes)


def _length(text: str, units: str, name: str) -> float:
    if name in ("ease", "closure_length") and NOUGHT.fullmatch(text):
        return 0.0
    return typed_length(text, units, name) if units else parse_length(text, name)


def read_plan(text: str | None) -> Plan:
    """The plan for threads: one of PLANS ("balanced" by default), metres such as 4, or "joins 480, 960".

    Raises PlanError.
    """
    given = (text or BALANCED).strip()
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


def read_longest(text: str | None) -> float | None:
    """The longest string of beads that the asker wants on a thread, in mm; a bare number is in metres. None: not said.

    Raises PlanError.
    """
    given = (text or "").strip()
    if not given:
        return None
    try:
        longest_mm = _number(given) * 1000 if _NUMBER.fullmatch(given) else parse_length(given, "longest")
    except LengthError:
        longest_mm = 0.0
    if longest_mm <= 0:
        raise PlanError(f"“{shortened(given)}” is not how long a string may be; expected metres such as 4.", "longest")
    return longest_mm


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
