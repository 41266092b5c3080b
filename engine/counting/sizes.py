"""A question (finished size, closure, kind, stitch, rounding) to its size: beads to work and the rope they make."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from math import ceil, floor, pi

from engine.counting.kinds import KINDS, Kind
from engine.counting.rope import Rope, Swatch, helix, rope
from engine.errors import ChoiceError, SizeError, UnknownKind
from engine.pattern.pattern import STITCHES, Pattern
from engine.pattern.repeats import Drift, closes, drift, least_ring
from engine.units import count, length, millimetres, whole

CLOSURES = ("open", "clasp", "glued", "ring")
ROUNDINGS = ("bead", "pass", "up", "down")  # to the bead, or to the nearest, next or last whole pass
CLASP_MM = 25.0  # "almost an inch" (published)
GLUED_MM = 15.0  # estimate
EASE_MM = 15.0  # comfortable ease over the wrist is 12.5 to 25 mm (published)
MOST_WORKED = 200_000


@dataclass(frozen=True)
class Question:
    """What is wanted. Without a length and a wrist: one pass of the chart, with start and end.

    `length_mm` is the rope for `open`, the finished length with its closure for `clasp` and `glued`, the inner girth
    for `ring`. `wrist_mm` asks for a piece that lies close: wrist + ease + π × thickness. `kind` and `stitch` take the
    place of the pattern's own. `pass_mm` is what one pass of the chart measures in the asker's own hands; it corrects
    every number. Raises ChoiceError or SizeError.
    """

    length_mm: float | None = None
    closure: str = "open"
    kind: str | None = None
    stitch: str | None = None
    wrist_mm: float | None = None
    ease_mm: float | None = None
    rounding: str = "bead"
    pass_mm: float | None = None

    def __post_init__(self) -> None:
        if self.closure not in CLOSURES:
            raise ChoiceError("Closure", self.closure, CLOSURES, "closure")
        if self.stitch is not None and self.stitch not in STITCHES:
            raise ChoiceError("Stitch", self.stitch, STITCHES, "stitch")
        if self.rounding not in ROUNDINGS:
            raise ChoiceError("Round to", self.rounding, ROUNDINGS, "round")
        if self.length_mm is not None and self.wrist_mm is not None:
            raise SizeError("Give a length or a wrist, not both.", "wrist")
        if self.ease_mm is not None and self.wrist_mm is None:
            raise SizeError("Ease is added to a wrist; give the wrist too.", "ease")

    @property
    def over_hand(self) -> bool:
        """Whether a ring is asked for through which a hand goes; its length is then the girth of the hand."""
        return self.closure == "ring" and self.rounding == "up"


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


@dataclass(frozen=True)
class Workshop:
    """The maker's own numbers: bead kinds, swatches, and what a closure adds to the rope in mm.

    `longest_mm` and `heaviest_g` are the most strung beads that can be handled on a thread (None: any), `sizes` the
    finished sizes that tables show (none: the usual ones).
    """

    kinds: Mapping[str, Kind] = field(default_factory=lambda: KINDS)
    swatches: tuple[Swatch, ...] = ()
    clasp_mm: float = CLASP_MM
    glued_mm: float = GLUED_MM
    longest_mm: float | None = None
    heaviest_g: float | None = None
    sizes: tuple[NamedSize, ...] = ()

    def closure_mm(self, closure: str) -> float:
        return {"open": 0.0, "clasp": self.clasp_mm, "glued": self.glued_mm, "ring": 0.0}[closure]


@dataclass(frozen=True)
class Size:
    """What a question comes to: beads to work and the rope they make. Lengths in mm.

    `length_mm` is the finished size asked for, `finished_mm` what it becomes with that many beads, both measured as
    the closure measures (a ring: inner girth). `closing` is how far a ring turns at its seam, as information.
    """

    question: Question
    around: int
    stitch: str
    rope: Rope
    beads: int
    passes: float
    length_mm: float
    finished_mm: float
    closes: bool
    joins_end_to_start: bool
    closing: Drift

    @property
    def rope_mm(self) -> float:
        return self.beads * self.rope.bead_mm

    @property
    def thickness_mm(self) -> float:
        return self.rope.thickness_mm


def size(pattern: Pattern, question: Question, workshop: Workshop | None = None) -> Size:
    """The size of that question. Raises SizeError or ChoiceError where it cannot be worked."""
    workshop = workshop or Workshop()
    made = _rope(pattern, question, workshop)
    wanted = _wanted_rope_mm(question, workshop, made)
    beads = _beads(pattern, question, made, wanted)
    asked = None if wanted is None else _finished_mm(question, workshop, made, wanted)
    return _sized(pattern, question, workshop, made, beads, asked)


def size_of_beads(pattern: Pattern, question: Question, beads: int, workshop: Workshop | None = None) -> Size:
    """The size of a rope of that many beads; the length of the question does not count."""
    workshop = workshop or Workshop()
    return _sized(pattern, question, workshop, _rope(pattern, question, workshop), beads, None)


def _sized(
    pattern: Pattern, question: Question, workshop: Workshop, made: Rope, beads: int, asked_mm: float | None
) -> Size:
    finished = _finished_mm(question, workshop, made, beads * made.bead_mm)
    if finished <= 0:
        raise SizeError(f"A ring of {count(beads)} beads has no room inside; ask for a longer one.", "length")
    seam = bool(pattern.start or pattern.end) and question.closure == "ring"
    stitch = question.stitch or pattern.stitch_worked
    return Size(
        question,
        pattern.around,
        stitch,
        made,
        beads,
        _passes(pattern, beads),
        finished if asked_mm is None else asked_mm,
        finished,
        _closes(pattern, beads),
        seam,
        drift(pattern.around, beads),
    )


def _rope(pattern: Pattern, question: Question, workshop: Workshop) -> Rope:
    """The rope in the asker's own hands where they measured it, else by swatch or estimate."""
    if question.pass_mm is not None:
        working_mm = question.pass_mm / len(pattern.chart) / helix(pattern.around).rise
        return Rope(pattern.around, working_mm, True, f"your pass: {millimetres(question.pass_mm)}", 0.0)
    stitch = question.stitch or pattern.stitch_worked
    return rope(pattern.around, stitch, _beads_by_kind(pattern, question, workshop), workshop.kinds, workshop.swatches)


