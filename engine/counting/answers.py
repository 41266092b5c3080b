"""A customer's question to its answer: the sentence, and the numbers behind it."""

from __future__ import annotations

from dataclasses import dataclass

from engine.counting.cuts import BALANCED, Plan
from engine.counting.materials import Materials, materials
from engine.counting.parts import parts_in_words
from engine.counting.purchase import SPARE
from engine.counting.questions import Question
from engine.counting.sizes import Size, size
from engine.counting.stringing import StringingList, string
from engine.counting.workshop import Workshop
from engine.pattern.pattern import Pattern
from engine.units import counted, length, metres


@dataclass(frozen=True)
class Answer:
    """One question answered: size, list and bill, the plan of threads, and the sentence that says it."""

    size: Size
    stringing: StringingList
    materials: Materials
    plan: Plan
    sentence: str

    @property
    def pattern(self) -> Pattern:
        return self.size.pattern

    @property
    def workshop(self) -> Workshop:
        return self.size.workshop


def answer(
    pattern: Pattern,
    question: Question,
    workshop: Workshop | None = None,
    plan: Plan = BALANCED,
    spare: float = SPARE,
    units: str = "cm",
) -> Answer:
    """The answer to that question. Raises SizeError, PlanError or ChoiceError where there is none."""
    sized = size(pattern, question, workshop)
    stringing = string(sized, plan)
    bill = materials(sized, stringing, spare)
    return Answer(
        size=sized, stringing=stringing, materials=bill, plan=plan, sentence=sentence(sized, stringing, units)
    )


def again(answered: Answer, question: Question, units: str = "cm") -> Answer:
    """Another question to the same pattern, with the same numbers, plan and spare. Raises as `answer` does."""
    plan = answered.plan
    if isinstance(plan, tuple):
        beads = size(answered.pattern, question, answered.workshop).beads
        plan = tuple(join for join in plan if join < beads)
    spare = answered.materials.spare_asked
    return answer(answered.pattern, question, answered.workshop, plan, spare, units)


def sentence(size: Size, stringing: StringingList, units: str = "cm") -> str:
    """The answer in one sentence for the customer."""
    piece = size.closure.piece.format(length(size.finished_mm, units))
    return (
        f"{size.pattern.title} as a {piece} takes about {counted(size.beads, 'bead')}: {parts_in_words(size)}, "
        f"{metres(stringing.strung_mm)} of strung beads on {counted(len(stringing.threads), 'thread')}."
    )
