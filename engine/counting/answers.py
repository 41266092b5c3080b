"""A customer's question to its answer: the sentence, and the numbers behind it."""

from __future__ import annotations

from dataclasses import dataclass

from engine.counting.materials import SPARE, Materials, materials
from engine.counting.sizes import Question, Size, Workshop, size
from engine.counting.stringing import Plan, StringingList, string
from engine.pattern.pattern import Pattern
from engine.units import count, length, metres, plain

PIECES = {
    "open": "rope of {}",
    "clasp": "piece of {} with a clasp",
    "glued": "piece of {} with glued ends",
    "ring": "ring of {} inner girth",
}


@dataclass(frozen=True)
class Answer:
    """One question answered: size, list and bill, and the sentence that says it."""

    size: Size
    stringing: StringingList
    materials: Materials
    sentence: str


def answer(
    pattern: Pattern,
    question: Question,
    workshop: Workshop | None = None,
    plan: Plan = "chart",
    spare: float = SPARE,
    units: str = "cm",
) -> Answer:
    """The answer to that question. Raises SizeError, PlanError or ChoiceError where there is none."""
    sized = size(pattern, question, workshop)
    listed = string(pattern, sized, plan, workshop)
    needed = materials(pattern, sized, listed, workshop, spare)
    return Answer(sized, listed, needed, sentence(pattern, sized, listed, units))


def sentence(pattern: Pattern, size: Size, stringing: StringingList, units: str = "cm") -> str:
    """The answer in one sentence for the customer."""
    piece = PIECES[size.question.closure].format(length(size.finished_mm, units))
    passes, threads = plain(size.passes, 2), len(stringing.threads)
    passes_of = f"{passes} {'pass' if passes == '1' else 'passes'} of the chart"
    on_threads = f"on {threads} {'thread' if threads == 1 else 'threads'}"
    return (
        f"{pattern.title} as a {piece} takes about {count(size.beads)} beads: {passes_of}, "
        f"{metres(stringing.strung_mm)} of strung beads {on_threads}."
    )
