"""One pattern in several finished sizes: the table of materials page, desk and booklet."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress
from dataclasses import replace
from typing import NamedTuple

from engine.counting.answers import Answer, again
from engine.counting.finished import named
from engine.counting.questions import NamedSize, Question
from engine.errors import PlanError, SizeError


class SizeRow(NamedTuple):
    """A finished size by its name, and what it takes."""

    size: NamedSize
    answer: Answer


def size_table(asked: Answer, units: str = "cm") -> tuple[SizeRow, ...]:
    """The workshop's sizes, or the usual ones, in kind and stitch (and measured pass) of that answer.

    A size that cannot be worked in this rope is left out. Raises ChoiceError.
    """
    return in_sizes(asked, asked.workshop.sizes or named(), units)


def in_sizes(asked: Answer, sizes: Iterable[NamedSize], units: str = "cm") -> tuple[SizeRow, ...]:
    """Those sizes, as `size_table`."""
    question = asked.size.question
    return _rows(asked, (_alike(size, question) for size in sizes), units)


def in_kinds(asked: Answer, units: str = "cm") -> tuple[SizeRow, ...]:
    """The same question in every bead kind, side by side; the buyer's own measure holds for one kind alone."""
    question = asked.size.question
    sizes = (NamedSize("Kind", kind, replace(question, kind=kind, pass_mm=None)) for kind in asked.workshop.kinds)
    return _rows(asked, sizes, units)


def _alike(size: NamedSize, asked: Question) -> NamedSize:
    """That size in the kind and stitch of a question."""
    question = replace(size.question, kind=asked.kind, stitch=asked.stitch, pass_mm=asked.pass_mm)
    return replace(size, question=question)


def _rows(asked: Answer, sizes: Iterable[NamedSize], units: str) -> tuple[SizeRow, ...]:
    rows = []
    for size in sizes:
        with suppress(PlanError, SizeError):
            rows.append(SizeRow(size, again(asked, size.question, units)))
    return tuple(rows)
