"""Stringing list and bill as JSON; other people's scripts read them, so they are stable.

Lengths are unrounded millimetres, weights grams; runs stand in stringing order.
"""

from __future__ import annotations

from typing import Annotated, Any, Self

from pydantic import BeforeValidator, Field

from engine.counting.materials import Materials
from engine.counting.stringing import StringingList, Thread
from webapp.exchange.results.parts import PartResults
from webapp.exchange.results.result import Result, Runs


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


def stringing_json(stringing: StringingList) -> dict[str, Any]:
    """The stringing list as JSON."""
    return StringingResult.of(stringing).json_value()


def materials_json(bill: Materials) -> dict[str, Any]:
    """The bill as JSON."""
    return MaterialsResult.of(bill).json_value()
