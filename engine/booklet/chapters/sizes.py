"""The sizes page: the size of the booklet beside the usual ones, their beads by colour, and the sum for any other."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import pi

from engine.booklet.choices import Choices
from engine.booklet.measures import Measures
from engine.booklet.terms import TERMS, Terms
from engine.booklet.words import times
from engine.counting.answers import Answer
from engine.counting.finished import asked_in_words
from engine.counting.questions import Question
from engine.counting.size_table import size_table as sizes_worked
from engine.units import count, length, plain

TIMES = "Chart, times"
HEADS = ("Finished", "Rope", "Beads", TIMES, "Threads", "Strung", "Thread")


@dataclass(frozen=True)
class SizeLine:
    """One size: its name, what it is for, and the figures under the heads of the table."""

    name: str
    about: str
    figures: tuple[str, ...]
    colours: tuple[str, ...]


@dataclass(frozen=True)
class SizeTable:
    """`heads` over the figures of the lines; `colours` are (code, name) of the beads, counted in every line."""

    intro: str
    heads: tuple[str, ...]
    lines: tuple[SizeLine, ...]
    colours: tuple[tuple[str, str], ...]
    other: tuple[str, ...]


def size_table(answered: Answer, choices: Choices) -> SizeTable:
    """The table; a size that cannot be worked in this rope is left out."""
    sized = sizes_worked(answered, choices.units)
    lines = [
        _line("This booklet", "", answered, choices.units),
        *(_line(named.name, _asked(named.question, choices.units), other, choices.units) for named, other in sized),
    ]
    colours = tuple((entry.code, entry.name) for entry in answered.pattern.palette)
    intro = _intro(answered, TERMS[choices.terms], Measures(choices.units))
    heads = HEADS if answered.pattern.one_chart else tuple("Parts, times" if head == TIMES else head for head in HEADS)
    return SizeTable(intro=intro, heads=heads, lines=tuple(lines), colours=colours, other=_other(answered, choices))


def _line(name: str, about: str, answered: Answer, units: str) -> SizeLine:
    bill = answered.materials
    return SizeLine(
        name,
        ", ".join(filter(None, (answered.size.closure.short, about))),
        (
            _stacked(bill.finished_mm, units, Measures.length),
            _stacked(bill.rope_mm, units, Measures.length),
            count(bill.beads),
            _times(answered),
            count(bill.threads),
            _stacked(bill.strung_mm, units, Measures.strung),
            _stacked(bill.thread_mm, units, Measures.thread),
        ),
        tuple(count(need.beads) for need in bill.colours),
    )


def _times(answered: Answer) -> str:
    """How often the chart is worked; of several parts each that fills, by its number, a line each."""
    if answered.pattern.one_chart:
        return plain(answered.materials.passes, 2)
    return "\n".join(f"{part.number}: {plain(part.times, 2)}" for part in answered.materials.parts if part.fills)


def _stacked(mm: float, units: str, said: Callable[[Measures, float], str]) -> str:
    """A length, in both units one over the other."""
    return "\n".join(said(Measures(unit), mm) for unit in (("cm", "in") if units == "both" else (units,)))


def _asked(question: Question, units: str) -> str:
    """What the usual size is made for, where its finished length does not say it."""
    if question.close_girth_mm is not None:
        return asked_in_words(question, units)
    if question.ending.worked_shut:
        return f"{length((question.length_mm or 0.0) / pi, units)} across"
    return ""


def _intro(answered: Answer, terms: Terms, measures: Measures) -> str:
    rope = answered.size.rope
    return terms.spelled(
        f"Rounds of this rope: {measures.to_a_unit(rope.rounds_per_cm)}, "
        f"{measures.in_units(terms.translated(rope.source))}. Your hand decides; work a piece, measure it, and "
        f"correct the length before you string the rest.{_fixed(answered)}"
    )


def _fixed(answered: Answer) -> str:
    """How often parts are worked that are the same in every size."""
    fixed = [part for part in answered.materials.parts if not part.fills]
    if answered.pattern.one_chart or not fixed:
        return ""
    return f" In every size: {', '.join(f'“{part.name}” {times(part.times)}' for part in fixed)}."


def _other(answered: Answer, choices: Choices) -> tuple[str, ...]:
    size, closure = answered.size, answered.size.closure
    per_cm = 10 / size.rope.bead_mm
    own_length = closure.own_length.format(allowance=length(size.closure_mm, choices.units))
    ring = (
        f" The number must be a multiple of {count(answered.stringing.repeat)}, so that the pattern closes."
        if closure.worked_shut and not size.joins_end_to_start
        else ""
    )
    beads = f"Beads: {Measures(choices.units).to_a_unit(per_cm)} of rope."
    return (
        TERMS[choices.terms].spelled(f"{own_length} {beads}{ring}"),
        "A piece that lies close round wrist or neck needs 3.14 times its own thickness more than what it goes round.",
    )
