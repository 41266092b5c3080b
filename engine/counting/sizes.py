"""A question (finished size, closure, kind, stitch, rounding) to its size: beads to work and the rope they make."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from math import pi

from engine.counting.closures import Closure
from engine.counting.kinds import Kind
from engine.counting.questions import Question
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

    `kinds` are those of the palette entries, `main_kind` the one most beads of the chart have. `rope` is that of the
    chart, `fixed_mm` the length of start and end, which are measured by their own beads; `closure_mm` is what the
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
    fixed_mm: float
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
        return self.rope_of(self.beads)

    def rope_of(self, beads: int) -> float:
        """Length of a rope of so many beads of this pattern, start and end among them."""
        return self.fixed_mm + (beads - self.pattern.fixed_beads) * self.rope.bead_mm

    @property
    def finished_mm(self) -> float:
        return self.finished_of(self.rope_mm)

    def finished_of(self, rope_mm: float) -> float:
        """The finished size of so much rope, as its closure measures."""
        return _finished_mm(self.closure, self.closure_mm, self.rope, rope_mm)

    @property
    def off_mm(self) -> float:
        """By how much the piece is longer than was asked for, below nought shorter."""
        return self.finished_mm - self.length_mm

    @property
    def thickness_mm(self) -> float:
        return self.rope.thickness_mm

    @property
    def passes(self) -> float:
        """Times through the chart."""
        return (self.beads - self.pattern.fixed_beads) / len(self.pattern.main.beads)

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
    fixed_mm: float
    closure_mm: float

    @classmethod
    def of(cls, pattern: Pattern, question: Question, workshop: Workshop) -> _Resolved:
        """Raises ChoiceError for a bead kind that is not known."""
        kinds = entry_kinds(pattern, question, workshop)
        stitch = question.stitch or pattern.stitch_worked
        measures = _Measures(pattern=pattern, question=question, kinds=kinds, stitch=stitch, workshop=workshop)
        in_chart = measures.beads_by_kind(pattern.main.beads)
        allowance_mm = workshop.allowance_mm(question.ending)
        return cls(
            pattern=pattern,
            workshop=workshop,
            question=question,
            kinds=kinds,
            main_kind=workshop.kinds[max(in_chart, key=in_chart.__getitem__)],
            stitch=stitch,
            rope=measures.chart_rope(),
            fixed_mm=measures.length_mm(pattern.start) + measures.length_mm(pattern.end),
            closure_mm=allowance_mm if question.closure_mm is None else question.closure_mm,
        )

    def rope_of(self, beads: int) -> float:
        return self.fixed_mm + (beads - self.pattern.fixed_beads) * self.rope.bead_mm


@dataclass(frozen=True)
class _Measures:
    """How long the parts of a rope are, each by its own beads."""

    pattern: Pattern
    question: Question
    kinds: tuple[Kind, ...]
    stitch: str
    workshop: Workshop

    def chart_rope(self) -> Rope:
        """The rope of the chart: in the asker's own hands where they measured it, else by swatch or estimate."""
        estimate = self.rope_of(self.pattern.main.beads)
        if self.question.pass_mm is None:
            return estimate
        return replace(estimate, working_mm=self._own_working_mm, measured=True, source=self._own_source, sure=0.0)

    def length_mm(self, beads: bytes) -> float:
        """Length of a start or an end; the asker's own pass of the chart corrects it in the same proportion."""
        if not beads:
            return 0.0
        estimated_mm = self.rope_of(beads).bead_mm * len(beads)
        if self.question.pass_mm is None:
            return estimated_mm
        return estimated_mm * self._own_working_mm / self.rope_of(self.pattern.main.beads).working_mm

    def rope_of(self, beads: bytes) -> Rope:
        """The rope of one part, by swatch or estimate."""
        pattern, workshop = self.pattern, self.workshop
        by_kind, in_all = (self.beads_by_kind(part) for part in (beads, pattern.drawn))
        mixed = sum(count > 0 for count in in_all.values()) > 1
        return rope(pattern.around, self.stitch, by_kind, workshop.kinds, workshop.swatches, mixed)

    def beads_by_kind(self, beads: bytes) -> Mapping[str, int]:
        """Beads of each kind, which weigh the working diameter of a mixed rope."""
        by_kind: Counter[str] = Counter()
        for index, kind in enumerate(self.kinds):
            by_kind[kind.name] += beads.count(index)
        return by_kind

    @property
    def _own_working_mm(self) -> float:
        pass_mm = self.question.pass_mm or 0.0
        return pass_mm / len(self.pattern.main.beads) / helix(self.pattern.around).rise

    @property
    def _own_source(self) -> str:
        times, pass_mm = self.question.passes_measured, self.question.pass_mm or 0.0
        if times == 1:
            return f"your pass: {millimetres(pass_mm)}"
        return f"your {count(times)} passes: {millimetres(times * pass_mm)}"


