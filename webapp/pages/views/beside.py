"""What is asked beside an answer: other sizes and kinds, beads in hand, kits, a stop, thread or a colour that ended."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Annotated, TypeVar

from engine.counting.answers import Answer
from engine.counting.ran_out import OutOfColour, OutOfThread, out_of_colour, out_of_thread, place_on_thread
from engine.counting.size_table import SizeRow, in_kinds, in_sizes, size_table
from engine.counting.sizes import NamedSize, Workshop
from engine.counting.stock import Kit, Longest, beads_in_hand, kit, longest
from engine.counting.stopped import Remaining, remaining
from engine.counting.stringing import Plan
from engine.errors import ChoiceError, EngineError, SizeError
from engine.pattern.pattern import Pattern
from webapp.pages.forms.answers import TypedDesk, read_sizes
from webapp.pages.forms.beside import (
    OnThread,
    read_held,
    read_left,
    read_out,
    read_packs,
    read_place,
    read_thread_left,
    read_worked,
)
from webapp.pages.forms.sent import Objections

COMPARED = ("sizes", "kinds")
FIELDS = (
    "compare",
    "compare_sizes",
    "have",
    "pieces",
    "packs",
    "worked",
    "out_thread",
    "thread_left",
    "out_colour",
    "beads_left",
)

T = TypeVar("T")


@dataclass(frozen=True)
class Beside:
    """What was asked beside an answer, none where it was not; an objection leaves the others as they are."""

    compared: Annotated[tuple[SizeRow, ...], "The pattern in several sizes or kinds."]
    longest: Annotated[Longest | None, "The longest rope of the beads in hand."]
    kit: Annotated[Kit | None, "The shopping list for several pieces."]
    remaining: Annotated[Remaining | None, "What is still to string after a stop."]
    out_thread: Annotated[OutOfThread | None, "What to do where the thread ended."]
    out_colour: Annotated[OutOfColour | None, "Where a colour ends, and what to buy."]
    errors: Annotated[Mapping[str, str], "What is wrong, by field."]


def beside(
    pattern: Pattern,
    answer: Answer,
    typed: TypedDesk,
    workshop: Workshop,
    plan: Plan = "chart",
    units: str = "cm",
    own: Iterable[NamedSize] = (),
) -> Beside:
    """Answers everything that was typed beside the question of that answer; `own` are sizes of the maker's own."""
    asked, wrong = _Asked(pattern, answer, typed, workshop, tuple(own)), Objections()

    def found(field: str, work: Callable[[], T], wanted: str) -> T | None:
        try:
            return work() if wanted else None
        except EngineError as error:
            wrong.add(error.field if error.field in FIELDS else field, error.message)
            return None

    return Beside(
        found("compare", lambda: asked.compared(plan, units), typed.compare or typed.compare_sizes) or (),
        found("have", asked.longest, typed.have),
        found("pieces", asked.kit, typed.pieces or ("" if typed.have else typed.packs)),
        found("worked", asked.remaining, typed.worked),
        found("out_thread", asked.out_of_thread, typed.out_thread or typed.thread_left),
        found("out_colour", asked.out_of_colour, typed.out_colour or typed.beads_left),
        wrong.found,
    )


@dataclass(frozen=True)
class _Asked:
    """The questions that stand beside that answer."""

    pattern: Pattern
    answer: Answer
    typed: TypedDesk
    workshop: Workshop
    own: tuple[NamedSize, ...]

    @property
    def codes(self) -> tuple[str, ...]:
        return self.pattern.palette.codes

    def compared(self, plan: Plan, units: str) -> tuple[SizeRow, ...]:
        question, spare = self.answer.size.question, self.answer.materials.spare
        if self.typed.compare_sizes and self.typed.compare != "kinds":
            sizes = read_sizes(self.typed.compare_sizes, self.typed.closure, units, self.own)
            rows = in_sizes(self.pattern, self.workshop, sizes, question, plan, spare, units)
            if short := [size.name for size in sizes if size.name not in [row.size.name for row in rows]]:
                raise SizeError(f"{', '.join(short)} cannot be worked in this rope.", "compare_sizes")
            return rows
        if self.typed.compare == "sizes":
            return size_table(self.pattern, self.workshop, question, plan, spare, units)
        if self.typed.compare == "kinds":
            return in_kinds(self.pattern, self.workshop, question, self.workshop.kinds, plan, spare, units)
        raise ChoiceError("Compare", self.typed.compare, COMPARED, "compare")

    def longest(self) -> Longest:
        question = self.answer.size.question
        packs = read_packs(self.typed.packs, self.codes)
        held = read_held(self.typed.have, self.codes, packs)
        return longest(
            self.pattern,
            beads_in_hand(self.pattern, held, question, self.workshop),
            question,
            self.workshop,
            question.rounding != "bead",
        )

    def kit(self) -> Kit:
        text = self.typed.pieces or "1"
        pieces = int(text) if text.isdecimal() and len(text) < 7 else 0
        return kit(self.answer.materials, pieces, read_packs(self.typed.packs, self.codes), self.workshop)

    def remaining(self) -> Remaining:
        worked = read_worked(self.typed.worked, self.pattern.around)
        return remaining(self.pattern, self.answer.size, worked, self.workshop, self.answer.materials.spare)

    def out_of_thread(self) -> OutOfThread:
        if not self.typed.out_thread:
            raise SizeError("Say where the thread ran out, such as 480, 12/3 or thread 2: 40.", "out_thread")
        place = read_place(self.typed.out_thread, self.pattern.around)
        worked = place_on_thread(self.answer, *place) if isinstance(place, OnThread) else place
        return out_of_thread(self.pattern, self.answer, worked, read_thread_left(self.typed.thread_left), self.workshop)

    def out_of_colour(self) -> OutOfColour:
        if not self.typed.out_colour:
            raise SizeError(f"Say which colour ran out, such as {self.codes[0]} 120.", "out_colour")
        ran = read_out(self.typed.out_colour, self.codes, self.pattern.around)
        left = read_left(self.typed.beads_left, self.codes)
        return out_of_colour(self.pattern, self.answer, ran.code, ran.had, ran.worked, left, self.workshop)
