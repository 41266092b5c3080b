"""The parts of a worked rope: how often each is worked, what it measures, its seam, and what is in the middle."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate
from typing import NamedTuple

from engine.counting.sizes import Size
from engine.pattern.part import CHART
from engine.pattern.seams import Seam, seam
from engine.units import counted, length, millimetres, plain

MOST_TOLD = 5  # parts in a sentence
MIDDLE_MM = 0.5  # what is nearer to the middle stands in it


@dataclass(frozen=True)
class WorkedPart:
    """A part as it is worked in a size: its number counted from one, its beads and how often its chart is worked.

    `first` is its first bead in the rope. It begins `begin_mm` along the rope and is `rope_mm` long. `seam` is the one
    before it, None for the first.
    """

    number: int
    name: str
    fills: bool
    first: int
    beads: int
    times: float
    begin_mm: float
    rope_mm: float
    seam: Seam | None

    @property
    def last(self) -> int:
        return self.first + self.beads


class Middle(NamedTuple):
    """The part in which the middle of the rope lies, `from_begin_mm` behind its first bead, and the motif's distance.

    `motif` is the part with other parts on both sides whose own middle is nearest, `off_mm` how far it lies beyond the
    middle of the rope, below nought before it.
    """

    part: WorkedPart
    from_begin_mm: float
    motif: WorkedPart | None
    off_mm: float


def worked_parts(size: Size) -> tuple[WorkedPart, ...]:
    """The parts of that rope in working order."""
    lengths_mm = [part.beads * made.bead_mm for part, made in zip(size.laid, size.ropes, strict=True)]
    begins_mm = accumulate(lengths_mm, initial=0.0)
    return tuple(
        WorkedPart(
            number=number,
            name=laid.part.name,
            fills=laid.part.fills,
            first=laid.first,
            beads=laid.beads,
            times=laid.times,
            begin_mm=begin_mm,
            rope_mm=rope_mm,
            seam=seam(size.around, number, laid.first) if number > 1 else None,
        )
        for number, (laid, begin_mm, rope_mm) in enumerate(zip(size.laid, begins_mm, lengths_mm, strict=False), 1)
    )


def parts_between(parts: Sequence[WorkedPart], first: int, last: int) -> tuple[WorkedPart, ...]:
    """Those of the parts of which the beads `first` to before `last` of a rope are; none of a rope of one part."""
    several = parts if len(parts) > 1 else ()
    return tuple(part for part in several if part.first < last and first < part.last)


def middle(size: Size) -> Middle | None:
    """What stands in the middle of a rope of several parts; None of a ring, which has none."""
    if len(size.laid) == 1 or size.closure.worked_shut:
        return None
    parts, middle_mm = worked_parts(size), size.rope_mm / 2
    part = next(part for part in reversed(parts) if part.begin_mm <= middle_mm and part.beads)
    motifs = [motif for motif in parts[1:-1] if not motif.fills]
    motif = min(motifs, key=lambda motif: abs(_off_mm(motif, middle_mm)), default=None)
    return Middle(part, middle_mm - part.begin_mm, motif, _off_mm(motif, middle_mm) if motif else 0.0)


def _off_mm(part: WorkedPart, middle_mm: float) -> float:
    return part.begin_mm + part.rope_mm / 2 - middle_mm


def middle_in_words(size: Size, units: str = "cm") -> str:
    """Where the middle lies: "The middle of the rope lies in “Focal”, which is 2.1 mm off it, nearer to the end."."""
    found = middle(size)
    if found is None:
        return ""
    lies = f"The middle of the rope lies in “{found.part.name}”"
    if found.motif is None:
        return f"{lies}, {length(found.from_begin_mm, units)} from where that part begins."
    off = f"{millimetres(abs(found.off_mm))} off the middle, nearer to the {'end' if found.off_mm > 0 else 'beginning'}"
    stands = "right in the middle" if abs(found.off_mm) < MIDDLE_MM else off
    if found.motif == found.part:
        return f"The middle of the rope lies in “{found.part.name}”, which stands {stands}."
    return f"{lies}; “{found.motif.name}” stands {stands}."


def parts_in_words(size: Size) -> str:
    """How often what is worked: "3.5 passes of the chart", "“Rope” 6.25 times, “Focal” once"."""
    pattern, passes = size.pattern, plain(size.passes, 2)
    if len(pattern.parts) == 1 or (len(pattern.fills) == 1 and pattern.main.name == CHART):
        return f"{passes} {'pass' if passes == '1' else 'passes'} of the chart"
    if len(pattern.parts) > MOST_TOLD:
        return f"{counted(len(pattern.parts), 'part')}"
    return ", ".join(f"“{part.name}” {times_in_words(part.times)}" for part in worked_parts(size))


def times_in_words(times: float) -> str:
    """How often: "once", "6.25 times"."""
    said = plain(times, 2)
    return "once" if said == "1" else f"{said} times"
