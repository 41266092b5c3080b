"""The rope in measures: thickness, rise per bead, channel; and the swatches that make the numbers one's own."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import isfinite
from typing import NamedTuple

from engine.counting.kinds import Kind
from engine.errors import PatternError
from engine.pattern.helix import helix
from engine.pattern.pattern import WIDEST_SLIP, check_around
from engine.units import length, whole

WALL = 0.3  # thread wall inside the channel, in bead diameters each side (estimate)
MIXED, MIXED_ERROR = "mixed bead kinds: estimate ±25 %", 0.25
WIDE_ERROR, ESTIMATE_ERROR = 0.10, 0.15  # 11/0 in wide single crochet, for which a swatch is published; anything else
SETTLED = "mixed bead kinds, settled until they touch: a model, ±25 %"
UNRAVELLED = 20  # beads whose thread is measured at once
STITCH_NAMES = {"slip": "slip stitch", "single": "single crochet"}


@dataclass(frozen=True)
class Swatch:
    """A measured sample: beads worked over a length in mm, for a bead kind, a stitch and a number around.

    `date` is written YYYY-MM-DD; `unravelled_mm` is the thread of 20 unravelled beads, nought where that was not
    measured. Raises PatternError where no rope measures so.
    """

    kind: str
    around: int
    stitch: str
    beads: int
    length_mm: float
    date: str = ""
    note: str = ""
    unravelled_mm: float = 0.0

    def __post_init__(self) -> None:
        check_around(self.around)
        if self.beads < 2 * self.around:
            raise PatternError("A swatch is at least two rounds long, better five centimetres.", "beads")
        if not (isfinite(self.length_mm) and self.length_mm > 0 and 0.2 <= self.working_mm <= 25):
            raise PatternError(
                "Beads and length of this swatch do not go together; "
                f"they make beads of {self.working_mm:.1f} mm across.",
                "length",
            )
        if self.unravelled_mm and not (1 <= self.thread_mm / self.working_mm <= 40):
            raise PatternError(
                f"The thread of {UNRAVELLED} unravelled beads cannot be "
                f"{length(self.unravelled_mm)} for beads of {self.working_mm:.1f} mm across.",
                "unravelled",
            )

    @property
    def working_mm(self) -> float:
        """Working diameter of the bead that gives the measured rise."""
        return self.length_mm / self.beads / helix(self.around).rise

    @property
    def thread_mm(self) -> float:
        """Thread that a bead takes, nought where nobody measured it."""
        return self.unravelled_mm / UNRAVELLED


def beads_of_rows(rows: float, around: int) -> int:
    """Beads in that many rows counted along the finished rope: rows hold N + ½ beads each."""
    return whole(rows * (around + 0.5))


class Shape(NamedTuple):
    """Measures of a rope in working diameters: the rise per bead, across the beads, and between the innermost ones."""

    rise: float
    thickness: float
    channel: float


@dataclass(frozen=True)
class Rope:
    """A rope of one working diameter. Lengths in mm; `bead_mm` is the rise per bead along the rope.

    `shape` is that of beads that differ in size, whose mean the working diameter is; None of a rope of one kind, whose
    beads stand on the helix. `measured` tells whether a swatch stands behind it, `source` says so in words, `sure` is
    the error to reckon with (0.1 is ±10 %), nought with a swatch.
    """

    around: int
    working_mm: float
    measured: bool
    source: str
    sure: float
    shape: Shape | None = None

    @property
    def _shape(self) -> Shape:
        made = helix(self.around)
        return self.shape or Shape(made.rise, 2 * made.radius + 1, 2 * made.radius - 1)

    @property
    def bead_mm(self) -> float:
        return self._shape.rise * self.working_mm

    @property
    def thickness_mm(self) -> float:
        return self._shape.thickness * self.working_mm

    @property
    def thickness_range_mm(self) -> tuple[float, float]:
        """Between which thicknesses the rope will be; both the same where it was measured."""
        return self.thickness_mm * (1 - self.sure), self.thickness_mm * (1 + self.sure)

    @property
    def channel_range_mm(self) -> tuple[float, float]:
        """Between which widths the channel will be."""
        return self.channel_mm * (1 - self.sure), self.channel_mm * (1 + self.sure)

    @property
    def channel_mm(self) -> float:
        """Room for a core: between the beads, less the thread wall on both sides."""
        return max(0.0, (self._shape.channel - 2 * WALL) * self.working_mm)

    @property
    def rounds_per_cm(self) -> float:
        return 10 / (self.around * self.bead_mm)


def rope(
    around: int,
    stitch: str,
    beads_by_kind: Mapping[str, int],
    kinds: Mapping[str, Kind],
    swatches: Iterable[Swatch] = (),
    mixed: bool = False,
) -> Rope:
    """The rope that those beads make: from the best swatch, or from the table of kinds, said to be an estimate.

    `mixed`: beads of other kinds are worked into other parts of the same rope.
    """
    used = {name: beads for name, beads in beads_by_kind.items() if beads}
    fitting = {name: fitting_swatch(swatches, name, around, stitch) for name in used}
    diameters = working_diameters(fitting, kinds)
    mean = sum(diameters[name] * beads for name, beads in used.items()) / sum(used.values())
    if mixed or len(used) > 1:
        return Rope(around=around, working_mm=mean, measured=False, source=MIXED, sure=MIXED_ERROR)
    name, swatch = next(iter(fitting.items()))
    if swatch:
        return Rope(around=around, working_mm=diameters[name], measured=True, source=swatch_in_words(swatch), sure=0.0)
    source, sure = _estimate(name, around, stitch)
    return Rope(around=around, working_mm=diameters[name], measured=False, source=source, sure=sure)


def working_diameters(fitting: Mapping[str, Swatch | None], kinds: Mapping[str, Kind]) -> dict[str, float]:
    """The working diameter of each kind in mm: by the swatch that fits, else by the table."""
    return {name: swatch.working_mm if swatch else kinds[name].working_mm for name, swatch in fitting.items()}


def fitting_swatch(swatches: Iterable[Swatch], kind: str, around: int, stitch: str) -> Swatch | None:
    """The swatch of that kind and stitch with the nearest number around, of several the newest."""
    alike = [swatch for swatch in swatches if (swatch.kind, swatch.stitch) == (kind, stitch)]
    newest_first = sorted(alike, key=lambda swatch: swatch.date, reverse=True)
    return min(newest_first, key=lambda swatch: abs(swatch.around - around), default=None)


def swatch_in_words(swatch: Swatch) -> str:
    """Which swatch a number comes from: "your swatch of 2026-03-01: …"."""
    dated = f" of {swatch.date}" if swatch.date else ""
    return (
        f"your swatch{dated}: {swatch.kind}, {swatch.around} around, {STITCH_NAMES[swatch.stitch]}, "
        f"{swatch.beads:,} beads in {length(swatch.length_mm)}"
    )


def _estimate(kind: str, around: int, stitch: str) -> tuple[str, float]:
    if kind == "11/0 round" and stitch == "single" and around > WIDEST_SLIP:
        return "11/0 single crochet, wide: estimate ±10 %", WIDE_ERROR
    return "estimate ±15 %", ESTIMATE_ERROR