def kinds_of(pattern: Pattern, question: Question, workshop: Workshop) -> tuple[Kind, ...]:
    """The kind of each palette entry: the one asked for, else its own. Raises ChoiceError for one that is not known."""
    if question.kind and question.kind not in workshop.kinds:
        raise ChoiceError("Bead kind", question.kind, workshop.kinds, "kind")
    for entry in pattern.palette:
        if not question.kind and entry.kind not in workshop.kinds:
            raise UnknownKind(entry.code, entry.kind)
    return tuple(workshop.kinds[question.kind or entry.kind] for entry in pattern.palette)


def main_kind(pattern: Pattern, question: Question, workshop: Workshop) -> Kind:
    """The kind asked for, else the one most beads of the chart have. Raises ChoiceError."""
    found = _beads_by_kind(pattern, question, workshop)
    return workshop.kinds[max(found, key=found.__getitem__)]


def _beads_by_kind(pattern: Pattern, question: Question, workshop: Workshop) -> Mapping[str, int]:
    """Beads of one pass by kind, which weigh the working diameter of a mixed rope."""
    found: Counter[str] = Counter()
    for index, kind in enumerate(kinds_of(pattern, question, workshop)):
        found[kind.name] += pattern.chart.count(index)
    return found


def _wanted_rope_mm(question: Question, workshop: Workshop, made: Rope) -> float | None:
    """Length of rope that is wanted, or None for one pass."""
    closure_mm = workshop.closure_mm(question.closure)
    if question.wrist_mm is not None:
        ease = EASE_MM if question.ease_mm is None else question.ease_mm
        return question.wrist_mm + ease + pi * made.thickness_mm - closure_mm
    if question.length_mm is None:
        return None
    return question.length_mm - closure_mm + (pi * made.thickness_mm if question.closure == "ring" else 0.0)


def _finished_mm(question: Question, workshop: Workshop, made: Rope, rope_mm: float) -> float:
    """The finished size of that much rope, as its closure measures."""
    if question.closure == "ring":
        return rope_mm - pi * made.thickness_mm
    return rope_mm + workshop.closure_mm(question.closure)


def _beads(pattern: Pattern, question: Question, made: Rope, wanted_mm: float | None) -> int:
    fixed_beads, chart = len(pattern.start) + len(pattern.end), len(pattern.chart)
    if wanted_mm is None:
        return fixed_beads + chart
    exact = wanted_mm / made.bead_mm
    _check_range(pattern, question, made, exact)
    if question.closure == "ring":
        step = pattern.repeat if question.rounding == "bead" and not fixed_beads else chart
        return _stepped(exact, fixed_beads, step, least_ring(pattern.around), WHOLE.get(question.rounding, whole))
    if question.rounding != "bead":
        return _stepped(exact, fixed_beads, chart, 1, WHOLE[question.rounding])
    return whole(exact)


WHOLE: Mapping[str, Callable[[float], int]] = {"pass": whole, "up": ceil, "down": floor}


def _stepped(exact: float, fixed_beads: int, step: int, least: int, rounded: Callable[[float], int] = whole) -> int:
    """`fixed_beads` and whole steps near `exact`, one step at least, and not below `least` beads."""
    fewest = max(1, -(-(least - fixed_beads) // step))
    return fixed_beads + step * max(fewest, rounded((exact - fixed_beads) / step))


def _check_range(pattern: Pattern, question: Question, made: Rope, exact: float) -> None:
    fixed_beads = len(pattern.start) + len(pattern.end)
    field_name = "wrist" if question.wrist_mm is not None else "length"
    if whole(exact) < pattern.around:
        round_mm = pattern.around * made.bead_mm
        raise SizeError(
            f"That leaves {length(max(0.0, exact * made.bead_mm))} of rope, less than one round "
            f"({length(round_mm)}); ask for a longer piece.",
            field_name,
        )
    if whole(exact) < fixed_beads:
        raise SizeError(
            f"Start and end alone make {length(fixed_beads * made.bead_mm)} of rope; ask for a longer piece.",
            field_name,
        )
    if exact > MOST_WORKED:
        raise SizeError(
            f"That is a rope of {count(exact)} beads; at most {count(MOST_WORKED)} are counted.", field_name
        )


def _passes(pattern: Pattern, beads: int) -> float:
    return (beads - len(pattern.start) - len(pattern.end)) / len(pattern.chart)


def _closes(pattern: Pattern, beads: int) -> bool:
    """Whether the rope closes in colour as a ring; with a start or an end the seam joins them after whole passes."""
    if pattern.start or pattern.end:
        return beads >= least_ring(pattern.around) and _passes(pattern, beads).is_integer()
    return closes(pattern.around, pattern.repeat, beads)
