"""One pattern in several finished sizes: the table of materials page, desk and booklet."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import NamedTuple

from engine.counting.answers import Answer, answer
from engine.counting.finished import named
from engine.counting.materials import SPARE
from engine.counting.sizes import NamedSize, Question, Workshop
from engine.counting.sizes import size as measured
from engine.counting.stringing import Plan
from engine.errors import PlanError, SizeError
from engine.pattern.pattern import Pattern


class SizeRow(NamedTuple):
    """A finished size by its name, and what it takes."""

    size: NamedSize
    answer: Answer


def size_table(
    pattern: Pattern, workshop: Workshop, asked: Question, plan: Plan = "chart", spare: float = SPARE, units: str = "cm"
) -> tuple[SizeRow, ...]:
    """The workshop's sizes, or the usual ones, in kind and stitch (and measured pass) of the question.

    A size that cannot be worked in this rope is left out. Raises ChoiceError.
    """
    return in_sizes(pattern, workshop, workshop.sizes or named(), asked, plan, spare, units)


def in_sizes(
    pattern: Pattern,
    workshop: Workshop,
    sizes: Iterable[NamedSize],
    asked: Question,
    plan: Plan = "chart",
    spare: float = SPARE,
    units: str = "cm",
) -> tuple[SizeRow, ...]:
    """Those sizes, as `size_table`."""
    return _rows(pattern, (_as_asked(size, asked) for size in sizes), workshop, plan, spare, units)


def in_kinds(
    pattern: Pattern,
    workshop: Workshop,
    question: Question,
    kinds: Iterable[str],
    plan: Plan = "chart",
    spare: float = SPARE,
    units: str = "cm",
) -> tuple[SizeRow, ...]:
    """The same question in several bead kinds, side by side; the buyer's own measure holds for one kind alone."""
    sizes = (NamedSize("Kind", kind, replace(question, kind=kind, pass_mm=None)) for kind in kinds)
    return _rows(pattern, sizes, workshop, plan, spare, units)


def _as_asked(size: NamedSize, asked: Question) -> NamedSize:
    question = replace(size.question, kind=asked.kind, stitch=asked.stitch, pass_mm=asked.pass_mm)
    return replace(size, question=question)


def _rows(
    pattern: Pattern, sizes: Iterable[NamedSize], workshop: Workshop, plan: Plan, spare: float, units: str
) -> tuple[SizeRow, ...]:
    found = []
    for size in sizes:
        try:
            kept = _inside(pattern, size.question, workshop, plan)
            found.append(SizeRow(size, answer(pattern, size.question, workshop, kept, spare, units)))
        except (PlanError, SizeError):
            continue
    return tuple(found)


def _inside(pattern: Pattern, question: Question, workshop: Workshop, plan: Plan) -> Plan:
    """The plan, of chosen joins those that lie inside this rope: they were chosen for another."""
    if not isinstance(plan, tuple):
        return plan
    beads = measured(pattern, question, workshop).beads
    return tuple(join for join in plan if join < beads)
