"""How figures are taken and told."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from time import perf_counter
from typing import NamedTuple


class Figure(NamedTuple):
    """What was measured, the figure, its budget, and how many times as fast as a rival way that is."""

    what: str
    measured: str
    budget: str = ""
    rival: str = ""


Figures = Iterator[tuple[str, ...]]  # fields of a Figure


def best_ms(call: Callable[[], object], times: int = 15) -> float:
    """The quickest of so many calls, in ms."""
    return min(taken_ms(call) for _ in range(times))


def taken_ms(call: Callable[[], object]) -> float:
    begun = perf_counter()
    call()
    return (perf_counter() - begun) * 1000


def p95(taken: list[float]) -> float:
    """The 95th percentile."""
    return sorted(taken)[min(len(taken) - 1, int(0.95 * len(taken)))]


def times(own: float, rival: float, way: str) -> str:
    """How many times as long the rival way takes: "3.1 × bead by bead"."""
    return f"{rival / own:,.1f} × {way}"


def ms(value: float) -> str:
    return f"{value:,.1f} ms"
