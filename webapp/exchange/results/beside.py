"""What stands beside an answer, as JSON: findings, lengths to offer, what has changed."""

from __future__ import annotations

from typing import Self

from engine.counting.change import Change, change_in_words
from engine.counting.offers import Offer
from webapp.exchange.results.result import Result


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
