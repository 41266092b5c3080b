"""Bead kinds and their measures, one named table, and the density of glass that a row of it implies."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import pi
from types import MappingProxyType

from engine.pattern.pattern import Pattern

LIKELY_DENSITY = (1.8, 4.0)  # g/cm³; soda-lime glass 2.5, old leaded glass 3 and up
USUALLY_FEWEST = 0.92  # of the usual count; the built-in kinds have 0.91 to 0.96 (estimate)
ROUND_SHAPE = 0.85  # share of its cylinder that a rounded bead fills


@dataclass(frozen=True)
class Kind:
    """Measures of a bead kind: millimetres, beads per gram, and the working diameter where no swatch says better.

    `per_gram` is the usual count, which tells weights; `fewest_per_gram` the least that a gram was found to hold, for
    buying (nought: not known).
    """

    name: str
    diameter_mm: float
    length_mm: float
    hole_mm: float
    per_gram: float
    working_mm: float
    fewest_per_gram: float = 0.0

    @property
    def fewest(self) -> float:
        """Beads that a gram holds at least."""
        return min(self.fewest_per_gram or self.per_gram * USUALLY_FEWEST, self.per_gram)

    @property
    def cylinder(self) -> bool:
        return "cylinder" in self.name

    @property
    def density(self) -> float:
        """Glass density that the measures imply, g/cm³."""
        shape = 1.0 if self.cylinder else ROUND_SHAPE
        volume_mm3 = shape * pi / 4 * (self.diameter_mm**2 - self.hole_mm**2) * self.length_mm
        return 1000 / self.per_gram / volume_mm3

    @property
    def likely(self) -> bool:
        """Whether glass of that density is made; a kind that is not likely is questioned."""
        return LIKELY_DENSITY[0] <= self.density <= LIKELY_DENSITY[1]


# 1.97628 makes 20 around exactly 6 rounds per cm (common practice, no source)
KINDS: Mapping[str, Kind] = MappingProxyType(
    {
        kind.name: kind
        for kind in (
            Kind(
                name="15/0 round",
                diameter_mm=1.5,
                length_mm=1.10,
                hole_mm=0.7,
                per_gram=260,
                working_mm=1.35,
                fewest_per_gram=250,
            ),
            Kind(
                name="11/0 round",
                diameter_mm=2.1,
                length_mm=1.40,
                hole_mm=0.8,
                per_gram=110,
                working_mm=1.97628,
                fewest_per_gram=105,
            ),
            Kind(
                name="10/0 round",
                diameter_mm=2.3,
                length_mm=1.55,
                hole_mm=0.9,
                per_gram=88,
                working_mm=2.1,
                fewest_per_gram=80,
            ),
            Kind(
                name="8/0 round",
                diameter_mm=3.0,
                length_mm=1.82,
                hole_mm=1.1,
                per_gram=38,
                working_mm=2.75,
                fewest_per_gram=34.7,
            ),
            Kind(
                name="6/0 round",
                diameter_mm=4.0,
                length_mm=2.8,
                hole_mm=1.4,
                per_gram=15,
                working_mm=3.6,
                fewest_per_gram=14,
            ),
            Kind(
                name="11/0 cylinder",
                diameter_mm=1.6,
                length_mm=1.3,
                hole_mm=0.8,
                per_gram=195,
                working_mm=1.6,
                fewest_per_gram=185,
            ),
        )
    }
)


def bead_sizes(pattern: Pattern, kinds: Mapping[str, Kind]) -> tuple[float, ...]:
    """Working diameters in mm of the palette's entries; none where all beads worked are of one size, or one's kind is
    not known."""
    used = {pattern.palette[index].kind for index in set(pattern.drawn)}
    if not used <= kinds.keys() or len({kinds[name].working_mm for name in used}) < 2:
        return ()
    mean = sum(kinds[name].working_mm for name in used) / len(used)
    return tuple(kinds[entry.kind].working_mm if entry.kind in kinds else mean for entry in pattern.palette)
