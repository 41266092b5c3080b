"""The options of a question as people write them, on the command line, in an address or in a form, to engine values."""

from __future__ import annotations

import re
from collections.abc import Mapping

from engine.counting.finished import ring_question
from engine.counting.materials import SPARE
from engine.counting.sizes import Question
from engine.counting.stringing import PLANS, PLANS_IN_WORDS, Plan
from engine.errors import ChoiceError, LengthError, PlanError, SizeError, shortened
from engine.pattern.pattern import HANDS, Pattern, keep_the_picture, left_handed
from engine.units import parse_length

SIZE_OPTIONS = ("length", "closure", "kind", "stitch", "wrist", "ease", "round", "pass_length", "hand_girth", "inner")

_NUMBER = re.compile(r"[0-9]{1,9}(?:[.,][0-9]{1,9})?")
_JOINS = re.compile(r"joins\b\s*(?:after\s+)?(.*)", re.IGNORECASE | re.DOTALL)
_PLACE = re.compile(r"[0-9]{1,9}")
_UNCLEAR = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+")


def read_question(options: Mapping[str, str | None]) -> Question:
    """The question that the size options ask; those left out or empty take their defaults.

    Raises LengthError, ChoiceError or SizeError, naming the option.
    """
    given = {name: text.strip() for name, text in options.items() if text and text.strip()}
    question = Question(
        length_mm=_length(given, "length"),
        closure=given.get("closure", "open"),
        kind=given.get("kind"),
        stitch=given.get("stitch"),
        wrist_mm=_length(given, "wrist"),
        ease_mm=_ease(given),
        rounding=given.get("round", "bead"),
        pass_mm=_length(given, "pass_length"),
    )
    return ring_question(question, _length(given, "hand_girth"), _length(given, "inner"))


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
    return _number(given)


def in_hand(pattern: Pattern, hand: str | None, keep_picture: bool = False) -> Pattern:
    """The pattern for that hand: as it is, mirrored, or with its picture kept. Raises ChoiceError."""
    if not hand or hand == pattern.hand:
        return pattern
    if hand not in HANDS:
        raise ChoiceError("Hand", hand, HANDS, "hand")
    return keep_the_picture(pattern) if keep_picture else left_handed(pattern)


def _length(given: Mapping[str, str], name: str) -> float | None:
    return parse_length(given[name], name) if name in given else None


def _ease(given: Mapping[str, str]) -> float | None:
    """Ease may be nought, with or without a unit."""
    text = given.get("ease")
    if text is not None and re.fullmatch(r"0+(?:[.,]0+)?\s*[a-z]*", text):
        return 0.0
    return _length(given, "ease")


def _number(text: str) -> float:
    return float(text.replace(",", "."))
