"""The whole piece as JSON: how the parts of a rope lie in a size, where they meet, and what stands in the middle."""

from __future__ import annotations

from typing import Self

from pydantic import Field

from engine.counting.parts import WorkedPart, middle_in_words, parts_in_words, worked_parts
from engine.counting.sizes import Size
from webapp.exchange.results.parts import PartResult
from webapp.exchange.results.result import Result


class PiecePartResult(PartResult):
    """A part of the piece. `begins` is the bead of its chart with which it begins, counted from nought."""

    first: int = Field(description="Its first bead in the piece, counted from nought.")
    begins: int
    begin_mm: float

    @classmethod
    def of_piece(cls, part: WorkedPart, begins: int) -> Self:
        told = dict(PartResult.of_part(part))
        return cls(**told, first=part.first, begins=begins, begin_mm=part.begin_mm)


class PieceResult(Result):
    """The piece of a size, lengths in mm. `words` say how often what is worked and what stands in the middle."""

    beads: int
    rope_mm: float
    finished_mm: float
    closes: bool
    parts: list[PiecePartResult]
    words: str

    @classmethod
    def of_size(cls, size: Size, units: str) -> Self:
        begins = (-laid.beads % len(laid.part.beads) if laid.cut_first else 0 for laid in size.laid)
        parts = [PiecePartResult.of_piece(part, first) for part, first in zip(worked_parts(size), begins, strict=True)]
        sentences = (f"{parts_in_words(size)}.", middle_in_words(size, units))
        return cls(
            beads=size.beads,
            rope_mm=size.rope_mm,
            finished_mm=size.finished_mm,
            closes=size.closes,
            parts=parts,
            words=" ".join(filter(None, sentences)),
        )
