"""How figures are taken and told."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from time import perf_counter

Figures = Iterator[tuple[str, str, str]]  # what was measured, the figure, its budget


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


def ms(value: float) -> str:
    return f"{value:,.1f} ms"
