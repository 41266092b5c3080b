"""A question (finished size, closure, kind, stitch, rounding) to its size: beads to work and the rope they make."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from math import pi

from engine.counting.closures import Closure
from engine.counting.kinds import Kind
from engine.counting.questions import Question
from engine.counting.rings import pass_shares, ring_shares, round_down, round_up, shares_close, uneven_passes
from engine.counting.rope import SETTLED, Rope, Shape, fitting_swatch, rope, working_diameters
from engine.counting.workshop import Workshop
from engine.errors import ChoiceError, SizeError, UnknownKind
from engine.pattern.pattern import Pattern
from engine.pattern.repeats import Drift, drift, least_ring
from engine.pattern.settled import Settled, settled_charts
from engine.pattern.shares import LaidPart, lay, shared
from engine.units import count, length, millimetres, whole

MOST_WORKED = 200_000
WHOLE_PASSES: Mapping[str, Callable[[float], int]] = {
    "bead": whole,
    "pass": whole,
    "up": round_up,
    "down": round_down,
}
SAME_SIZE_MM = 1.0  # by which a length asked for in words differs from the one size of a rope without a part that fills


@dataclass(frozen=True)
class Size:
    """What a question comes to: beads to work and the rope they make. Lengths in mm.

    `kinds` are those of the palette entries, `main_kind` the one most beads of the main part have. `ropes` are those of
    the parts, each measured by its own beads, `rope` that of the main part; `shares` are the beads of every part that
    fills. `closure_mm` is what the closure adds. `length_mm` is the finished size asked for, `finished_mm` what it
    becomes with that many beads, both measured as the closure measures (a ring: inner girth).
    """

    pattern: Pattern
    workshop: Workshop
    question: Question
    kinds: tuple[Kind, ...]
    main_kind: Kind
    stitch: str
    rope: Rope
    ropes: tuple[Rope, ...]
    shares: tuple[int, ...]
    closure_mm: float
    length_mm: float

    @property
    def around(self) -> int:
        return self.pattern.around

    @property
    def closure(self) -> Closure:
        return self.question.ending

    @cached_property
    def beads(self) -> int:
        """Beads of the whole rope."""
        return self.pattern.fixed_beads + sum(self.shares)

    @cached_property
    def laid(self) -> tuple[LaidPart, ...]:
        """The parts as they lie in the rope."""
        return lay(self.pattern.parts, self.shares)

    @cached_property
    def rope_mm(self) -> float:
        return laid_mm(self.laid, self.ropes)

    def upto_mm(self, beads: int) -> float:
        """Length of the first so many beads of the rope."""
        upto = (max(0, min(beads, part.last) - part.first) for part in self.laid)
        return sum(part * made.bead_mm for part, made in zip(upto, self.ropes, strict=True))

    def rope_of(self, shares: tuple[int, ...]) -> float:
        """Length of the rope in which the parts that fill have so many beads."""
        return laid_mm(lay(self.pattern.parts, shares), self.ropes)

    @property
    def fill_mm(self) -> tuple[float, ...]:
        """What a bead of each part that fills adds to the rope."""
        return fill_mm(self.pattern, self.ropes)

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
        """Times through the chart of the main part."""
        return passes_of(self.pattern, self.laid)

    @property
    def closes(self) -> bool:
        """Whether the rope closes in colour as a ring; with several parts after whole passes of each."""
        return shares_close(self.pattern, self.shares)

    @property
    def joins_end_to_start(self) -> bool:
        return len(self.pattern.parts) > 1 and self.closure.worked_shut

    @property
    def closing(self) -> Drift:
        """How far a ring turns at its seam, as information."""
        return drift(self.around, self.beads)

    @cached_property
    def worked(self) -> bytes:
        """The beads of the rope in working order, as palette indices."""
        return b"".join(part.worked for part in self.laid)


def laid_mm(laid: Iterable[LaidPart], ropes: Iterable[Rope]) -> float:
    """Length of a rope whose parts lie so, each measured by its own beads."""
    return sum(part.beads * made.bead_mm for part, made in zip(laid, ropes, strict=True))


def fill_mm(pattern: Pattern, ropes: Iterable[Rope]) -> tuple[float, ...]:
    """What a bead of each part that fills adds to the rope."""
    return tuple(made.bead_mm for part, made in zip(pattern.parts, ropes, strict=True) if part.fills)


def passes_of(pattern: Pattern, laid: Iterable[LaidPart]) -> float:
    """Times through the chart of the main part, wherever in the rope it is worked."""
    beads = sum(part.beads for part in laid if part.part == pattern.main)
    return beads / len(pattern.main.beads)


def size(pattern: Pattern, question: Question, workshop: Workshop | None = None) -> Size:
    """The size of that question. Raises SizeError or ChoiceError where it cannot be worked."""
    resolved = _Resolved.of(pattern, question, workshop or Workshop())
    wanted_mm = _wanted_rope_mm(resolved)
    return _sized(resolved, _shares(resolved, wanted_mm), wanted_mm)


def size_of_shares(
    pattern: Pattern, question: Question, shares: tuple[int, ...], workshop: Workshop | None = None
) -> Size:
    """The size of a rope whose parts that fill have so many beads; the length of the question does not count."""
    return _sized(_Resolved.of(pattern, question, workshop or Workshop()), shares, None)


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
    ropes: tuple[Rope, ...]
    closure_mm: float

    @classmethod
    def of(cls, pattern: Pattern, question: Question, workshop: Workshop) -> _Resolved:
        """Raises ChoiceError for a bead kind that is not known."""
        kinds = entry_kinds(pattern, question, workshop)
        stitch = question.stitch or pattern.stitch_worked
        measures = _Measures(pattern=pattern, question=question, kinds=kinds, stitch=stitch, workshop=workshop)
        in_main = measures.beads_by_kind(pattern.main.beads)
        allowance_mm = workshop.allowance_mm(question.ending)
        return cls(
            pattern=pattern,
            workshop=workshop,
            question=question,
            kinds=kinds,
            main_kind=workshop.kinds[max(in_main, key=in_main.__getitem__)],
            stitch=stitch,
            ropes=measures.ropes(),
            closure_mm=allowance_mm if question.closure_mm is None else question.closure_mm,
        )

    @property
    def rope(self) -> Rope:
        """The rope of the main part."""
        return self.ropes[self.pattern.parts.index(self.pattern.main)]

    @property
    def fixed_mm(self) -> float:
        """Length of the parts that do not fill."""
        parts = zip(self.pattern.parts, self.ropes, strict=True)
        return sum(part.fixed_beads * made.bead_mm for part, made in parts)

    @cached_property
    def fill_mm(self) -> tuple[float, ...]:
        return fill_mm(self.pattern, self.ropes)

    def rope_of(self, shares: tuple[int, ...]) -> float:
        return laid_mm(lay(self.pattern.parts, shares), self.ropes)

    def finished_of(self, rope_mm: float) -> float:
        return _finished_mm(self.question.ending, self.closure_mm, self.rope, rope_mm)

    def beads_between(self, wanted_mm: float) -> float:
        """How many beads of the parts that fill make a rope of that length, each as long as the others."""
        different = set(self.fill_mm) or {self.rope.bead_mm}
        even_mm = len(self.fill_mm) / sum(1 / mm for mm in self.fill_mm) if len(different) > 1 else different.pop()
        return (wanted_mm - self.fixed_mm) / even_mm


@dataclass(frozen=True)
class _Measures:
    """The rope of each part, by its own beads."""

    pattern: Pattern
    question: Question
    kinds: tuple[Kind, ...]
    stitch: str
    workshop: Workshop

    def ropes(self) -> tuple[Rope, ...]:
        """The main part in the asker's own hands where they measured it, which corrects the others in proportion."""
        made = {part: self.rope_of(part.beads) for part in self.pattern.parts}
        if self.question.pass_mm is not None:
            main = self.pattern.main
            own_mm = self._own_working_mm(made[main])
            own = own_mm / made[main].working_mm
            made = {part: replace(rope, working_mm=rope.working_mm * own) for part, rope in made.items()}
            made[main] = replace(made[main], working_mm=own_mm, measured=True, source=self._own_source, sure=0.0)
        return tuple(made[part] for part in self.pattern.parts)

    def rope_of(self, beads: bytes) -> Rope:
        """The rope of one part, by swatch or estimate; where its own beads differ in kind, by the model of them."""
        pattern, workshop = self.pattern, self.workshop
        by_kind, in_all = (self.beads_by_kind(part) for part in (beads, pattern.drawn))
        mixed = sum(count > 0 for count in in_all.values()) > 1
        made = rope(pattern.around, self.stitch, by_kind, workshop.kinds, workshop.swatches, mixed)
        return made if sum(count > 0 for count in by_kind.values()) < 2 else self._settled(made, beads)

    def _settled(self, made: Rope, beads: bytes) -> Rope:
        """The rope with the shape to which its beads settle; as it is where they are too many, or of one size."""
        found = self.settling.get(beads)
        if found is None:
            return made
        return replace(made, shape=Shape(found.rise, found.thickness, found.channel), source=SETTLED)

    @cached_property
    def settling(self) -> Mapping[bytes, Settled]:
        """The parts whose beads differ in size, as they settle."""
        pattern, swatches = self.pattern, self.workshop.swatches
        fitting = {
            kind.name: fitting_swatch(swatches, kind.name, pattern.around, self.stitch)
            for kind in dict.fromkeys(self.kinds)
        }
        diameters = working_diameters(fitting, self.workshop.kinds)
        sizes = tuple(diameters[kind.name] for kind in self.kinds)
        return settled_charts(pattern.around, (part.beads for part in pattern.parts), sizes)

    def beads_by_kind(self, beads: bytes) -> Mapping[str, int]:
        """Beads of each kind, which weigh the working diameter of a mixed rope."""
        by_kind: Counter[str] = Counter()
        for index, kind in enumerate(self.kinds):
            by_kind[kind.name] += beads.count(index)
        return by_kind

    def _own_working_mm(self, main: Rope) -> float:
        """The working diameter with which a pass of the main part is as long as it was measured."""
        pass_mm = self.question.pass_mm or 0.0
        return pass_mm / len(self.pattern.main.beads) / (main.bead_mm / main.working_mm)

    @property
    def _own_source(self) -> str:
        times, pass_mm = self.question.passes_measured, self.question.pass_mm or 0.0
        if times == 1:
            return f"your pass: {millimetres(pass_mm)}"
        return f"your {count(times)} passes: {millimetres(times * pass_mm)}"


