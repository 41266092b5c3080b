"""Thread that a bead takes: measured on a swatch that was unravelled, else an estimate."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from engine.counting.rope import UNRAVELLED, Rope, Swatch, fitting_swatch
from engine.units import length, millimetres, plain

TAILS_MM = 300.0  # a thread
THREAD_PER_BEAD = {"slip": 5.0, "single": 6.0}  # in working diameters, all in; estimate, one published datum: 6.1


@dataclass(frozen=True)
class ThreadUse:
    """Thread that a bead takes in mm (mixed kinds: the mean), whether it was measured, and where it comes from."""

    per_bead_mm: float
    measured: bool
    source: str

    def of(self, beads: int, threads: int) -> float:
        """Millimetres for that many beads on that many threads, tails and needle ends counted."""
        return beads * self.per_bead_mm + threads * TAILS_MM


def thread_use(
    rope: Rope,
    stitch: str,
    beads_by_kind: Mapping[str, int],
    swatches: Iterable[Swatch] = (),
    own_measure: bool = False,
) -> ThreadUse:
    """What the beads of that rope take: as unravelled, where a swatch tells it for every kind, else estimated.

    A swatch fits as it does for lengths. Whoever measured a pass in their own hands (`own_measure`) gets the estimate
    from that measure.
    """
    unravelled = [] if own_measure else [swatch for swatch in swatches if swatch.unravelled_mm]
    used = {kind: beads for kind, beads in beads_by_kind.items() if beads}
    found = {kind: fitting_swatch(unravelled, kind, rope.around, stitch) for kind in used}
    fitting = {kind: swatch for kind, swatch in found.items() if swatch}
    if not used or len(fitting) < len(used):
        widths = THREAD_PER_BEAD[stitch]
        return ThreadUse(widths * rope.working_mm, False, f"an estimate of {plain(widths, 1)} bead widths a bead")
    per_bead = sum(fitting[kind].thread_mm * beads for kind, beads in used.items()) / sum(used.values())
    return ThreadUse(per_bead, True, "; ".join(map(_in_words, fitting.values())))


def _in_words(swatch: Swatch) -> str:
    """ "measured on your swatch of 2026-03-01: 20 beads took 21.0 cm, 10.5 mm a bead"."""
    dated = f" of {swatch.date}" if swatch.date else ""
    return (
        f"measured on your swatch{dated}: {UNRAVELLED} beads took {length(swatch.unravelled_mm)}, "
        f"{millimetres(swatch.thread_mm)} a bead"
    )
