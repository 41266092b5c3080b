"""Thread that a bead takes: measured on a swatch that was unravelled, else an estimate."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from engine.counting.rope import UNRAVELLED, Swatch, fitting_swatch, working_diameters
from engine.counting.sizes import Size
from engine.units import length, millimetres, plain

TAILS_MM = 300.0  # a thread
THREAD_PER_BEAD = {"slip": 6.0, "single": 7.0}  # in working diameters, all in; estimate, one published datum: 6.1


@dataclass(frozen=True)
class ThreadUse:
    """Thread that a bead takes in mm (mixed kinds: the mean), whether it was measured, and where it comes from."""

    per_bead_mm: float
    measured: bool
    source: str

    def of(self, beads: int, threads: int) -> float:
        """Millimetres for that many beads on that many threads, tails and needle ends counted."""
        return beads * self.per_bead_mm + threads * TAILS_MM


def thread_use(size: Size, beads_by_kind: Mapping[str, int]) -> ThreadUse:
    """What the beads of that rope take: as unravelled, where a swatch tells it for every kind, else estimated.

    A swatch fits as it does for lengths. Whoever measured a pass in their own hands gets the estimate from it.
    """
    used = {kind: beads for kind, beads in beads_by_kind.items() if beads}
    swatches = [] if size.question.pass_mm is not None else size.workshop.swatches
    unravelled = [swatch for swatch in swatches if swatch.unravelled_mm]
    fitting = {kind: fitting_swatch(unravelled, kind, size.around, size.stitch) for kind in used}
    measured = {kind: swatch for kind, swatch in fitting.items() if swatch}
    if not used or len(measured) < len(used):
        return _estimated(size, used)
    per_bead = sum(measured[kind].thread_mm * beads for kind, beads in used.items()) / sum(used.values())
    return ThreadUse(per_bead, True, "; ".join(map(_in_words, measured.values())))


def _estimated(size: Size, used: Mapping[str, int]) -> ThreadUse:
    widths = THREAD_PER_BEAD[size.stitch]
    working_mm = size.rope.working_mm
    if len(used) > 1:
        fitting = {kind: fitting_swatch(size.workshop.swatches, kind, size.around, size.stitch) for kind in used}
        diameters = working_diameters(fitting, size.workshop.kinds)
        working_mm = sum(diameters[kind] * beads for kind, beads in used.items()) / sum(used.values())
    return ThreadUse(widths * working_mm, False, f"an estimate of {plain(widths, 1)} bead widths a bead")


def _in_words(swatch: Swatch) -> str:
    """ "measured on your swatch of 2026-03-01: 20 beads took 21.0 cm, 10.5 mm a bead"."""
    dated = f" of {swatch.date}" if swatch.date else ""
    return (
        f"measured on your swatch{dated}: {UNRAVELLED} beads took {length(swatch.unravelled_mm)}, "
        f"{millimetres(swatch.thread_mm)} a bead"
    )
