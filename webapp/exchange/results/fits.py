"""Where a stretch fits a pattern, as JSON."""

from __future__ import annotations

from typing import Any

from pydantic import Field

from engine.counting.mistakes import Fit, Mistake, mistake_in_words, remedy_in_words
from webapp.exchange.results.result import Result


class MistakeResult(Result):
    """A mistake: its bead in the worked rope with round and place, its run in the list, counted from one, and words."""

    kind: str
    bead: int
    round: int
    place: int
    thread: int
    run: int
    expected: list[tuple[int, str]]
    found: list[tuple[int, str]]
    words: str
    remedy: str

    @classmethod
    def of_mistake(cls, mistake: Mistake) -> MistakeResult:
        return cls(**vars(mistake), words=mistake_in_words(mistake), remedy=remedy_in_words(mistake))


class FitResult(Result):
    """Beads `first` to `last` of the worked rope; `places` where it fits as well, nought where it fits nowhere."""

    places: int
    first: int | None = None
    last: int | None = None
    turned: bool = False
    mistakes: list[MistakeResult] = Field(default_factory=list)

    @classmethod
    def of_fit(cls, fit: Fit | None) -> dict[str, Any]:
        if fit is None:
            return cls(places=0).model_dump()
        told = [MistakeResult.of_mistake(mistake) for mistake in fit.mistakes]
        return cls(places=fit.places, first=fit.first, last=fit.last, turned=fit.turned, mistakes=told).model_dump()