def _sized(resolved: _Resolved, beads: int | None) -> Size:
    """The size of so many beads, or where none are given of what the question asks."""
    question, closure_mm, made = resolved.question, resolved.closure_mm, resolved.rope
    wanted_mm = _wanted_rope_mm(resolved) if beads is None else None
    worked = _beads(resolved, wanted_mm) if beads is None else beads
    finished_mm = _finished_mm(question.ending, closure_mm, made, resolved.rope_of(worked))
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
        fixed_mm=resolved.fixed_mm,
        beads=worked,
        closure_mm=closure_mm,
        length_mm=finished_mm if asked_mm is None else asked_mm,
    )


def _wanted_rope_mm(resolved: _Resolved) -> float | None:
    """Length of rope that is wanted, or None for one pass."""
    question, around_itself_mm = resolved.question, pi * resolved.rope.thickness_mm
    close_mm = question.close_girth_mm
    if close_mm is not None:
        return close_mm + around_itself_mm - resolved.closure_mm
    if question.length_mm is None:
        return None
    return question.length_mm - resolved.closure_mm + (around_itself_mm if question.ending.worked_shut else 0.0)


def _finished_mm(closure: Closure, closure_mm: float, made: Rope, rope_mm: float) -> float:
    """The finished size of that much rope, as its closure measures."""
    return rope_mm - pi * made.thickness_mm if closure.worked_shut else rope_mm + closure_mm


def _beads(resolved: _Resolved, wanted_mm: float | None) -> int:
    pattern, question = resolved.pattern, resolved.question
    chart, fixed = len(pattern.main.beads), pattern.fixed_beads
    if wanted_mm is None:
        return fixed + chart
    exact = fixed + (wanted_mm - resolved.fixed_mm) / resolved.rope.bead_mm
    _check_range(resolved, wanted_mm, exact)
    if question.rounding != "bead":
        least = smallest_ring(pattern) if question.ending.worked_shut else 1
        return stepped(exact, fixed, chart, WHOLE_PASSES[question.rounding], least)
    if question.ending.worked_shut:
        return nearest_ring(pattern, exact, round_up if question.over_hand else whole)
    return whole(exact)


def _check_range(resolved: _Resolved, wanted_mm: float, exact: float) -> None:
    pattern, option = resolved.pattern, resolved.question.size_option
    if whole(exact) < pattern.around:
        round_mm = pattern.around * resolved.rope.bead_mm
        raise SizeError(
            f"That leaves {length(max(0.0, wanted_mm))} of rope, less than one round "
            f"({length(round_mm)}); ask for a longer piece.",
            option,
        )
    if whole(exact) < pattern.fixed_beads:
        raise SizeError(
            f"Start and end alone make {length(resolved.fixed_mm)} of rope; ask for a longer piece.", option
        )
    if exact > MOST_WORKED:
        raise SizeError(f"That is a rope of {count(exact)} beads; at most {count(MOST_WORKED)} are counted.", option)
