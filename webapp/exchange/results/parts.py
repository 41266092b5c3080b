"""Parts of a rope as JSON, and where they meet."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Annotated, Self

from pydantic import BeforeValidator, Field

from engine.counting.parts import WorkedPart
from engine.pattern.seams import Seam, seam_in_words
from webapp.exchange.results.result import Result


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
