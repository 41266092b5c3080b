"""The maker's own numbers, which every sum uses in place of the built-in ones."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from engine.counting.closures import Closure, usual_allowances
from engine.counting.kinds import KINDS, Kind
from engine.counting.questions import NamedSize
from engine.counting.rope import Swatch


@dataclass(frozen=True)
class Workshop:
    """The maker's own numbers: bead kinds, swatches, and what closures add to the rope in mm, by their keys.

    `longest_mm` and `heaviest_g` are the most strung beads that can be handled on a thread (None: not set), `sizes` the
    finished sizes that tables show (none: the usual ones).
    """

    kinds: Mapping[str, Kind] = field(default_factory=lambda: KINDS)
    swatches: tuple[Swatch, ...] = ()
    allowances: Mapping[str, float] = field(default_factory=usual_allowances)
    longest_mm: float | None = None
    heaviest_g: float | None = None
    sizes: tuple[NamedSize, ...] = ()

    def with_longest(self, longest_mm: float | None) -> Workshop:
        """The same numbers, with the longest string that is asked for this once."""
        return self if longest_mm is None else replace(self, longest_mm=longest_mm)

    def allowance_mm(self, closure: Closure) -> float:
        """What that closure adds to the rope."""
        return self.allowances.get(closure.key, closure.allowance_mm or 0.0)
