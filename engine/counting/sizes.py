"""A question (finished size, closure, kind, stitch, rounding) to its size: beads to work and the rope they make."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property
from math import pi

from engine.counting.closures import Closure
from engine.counting.kinds import Kind
from engine.counting.questions import EASE_MM, Question
from engine.counting.rings import closes, nearest_ring, round_down, round_up, smallest_ring, stepped
from engine.counting.rope import Rope, helix, rope
from engine.counting.workshop import Workshop
from engine.errors import ChoiceError, SizeError, UnknownKind
from engine.pattern.pattern import Pattern
from engine.pattern.repeats import Drift, drift
from engine.units import count, length, millimetres, whole

MOST_WORKED = 200_000
WHOLE_PASSES: Mapping[str, Callable[[float], int]] = {"pass": whole, "up": round_up, "down": round_down}


@dataclass(frozen=True)
class Size:
    """What a question comes to: beads to work and the rope they make. Lengths in mm.

    `kinds` are those of the palette entries, `main_kind` the one most beads of the chart have, `closure_mm` what the
    closure adds. `length_mm` is the finished size asked for, `finished_mm` what it becomes with that many beads, both
    measured as the closure measures (a ring: inner girth).
    """

    pattern: Pattern
    workshop: Workshop
    question: Question
    kinds: tuple[Kind, ...]
    main_kind: Kind
    stitch: str
    rope: Rope
    beads: int
    closure_mm: float
    length_mm: float

    @property
    def around(self) -> int:
        return self.pattern.around

    @property
    def closure(self) -> Closure:
        return self.question.ending

    @property
    def rope_mm(self) -> float:
        return self.beads * self.rope.bead_mm

    @property
    def finished_mm(self) -> float:
        return _finished_mm(self.closure, self.closure_mm, self.rope, self.rope_mm)

    @property
    def thickness_mm(self) -> float:
        return self.rope.thickness_mm

    @property
    def passes(self) -> float:
        """Times through the chart."""
        return (self.beads - self.pattern.fixed_beads) / len(self.pattern.chart)

    @property
    def closes(self) -> bool:
        """Whether the rope closes in colour as a ring; a start or an end is joined to the other after whole passes."""
        return closes(self.pattern, self.beads)

    @property
    def joins_end_to_start(self) -> bool:
        return bool(self.pattern.fixed_beads) and self.closure.worked_shut

    @property
    def closing(self) -> Drift:
        """How far a ring turns at its seam, as information."""
        return drift(self.around, self.beads)

    @cached_property
    def worked(self) -> bytes:
        """The beads of the rope in working order, as palette indices."""
        return self.pattern.worked(self.beads)


def size(pattern: Pattern, question: Question, workshop: Workshop | None = None) -> Size:
    """The size of that question. Raises SizeError or ChoiceError where it cannot be worked."""
    return _sized(_Resolved.of(pattern, question, workshop or Workshop()), None)


def size_of_beads(pattern: Pattern, question: Question, beads: int, workshop: Workshop | None = None) -> Size:
    """The size of a rope of that many beads; the length of the question does not count."""
    return _sized(_Resolved.of(pattern, question, workshop or Workshop()), beads)


def entry_kinds(pattern: Pattern, question: Question, workshop: Workshop) -> tuple[Kind, ...]:
    """The kind of each palette entry: the one asked for, else its own. Raises ChoiceError for one that is not known."""
    if question.kind and question.kind not in workshop.kinds:
        raise ChoiceError("Bead kind", question.kind, workshop.kinds, "kind")
    for entry in pattern.palette:
        if not question.kind and entry.kind not in workshop.kinds:
            raise UnknownKind(entry.code, entry.kind)
    return tuple(workshop.kinds[question.kind or entry.kind] for entry in pattern.palette)


@dataclass(frozen=True)
class _Resolved:
    """A question with its names looked up: everything that a size needs but the number of beads."""

    pattern: Pattern
    workshop: Workshop
    question: Question
    kinds: tuple[Kind, ...]
    main_kind: Kind
    stitch: str
    rope: Rope
    closure_mm: float

    @classmethod
    def of(cls, pattern: Pattern, question: Question, workshop: Workshop) -> _Resolved:
        """Raises ChoiceError for a bead kind that is not known."""
        kinds = entry_kinds(pattern, question, workshop)
        beads_by_kind = _beads_by_kind(pattern.chart, kinds)
        stitch = question.stitch or pattern.stitch_worked
        return cls(
            pattern=pattern,
            workshop=workshop,
            question=question,
            kinds=kinds,
            main_kind=workshop.kinds[max(beads_by_kind, key=beads_by_kind.__getitem__)],
            stitch=stitch,
            rope=_rope(pattern, question, stitch, beads_by_kind, workshop),
            closure_mm=workshop.allowance_mm(question.ending),
        )


def _sized(resolved: _Resolved, beads: int | None) -> Size:
    """The size of so many beads, or where none are given of what the question asks."""
    question, closure_mm, made = resolved.question, resolved.closure_mm, resolved.rope
    wanted_mm = _wanted_rope_mm(question, closure_mm, made) if beads is None else None
    worked = _beads(resolved.pattern, question, made, wanted_mm) if beads is None else beads
    finished_mm = _finished_mm(question.ending, closure_mm, made, worked * made.bead_mm)
    if finished_mm <= 0:
        raise SizeError(f"A ring of {count(worked)} beads has no room inside; ask for a longer one.", "length")
    asked_mm = None if wanted_mm is None else _finished_mm(question.ending, closure_mm, made, wanted_mm)
    return Size(
        pattern=resolved.pattern,
        workshop=resolved.workshop,
        question=question,
        kinds=resolved.kinds,
        main_kind=resolved.main_kind,
        stitch=resolved.stitch,
        rope=made,
        beads=worked,
        closure_mm=closure_mm,
        length_mm=finished_mm if asked_mm is None else asked_mm,
    )


def _rope(
    pattern: Pattern, question: Question, stitch: str, beads_by_kind: Mapping[str, int], workshop: Workshop
) -> Rope:
    """The rope in the asker's own hands where they measured it, else by swatch or estimate."""
    if question.pass_mm is not None:
        return Rope(
            around=pattern.around,
            working_mm=question.pass_mm / len(pattern.chart) / helix(pattern.around).rise,
            measured=True,
            source=f"your pass: {millimetres(question.pass_mm)}",
            sure=0.0,
        )
    return rope(pattern.around, stitch, beads_by_kind, workshop.kinds, workshop.swatches)