def _sized(resolved: _Resolved, shares: tuple[int, ...], wanted_mm: float | None) -> Size:
    """The size of a rope that shares its beads so, wanted that long; None where no length was asked for."""
    finished_mm = resolved.finished_of(resolved.rope_of(shares))
    if finished_mm <= 0:
        beads = count(resolved.pattern.fixed_beads + sum(shares))
        raise SizeError(f"A ring of {beads} beads has no room inside; ask for a longer one.", "length")
    return Size(
        pattern=resolved.pattern,
        workshop=resolved.workshop,
        question=resolved.question,
        kinds=resolved.kinds,
        main_kind=resolved.main_kind,
        stitch=resolved.stitch,
        rope=resolved.rope,
        ropes=resolved.ropes,
        shares=shares,
        closure_mm=resolved.closure_mm,
        length_mm=finished_mm if wanted_mm is None else resolved.finished_of(wanted_mm),
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


def _shares(resolved: _Resolved, wanted_mm: float | None) -> tuple[int, ...]:
    """Beads of every part that fills, for that length of rope; without one each is worked once."""
    pattern, question = resolved.pattern, resolved.question
    if wanted_mm is None:
        return tuple(len(part.beads) for part in pattern.fills)
    exact = pattern.fixed_beads + resolved.beads_between(wanted_mm)
    _check_range(resolved, wanted_mm, exact)
    if question.ending.worked_shut and question.rounding == "bead":
        return ring_shares(pattern, exact, round_up if question.over_hand else whole, resolved.fill_mm)
    if question.rounding != "bead" or not pattern.fills_an_end:
        least = least_ring(pattern.around) if question.ending.worked_shut else 1
        anywhere = question.middle != "keep" or question.ending.worked_shut  # a ring has no middle
        if anywhere and pattern.motif and len({len(part.beads) for part in pattern.fills}) == 1:
            return uneven_passes(pattern, exact, WHOLE_PASSES[question.rounding], least)
        return pass_shares(pattern, exact, WHOLE_PASSES[question.rounding], resolved.fill_mm, least)
    return _to_the_bead(resolved, wanted_mm, whole(exact) - pattern.fixed_beads)


def _to_the_bead(resolved: _Resolved, wanted_mm: float, between: int) -> tuple[int, ...]:
    """So many beads shared; where the beads of the fills are not alike, those that whole passes were off by made up."""
    parts = resolved.pattern.parts
    shares = shared(parts, between, resolved.fill_mm)
    if len(set(resolved.fill_mm)) == 1:
        return shares
    off = whole((wanted_mm - resolved.rope_of(shares)) * len(shares) / sum(resolved.fill_mm))
    return shared(parts, max(0, between + off), resolved.fill_mm)


def _check_range(resolved: _Resolved, wanted_mm: float, exact: float) -> None:
    pattern, option = resolved.pattern, resolved.question.size_option
    if whole(exact) < pattern.around:
        round_mm = pattern.around * resolved.rope.bead_mm
        raise SizeError(
            f"That leaves {length(max(0.0, wanted_mm))} of rope, less than one round "
            f"({length(round_mm)}); ask for a longer piece.",
            option,
        )
    if not pattern.fills and abs(wanted_mm - resolved.fixed_mm) > SAME_SIZE_MM:
        one_mm = resolved.finished_of(resolved.fixed_mm)
        raise SizeError(
            f"No part of this rope fills, so it is worked in one size: {length(one_mm)}. "
            "Ask for that, or let a part fill.",
            option,
        )
    if pattern.fills and whole(exact) < pattern.fixed_beads:
        raise SizeError(f"{pattern.fixed_alone} {length(resolved.fixed_mm)} of rope; ask for a longer piece.", option)
    if exact > MOST_WORKED:
        raise SizeError(f"That is a rope of {count(exact)} beads; at most {count(MOST_WORKED)} are counted.", option)
