"""An answer of the desk as JSON, and the description of that JSON: one model, made from the engine's value."""

from __future__ import annotations

from typing import Self

from pydantic import Field

from engine.counting.answers import Answer
from engine.counting.change import Change
from engine.counting.doubts import doubts
from engine.counting.findings import bill_thread_grams, fittings
from engine.counting.follow_ups import FollowUpAnswers
from engine.counting.offers import offers
from engine.counting.parts import middle_in_words
from engine.counting.reply import Words, reply
from engine.counting.ring_table import rings_near
from engine.counting.sure import how_sure
from webapp.exchange.results.beside import ChangeResult, FindingResult, OfferResult
from webapp.exchange.results.follow_ups import (
    ComparedResult,
    KitResult,
    LongestResult,
    OutOfColourResult,
    OutOfThreadResult,
    RemainingResult,
    follow_up_results,
)
from webapp.exchange.results.lists import MaterialsResult
from webapp.exchange.results.parts import PartResults
from webapp.exchange.results.result import Result
from webapp.exchange.results.rings import RingFitResult, RingResult, TurnResult


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
            **follow_up_results(follow_ups),
        )
