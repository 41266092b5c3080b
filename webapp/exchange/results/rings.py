"""Rings as JSON: those near a girth, and how one fits."""

from __future__ import annotations

from math import pi
from typing import Self

from engine.counting.ring_fit import fit_in_words, ring_fit
from engine.counting.ring_table import Ring
from engine.counting.sizes import Size
from webapp.exchange.results.result import Result


class TurnResult(Result):
    """How far a ring turns at its seam."""

    beads: float
    degrees: float


class RingResult(Result):
    """A ring near the girth that closes in colour: room inside in mm, and how far its seam turns."""

    beads: int
    passes: float
    girth_mm: float
    diameter_mm: float
    degrees: float

    @classmethod
    def of_ring(cls, ring: Ring) -> Self:
        return cls(
            beads=ring.beads,
            passes=ring.passes,
            girth_mm=ring.girth_mm,
            diameter_mm=ring.diameter_mm,
            degrees=ring.drift.degrees,
        )


class BetterChartResult(Result):
    """A chart of a round more or less in what is repeated, and the ring nearer to the girth that it closes to."""

    rounds: int
    chart_beads: int
    ring_beads: int
    girth_mm: float
    off_mm: float


class RingFitResult(Result):
    """How far a ring is from what was asked for (`off_mm`), its measures, and how it is said where it is far."""

    girth_mm: float
    diameter_mm: float
    off_mm: float
    smaller: RingResult | None = None
    larger: RingResult | None = None
    better: list[BetterChartResult]
    remarks: list[str]

    @classmethod
    def of_size(cls, size: Size, units: str) -> Self | None:
        fit = ring_fit(size)
        if fit is None:
            return None
        return cls(
            girth_mm=size.finished_mm,
            diameter_mm=size.finished_mm / pi,
            off_mm=fit.off_mm,
            smaller=RingResult.of_ring(fit.smaller) if fit.smaller else None,
            larger=RingResult.of_ring(fit.larger) if fit.larger else None,
            better=[BetterChartResult.of(chart) for chart in fit.better],
            remarks=list(fit_in_words(size, units)),
        )
