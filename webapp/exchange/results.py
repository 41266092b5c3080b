"""Lists, bills and answers as JSON, and the description of that JSON: one model each, made from the engine's value.

Lengths are unrounded millimetres, weights grams; runs stand in stringing order. Lists and bills are stable, because
scripts of other people read them.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import pi
from typing import Annotated, Any, Self

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field

from engine.counting.answers import Answer
from engine.counting.change import Change, change_in_words
from engine.counting.doubts import doubts
from engine.counting.findings import bill_thread_grams, fittings
from engine.counting.follow_ups import FollowUpAnswers
from engine.counting.materials import Materials
from engine.counting.offers import Offer, offers
from engine.counting.parts import WorkedPart, middle_in_words
from engine.counting.ran_out import OutOfColour, OutOfThread, Short
from engine.counting.reply import Words, reply
from engine.counting.ring_fit import fit_in_words, ring_fit
from engine.counting.ring_table import Ring, rings_near
from engine.counting.size_table import SizeRow
from engine.counting.sizes import Size
from engine.counting.stock import Longest
from engine.counting.stringing import StringingList, Thread
from engine.counting.sure import how_sure
from engine.pattern.seams import Seam, seam_in_words

Runs = list[tuple[str, int]]


class Result(BaseModel):
    """A value of the engine as JSON."""

    model_config = ConfigDict(from_attributes=True)

    @classmethod
    def of(cls, value: object) -> Self:
        """The result of a value with those attributes."""
        return cls.model_validate(value)

    def json_value(self) -> dict[str, Any]:
        """What is sent; a follow-up that was not asked is left out."""
        return self.model_dump(exclude_none=True)


class SeamResult(Result):
    """The seam before a part: how far what stands before turns it, and the rounds that bring it straight."""

    beads: float
    degrees: float
    more: int
    fewer: int
    words: str

    @classmethod
    def of_seam(cls, seam: Seam) -> Self:
        turn = seam.turn
        return cls(beads=turn.beads, degrees=turn.degrees, more=seam.more, fewer=seam.fewer, words=seam_in_words(seam))


class PartResult(Result):
    """A part of the rope in working order, as often as it is worked in that size."""

    name: str
    beads: int
    times: float
    rope_mm: float
    seam: SeamResult | None = Field(None, description="The seam before it; none before the first.")

    @classmethod
    def of_part(cls, part: WorkedPart) -> Self:
        return cls(
            name=part.name,
            beads=part.beads,
            times=part.times,
            rope_mm=part.rope_mm,
            seam=SeamResult.of_seam(part.seam) if part.seam else None,
        )


def _part_results(parts: Sequence[WorkedPart]) -> list[PartResult] | None:
    return [PartResult.of_part(part) for part in parts] if len(parts) > 1 else None


PartResults = Annotated[
    list[PartResult] | None,
    BeforeValidator(_part_results),
    Field(description="The parts in working order; left out of a rope of one part."),
]


class ThreadResult(Result):
    """A thread: runs in stringing order."""

    beads: int
    strung_mm: float
    runs: Runs
    parts: list[str] | None = Field(None, description="The parts it belongs to, where the rope has several.")

    @classmethod
    def of_thread(cls, thread: Thread) -> Self:
        return cls(
            beads=thread.beads,
            strung_mm=thread.strung_mm,
            runs=list(thread.runs),
            parts=list(thread.parts) or None,
        )


class StringingResult(Result):
    """`beads`, `repeat` and `runs` of one pass of the chart, `threads` of the size asked for, first worked first.

    Of several parts the chart is the first that fills, or else the one of most beads.
    """

    beads: int
    repeat: int
    runs: Runs
    threads: Annotated[
        list[ThreadResult], BeforeValidator(lambda threads: [ThreadResult.of_thread(thread) for thread in threads])
    ]
    parts: PartResults = None


class ColourResult(Result):
    """Beads of one colour."""

    code: str
    name: str
    beads: int
    grams: float
    buy_grams: int


class MaterialsResult(Result):
    """The bill, unrounded; lengths in mm. `spare` is what the purchase has, in percent."""

    length_mm: float
    rope_mm: float
    rounds_per_cm: float
    beads: int
    passes: float
    strung_mm: float
    strung_rule_mm: float
    thread_mm: float
    thickness_mm: float
    source: str = Field(description="Where the rope's measures come from, and how sure they are.")
    colours: list[ColourResult]
    spare: float
    buy_thread_mm: float
    parts: PartResults = None


class TurnResult(Result):
    """How far a ring turns at its seam."""

    beads: float
    degrees: float


class FindingResult(Result):
    """Something that goes with the rope: how much or how large, why, and where that comes from."""

    name: str
    measure: str
    reason: str
    source: str


class OfferResult(Result):
    """A length to offer; `round` asks for it."""

    round: str
    beads: int
    passes: float
    finished_mm: float

    @classmethod
    def of_offer(cls, offer: Offer) -> Self:
        return cls(
            round=offer.rounding,
            beads=offer.size.beads,
            passes=offer.size.passes,
            finished_mm=offer.size.finished_mm,
        )


class RingResult(Result):
    """A ring near the girth that closes in colour: room inside in mm, and how far its seam turns."""

    beads: int
    passes: float
    girth_mm: float
    diameter_mm: float
    degrees: float

    @classmethod
    def of_ring(cls, ring: Ring) -> Self:
        return cls(
            beads=ring.beads,
            passes=ring.passes,
            girth_mm=ring.girth_mm,
            diameter_mm=ring.diameter_mm,
            degrees=ring.drift.degrees,
        )


class BetterChartResult(Result):
    """A chart of a round more or less in what is repeated, and the ring nearer to the girth that it closes to."""

    rounds: int
    chart_beads: int
    ring_beads: int
    girth_mm: float
    off_mm: float


class RingFitResult(Result):
    """How far a ring is from what was asked for (`off_mm`), its measures, and how it is said where it is far."""

    girth_mm: float
    diameter_mm: float
    off_mm: float
    smaller: RingResult | None = None
    larger: RingResult | None = None
    better: list[BetterChartResult]
    remarks: list[str]

    @classmethod
    def of_size(cls, size: Size, units: str) -> Self | None:
        fit = ring_fit(size)
        if fit is None:
            return None
        return cls(
            girth_mm=size.finished_mm,
            diameter_mm=size.finished_mm / pi,
            off_mm=fit.off_mm,
            smaller=RingResult.of_ring(fit.smaller) if fit.smaller else None,
            larger=RingResult.of_ring(fit.larger) if fit.larger else None,
            better=[BetterChartResult.of(chart) for chart in fit.better],
            remarks=list(fit_in_words(size, units)),
        )


class ChangedColourResult(Result):
    """Beads of a colour more, below nought fewer, than in the answer before."""

    code: str
    beads: int


class ChangeResult(Result):
    """How an answer differs from the one before it, in numbers and in a sentence."""

    beads: int
    finished_mm: float
    strung_mm: float
    colours: list[ChangedColourResult]
    sentence: str

    @classmethod
    def of_change(cls, change: Change, units: str) -> Self:
        return cls(
            beads=change.beads,
            finished_mm=change.finished_mm,
            strung_mm=change.strung_mm,
            colours=[ChangedColourResult(code=code, beads=beads) for code, beads in change.by_code],
            sentence=change_in_words(change, units),
        )


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


class AnswerResult(Result):
    """A customer's question answered; what has no value, as follow-ups that were not asked, is left out."""

    pattern: int
    title: str
    revision: int
    sentence: str
    table: MaterialsResult
    closure: str = Field(description="How the piece ends; what `usual` became.")
    finished_mm: float
    thickness_mm: tuple[float, float] = Field(description="From, to; both the same where the rope was measured.")
    threads: int
    joins: int
    closes: bool
    closing: TurnResult
    parts: PartResults = None
    middle: str | None = Field(
        None, description="What lies in the middle of a rope of several parts, and how far a motif is off it."
    )
    measured: bool
    thread_per_bead_mm: float
    thread_source: str = Field(description="Where the thread a bead comes from: measured or estimated.")
    how_sure: str = Field(description="How sure the lengths are, and why.")
    doubts: list[str] = Field(description="Questions about what may have been meant.")
    findings: list[FindingResult]
    offers: list[OfferResult]
    rings: list[RingResult]
    thread_grams: float
    reply: str = Field(description="The reply in plain text, in the maker's words.")
    ring: RingFitResult | None = None
    change: ChangeResult | None = None
    compared: list[ComparedResult] | None = None
    longest: LongestResult | None = None
    kit: KitResult | None = None
    remaining: RemainingResult | None = None
    out_of_thread: OutOfThreadResult | None = None
    out_of_colour: OutOfColourResult | None = None

    @classmethod
    def of_answer(
        cls,
        answer: Answer,
        follow_ups: FollowUpAnswers,
        words: Words,
        pattern: int,
        revision: int,
        change: Change | None = None,
    ) -> Self:
        """The answer with all that stands beside it; `pattern` and `revision` are their numbers in the library."""
        size, use = answer.size, answer.materials.use
        return cls(
            pattern=pattern,
            title=answer.pattern.title,
            revision=revision,
            sentence=answer.sentence,
            table=MaterialsResult.of(answer.materials),
            closure=size.closure.key,
            finished_mm=size.finished_mm,
            thickness_mm=size.rope.thickness_range_mm,
            threads=len(answer.stringing.threads),
            joins=answer.stringing.joins,
            closes=size.closes,
            closing=TurnResult.of(size.closing),
            parts=answer.materials.parts,
            middle=middle_in_words(size, words.units) or None,
            measured=size.rope.measured,
            thread_per_bead_mm=use.per_bead_mm,
            thread_source=use.source,
            how_sure=how_sure(size),
            doubts=list(doubts(size, words.units)),
            findings=[FindingResult.of(fitting) for fitting in fittings(answer, words.units)],
            offers=[OfferResult.of_offer(offer) for offer in offers(size)],
            rings=[RingResult.of_ring(ring) for ring in rings_near(size)],
            thread_grams=bill_thread_grams(answer),
            reply=reply(answer, words),
            ring=RingFitResult.of_size(size, words.units),
            change=ChangeResult.of_change(change, words.units) if change else None,
            **_follow_up_results(follow_ups),
        )


def _follow_up_results(answers: FollowUpAnswers) -> dict[str, Any]:
    """The results of the follow-up questions that were asked."""
    return {
        "compared": [ComparedResult.of_row(row) for row in answers.compared] or None,
        "longest": answers.longest and LongestResult.of_longest(answers.longest),
        "kit": answers.kit and KitResult.of(answers.kit),
        "remaining": answers.remaining and RemainingResult.of(answers.remaining),
        "out_of_thread": answers.out_of_thread and OutOfThreadResult.of_end(answers.out_of_thread),
        "out_of_colour": answers.out_of_colour and OutOfColourResult.of_end(answers.out_of_colour),
    }


def stringing_json(stringing: StringingList) -> dict[str, Any]:
    """The stringing list as JSON."""
    return StringingResult.of(stringing).json_value()


def materials_json(bill: Materials) -> dict[str, Any]:
    """The bill as JSON."""
    return MaterialsResult.of(bill).json_value()
