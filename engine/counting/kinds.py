"""Bead kinds and their measures, one named table, and the density of glass that a row of it implies."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import pi
from types import MappingProxyType

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
            Kind("15/0 round", 1.5, 1.10, 0.7, 260, 1.35, 250),
            Kind("11/0 round", 2.1, 1.40, 0.8, 110, 1.97628, 105),
            Kind("10/0 round", 2.3, 1.55, 0.9, 88, 2.1, 80),
            Kind("8/0 round", 3.0, 1.82, 1.1, 38, 2.75, 34.7),
            Kind("6/0 round", 4.0, 2.8, 1.4, 15, 3.6, 14),
            Kind("11/0 cylinder", 1.6, 1.3, 0.8, 195, 1.6, 185),
        )
    }
)
