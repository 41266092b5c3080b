"""The options of a question as people write them, on the command line, in an address or in a form, to engine values."""

from __future__ import annotations

import re
from collections.abc import Mapping

from engine.counting.materials import SPARE
from engine.counting.sizes import Question
from engine.counting.stringing import PLANS, Plan
from engine.errors import ChoiceError, LengthError, PlanError, SizeError, shortened
from engine.pattern.pattern import HANDS, Pattern, keep_the_picture, left_handed
from engine.units import parse_length

SIZE_OPTIONS = ("length", "closure", "kind", "stitch", "wrist", "ease", "round", "pass_length")

_NUMBER = re.compile(r"[0-9]{1,9}(?:[.,][0-9]{1,9})?")


def read_question(options: Mapping[str, str | None]) -> Question:
    """The question that the size options ask; those left out or empty take their defaults.

    Raises LengthError, ChoiceError or SizeError, naming the option.
    """
    given = {name: text.strip() for name, text in options.items() if text and text.strip()}
    return Question(
        length_mm=_length(given, "length"), closure=given.get("closure", "open"), kind=given.get("kind"),
        stitch=given.get("stitch"), wrist_mm=_length(given, "wrist"), ease_mm=_ease(given),
        rounding=given.get("round", "bead"), pass_mm=_length(given, "pass_length"))


def read_plan(text: str | None) -> Plan:
    """The plan for threads: "whole", "chart" (the default), or metres such as 4. Raises PlanError."""
    given = (text or "chart").strip()
    if given in PLANS:
        return given
    try:
        metres = _number(given) if _NUMBER.fullmatch(given) else parse_length(given, "threads") / 1000
    except LengthError:
        metres = 0.0
    if metres <= 0:
        raise PlanError(f"“{shortened(given)}” is not a plan for threads; expected whole, chart or metres such as 4.",
                        "threads")
    return metres


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
