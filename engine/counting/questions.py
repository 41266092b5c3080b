"""What a customer wants: a finished size, how the piece ends, the beads, the stitch, and how to round."""

from __future__ import annotations

import re
from dataclasses import dataclass

from engine.counting.closures import Closure, closure_named
from engine.errors import ChoiceError, SizeError
from engine.pattern.pattern import STITCHES

ROUNDINGS = ("bead", "pass", "up", "down")  # to the bead, or to the nearest, next or last whole pass
MIDDLES = ("keep", "free")  # where whole passes are asked for: a motif stays in the middle, or may stand off it
NECK, INSIDE = "neck", "inner"  # what a piece may go round beside a wrist
EASE_MM = 15.0  # comfortable ease over the wrist is 12.5 to 25 mm (published)


@dataclass(frozen=True)
class Question:
    """What is wanted. Without a length and a girth: one pass of the chart, with start and end.

    `length_mm` is the rope for `open`, the finished length with its closure for `clasp` and `glued`, the inner girth
    for `ring`. `wrist_mm`, or `girth_mm` of anything else that it goes round (`girth_of` says what), asks for a piece
    that lies close: girth + ease + π × thickness. `over_hand`: the length is the girth of a hand that has to pass
    through the ring. `kind` and `stitch` take the place of the pattern's own. `pass_mm` is what one pass of the chart
    measures in the asker's own hands, read over so many `passes_measured` at once; it corrects every number.
    `closure_mm` is what this closure adds to the rope; `middle` is one of MIDDLES. Raises ChoiceError or SizeError.
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
    girth_mm: float | None = None
    girth_of: str = NECK
    closure_mm: float | None = None
    passes_measured: int = 1
    middle: str = "keep"

    def __post_init__(self) -> None:
        closure = closure_named(self.closure)
        if self.stitch is not None and self.stitch not in STITCHES:
            raise ChoiceError("Stitch", self.stitch, STITCHES, "stitch")
        if self.rounding not in ROUNDINGS:
            raise ChoiceError("Round to", self.rounding, ROUNDINGS, "round")
        if self.middle not in MIDDLES:
            raise ChoiceError("Middle", self.middle, MIDDLES, "middle")
        if self.length_mm is not None and self.wrist_mm is not None:
            raise SizeError("Give a length or a wrist, not both.", "wrist")
        if self.girth_mm is not None and (self.length_mm is not None or self.wrist_mm is not None):
            raise SizeError(f"Give a length, a wrist or a {self.girth_of}, and only one of them.", self.girth_of)
        if self.ease_mm is not None and self.wrist_mm is None and self.girth_mm is None:
            raise SizeError("Ease is added to a wrist; give the wrist too.", "ease")
        if self.over_hand and not closure.worked_shut:
            raise SizeError("A hand girth asks for a ring that is worked shut.", "closure")
        if self.closure_mm is not None and closure.allowance_mm is None:
            raise SizeError("A closure length is asked for with a clasp or glued ends.", "closure_length")

    @property
    def ending(self) -> Closure:
        """How the piece ends."""
        return closure_named(self.closure)

    @property
    def asks_for_length(self) -> bool:
        """Whether a size is asked for, and not just a pass of the chart."""
        return any(mm is not None for mm in (self.length_mm, self.wrist_mm, self.girth_mm))

    @property
    def close_girth_mm(self) -> float | None:
        """What a piece that lies close goes round, with the ease; None where a length is asked for."""
        if self.wrist_mm is not None:
            return self.wrist_mm + (EASE_MM if self.ease_mm is None else self.ease_mm)
        return None if self.girth_mm is None else self.girth_mm + (self.ease_mm or 0.0)

    @property
    def size_option(self) -> str:
        """The option by which the size is asked for."""
        if self.wrist_mm is not None:
            return "wrist"
        return "length" if self.girth_mm is None else self.girth_of


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
