"""Lengths to offer beside the one asked for: the whole passes below and above it, and threads that are longer."""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

from engine.counting.sizes import Question, Size, Workshop, size
from engine.counting.stringing import StringingList, string
from engine.counting.thread import TAILS_MM
from engine.errors import EngineError
from engine.pattern.pattern import Pattern

MANY_THREADS = 12
LONGER_M = 4.0  # strung beads that are handled with ease


class Offer(NamedTuple):
    """A size that ends where the chart does, or the one asked for; `rounding` asks for it."""

    rounding: str
    size: Size


class LongerThreads(NamedTuple):
    """Threads of at most so many metres instead of one pass each: how many, and thread saved on tails in mm."""

    metres: float
    threads: int
    saved_mm: float


def offers(pattern: Pattern, question: Question, workshop: Workshop | None = None) -> tuple[Offer, ...]:
    """The last whole pass below, as asked, and the next above; those that come to the same beads stand once.

    A size that cannot be worked is left out.
    """
    found: dict[int, Offer] = {}
    for rounding in (question.rounding, "down", "up"):
        try:
            offered = size(pattern, replace(question, rounding=rounding), workshop)
        except EngineError:
            continue
        found.setdefault(offered.beads, Offer(rounding, offered))
    return tuple(found[beads] for beads in sorted(found))


def longer_threads(
    pattern: Pattern, size: Size, listed: StringingList, workshop: Workshop | None = None
) -> LongerThreads | None:
    """What longer threads would spare, where many short ones are asked for; None where they would not be fewer."""
    own = workshop or Workshop()
    most_m = (own.longest_mm or LONGER_M * 1000) / 1000
    if len(listed.threads) <= MANY_THREADS:
        return None
    try:
        fewer = len(string(pattern, size, most_m, workshop).threads)
    except EngineError:
        return None
    saved = len(listed.threads) - fewer
    return LongerThreads(most_m, fewer, saved * TAILS_MM) if saved > 0 else None
