"""What a customer wants: a finished size, how the piece ends, the beads, the stitch, and how to round."""

from __future__ import annotations

import re
from dataclasses import dataclass

from engine.counting.closures import Closure, closure_named
from engine.errors import ChoiceError, SizeError
from engine.pattern.pattern import STITCHES

ROUNDINGS = ("bead", "pass", "up", "down")  # to the bead, or to the nearest, next or last whole pass
EASE_MM = 15.0  # comfortable ease over the wrist is 12.5 to 25 mm (published)


@dataclass(frozen=True)
class Question:
    """What is wanted. Without a length and a wrist: one pass of the chart, with start and end.

    `length_mm` is the rope for `open`, the finished length with its closure for `clasp` and `glued`, the inner girth
    for `ring`. `wrist_mm` asks for a piece that lies close: wrist + ease + π × thickness. `over_hand`: the length is
    the girth of a hand that has to pass through the ring. `kind` and `stitch` take the place of the pattern's own.
    `pass_mm` is what one pass of the chart measures in the asker's own hands; it corrects every number. Raises
    ChoiceError or SizeError.
    """

    length_mm: float | None = None
    closure: str = "open"
    kind: str | None = None
    stitch: str | None = None
    wrist_mm: float | None = None
    ease_mm: float | None = None
    rounding: str = "bead"
    pass_mm: float | None = None
    over_hand: bool = False

    def __post_init__(self) -> None:
        closure = closure_named(self.closure)
        if self.stitch is not None and self.stitch not in STITCHES:
            raise ChoiceError("Stitch", self.stitch, STITCHES, "stitch")
        if self.rounding not in ROUNDINGS:
            raise ChoiceError("Round to", self.rounding, ROUNDINGS, "round")
        if self.length_mm is not None and self.wrist_mm is not None:
            raise SizeError("Give a length or a wrist, not both.", "wrist")
        if self.ease_mm is not None and self.wrist_mm is None:
            raise SizeError("Ease is added to a wrist; give the wrist too.", "ease")
        if self.over_hand and not closure.worked_shut:
            raise SizeError("A hand girth asks for a ring that is worked shut.", "closure")

    @property
    def ending(self) -> Closure:
        """How the piece ends."""
        return closure_named(self.closure)


@dataclass(frozen=True)
class NamedSize:
    """A finished size by its name: a word for its group, the question that asks for it, and what it is for."""

    group: str
    name: str
    question: Question
    about: str = ""

    @property
    def key(self) -> str:
        """The name in an address: lower case, words joined by hyphens."""
        return re.sub(r"[^a-z0-9]+", "-", self.name.lower().replace("é", "e")).strip("-")
