"""Lengths to offer beside the one asked for: the whole passes below and above it, and threads that are longer."""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

from engine.counting.answers import Answer
from engine.counting.sizes import Size, size
from engine.counting.stringing import string
from engine.counting.thread import TAILS_MM
from engine.errors import EngineError

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


def offers(asked: Size) -> tuple[Offer, ...]:
    """The last whole pass below, as asked, and the next above; those that come to the same beads stand once.

    A size that cannot be worked is left out.
    """
    offered: dict[int, Offer] = {asked.beads: Offer(asked.question.rounding, asked)}
    for rounding in ("down", "up"):
        try:
            other = size(asked.pattern, replace(asked.question, rounding=rounding), asked.workshop)
        except EngineError:
            continue
        offered.setdefault(other.beads, Offer(rounding, other))
    return tuple(offered[beads] for beads in sorted(offered))


def longer_threads(answer: Answer) -> LongerThreads | None:
    """What longer threads would spare, where many short ones are asked for; None where they would not be fewer."""
    threads = len(answer.stringing.threads)
    most_m = (answer.workshop.longest_mm or LONGER_M * 1000) / 1000
    if threads <= MANY_THREADS:
        return None
    try:
        fewer = len(string(answer.size, most_m).threads)
    except EngineError:
        return None
    saved = threads - fewer
    return LongerThreads(most_m, fewer, saved * TAILS_MM) if saved > 0 else None