def _beads_by_kind(beads: bytes, kinds: tuple[Kind, ...]) -> Mapping[str, int]:
    """Beads of each kind, which weigh the working diameter of a mixed rope."""
    by_kind: Counter[str] = Counter()
    for index, kind in enumerate(kinds):
        by_kind[kind.name] += beads.count(index)
    return by_kind


def _wanted_rope_mm(question: Question, closure_mm: float, made: Rope) -> float | None:
    """Length of rope that is wanted, or None for one pass."""
    if question.wrist_mm is not None:
        ease_mm = EASE_MM if question.ease_mm is None else question.ease_mm
        return question.wrist_mm + ease_mm + pi * made.thickness_mm - closure_mm
    if question.length_mm is None:
        return None
    return question.length_mm - closure_mm + (pi * made.thickness_mm if question.ending.worked_shut else 0.0)


def _finished_mm(closure: Closure, closure_mm: float, made: Rope, rope_mm: float) -> float:
    """The finished size of that much rope, as its closure measures."""
    return rope_mm - pi * made.thickness_mm if closure.worked_shut else rope_mm + closure_mm


def _beads(pattern: Pattern, question: Question, made: Rope, wanted_mm: float | None) -> int:
    chart, fixed = len(pattern.chart), pattern.fixed_beads
    if wanted_mm is None:
        return fixed + chart
    exact = wanted_mm / made.bead_mm
    _check_range(pattern, question, made, exact)
    if question.rounding != "bead":
        least = smallest_ring(pattern) if question.ending.worked_shut else 1
        return stepped(exact, fixed, chart, WHOLE_PASSES[question.rounding], least)
    if question.ending.worked_shut:
        return nearest_ring(pattern, exact, round_up if question.over_hand else whole)
    return whole(exact)


def _check_range(pattern: Pattern, question: Question, made: Rope, exact: float) -> None:
    field_name = "wrist" if question.wrist_mm is not None else "length"
    if whole(exact) < pattern.around:
        round_mm = pattern.around * made.bead_mm
        raise SizeError(
            f"That leaves {length(max(0.0, exact * made.bead_mm))} of rope, less than one round "
            f"({length(round_mm)}); ask for a longer piece.",
            field_name,
        )
    if whole(exact) < pattern.fixed_beads:
        raise SizeError(
            f"Start and end alone make {length(pattern.fixed_beads * made.bead_mm)} of rope; ask for a longer piece.",
            field_name,
        )
    if exact > MOST_WORKED:
        raise SizeError(
            f"That is a rope of {count(exact)} beads; at most {count(MOST_WORKED)} are counted.", field_name
        )
