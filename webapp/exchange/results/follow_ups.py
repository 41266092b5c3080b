"""What was asked beside an answer, as JSON."""

from __future__ import annotations

from typing import Any, Self

from pydantic import Field

from engine.counting.follow_ups import FollowUpAnswers
from engine.counting.ran_out import OutOfColour, OutOfThread, Short
from engine.counting.size_table import SizeRow
from engine.counting.stock import Longest
from webapp.exchange.results.lists import MaterialsResult, ThreadResult
from webapp.exchange.results.result import Result, Runs


class ToBuyResult(Result):
    """Beads of a colour that are wanting, and whole grams to buy with spare."""

    code: str
    name: str
    beads: int
    grams: int


class ComparedResult(Result):
    """The same pattern in another size or kind."""

    name: str
    sentence: str
    finished_mm: float
    measured: bool
    table: MaterialsResult

    @classmethod
    def of_row(cls, row: SizeRow) -> Self:
        return cls(
            name=row.size.name,
            sentence=row.answer.sentence,
            finished_mm=row.answer.size.finished_mm,
            measured=row.answer.size.rope.measured,
            table=MaterialsResult.of(row.answer.materials),
        )


class LeftResult(Result):
    """Beads of a colour that are left over."""

    code: str
    beads: int


class LongestResult(Result):
    """The longest rope of the beads in hand; `limit` is the colour that ends it, empty where none does."""

    beads: int
    passes: float
    rope_mm: float
    finished_mm: float
    limit: str
    left: list[LeftResult]
    to_buy: list[ToBuyResult]
    kept_back: float = Field(description="Percent of every colour in hand that stays unused, as was asked.")

    @classmethod
    def of_longest(cls, longest: Longest) -> Self:
        size = longest.size
        return cls(
            beads=size.beads,
            passes=size.passes,
            rope_mm=size.rope_mm,
            finished_mm=size.finished_mm,
            limit=longest.limit,
            left=[LeftResult(code=code, beads=beads) for code, beads in longest.left],
            to_buy=[ToBuyResult.of(need) for need in longest.to_buy],
            kept_back=longest.kept_back,
        )


class KitLineResult(Result):
    """One colour for all pieces; packs and cost are nought where no pack was named."""

    code: str
    name: str
    beads: int
    grams: int
    packs: int
    cost: float


class KitResult(Result):
    """A shopping list; `each` is the cost of one piece."""

    pieces: int
    lines: list[KitLineResult]
    thread_mm: float
    cost: float
    each: float


class RemainingResult(Result):
    """What is still to string after a stop; round and place count from one."""

    worked: int
    next_round: int
    next_place: int
    beads: int
    strung_mm: float
    runs: Runs
    to_buy: list[ToBuyResult]


class OutOfThreadResult(Result):
    """A thread that ended: `rest` of it is strung anew; `thread_mm` is what all that is still to work takes."""

    worked: int
    next_round: int
    next_place: int
    thread: int
    rest: ThreadResult
    joins: list[int]
    beads: int
    rest_thread_mm: float
    thread_mm: float
    left_mm: float
    works: int
    buy_mm: float

    @classmethod
    def of_end(cls, out: OutOfThread) -> Self:
        return cls(
            worked=out.remaining.worked,
            next_round=out.remaining.next_round,
            next_place=out.remaining.next_place,
            thread=out.number,
            rest=ThreadResult.of_thread(out.rest),
            joins=list(out.joins),
            beads=out.remaining.beads,
            rest_thread_mm=out.rest_mm,
            thread_mm=out.all_mm,
            left_mm=out.left_mm,
            works=out.works,
            buy_mm=out.buy_mm,
        )


class ShortResult(Result):
    """A colour of which too few are left, and what to buy of it."""

    wanted: int
    left: int
    code: str
    name: str
    beads: int
    grams: int

    @classmethod
    def of_short(cls, short: Short) -> Self:
        return cls(wanted=short.wanted, left=short.left, **ToBuyResult.of(short.buy).model_dump())


class OutOfColourResult(Result):
    """A colour that ends before the rope does; `next_bead` is the first one wanting, counted from one."""

    code: str
    name: str
    worked: int
    had: int
    next_bead: int
    next_round: int
    next_place: int
    joins: list[int]
    short: list[ShortResult]

    @classmethod
    def of_end(cls, out: OutOfColour) -> Self:
        return cls(
            code=out.code,
            name=out.name,
            worked=out.worked,
            had=out.had,
            next_bead=out.next_bead,
            next_round=out.next_round,
            next_place=out.next_place,
            joins=list(out.joins),
            short=[ShortResult.of_short(short) for short in out.short],
        )


def follow_up_results(answers: FollowUpAnswers) -> dict[str, Any]:
    """The results of the follow-up questions that were asked."""
    return {
        "compared": [ComparedResult.of_row(row) for row in answers.compared] or None,
        "longest": answers.longest and LongestResult.of_longest(answers.longest),
        "kit": answers.kit and KitResult.of(answers.kit),
        "remaining": answers.remaining and RemainingResult.of(answers.remaining),
        "out_of_thread": answers.out_of_thread and OutOfThreadResult.of_end(answers.out_of_thread),
        "out_of_colour": answers.out_of_colour and OutOfColourResult.of_end(answers.out_of_colour),
    }
