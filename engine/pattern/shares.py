"""How the parts of a rope share its beads: fixed parts as they are, the rest evenly among the fills.

A fill that begins the rope is cut at its beginning and one that ends it at its end, so that every seam looks as drawn.
A fill between fixed parts takes whole passes.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from engine.pattern.part import Part
from engine.units import whole

SAME = 1e-6  # whole passes within this share of one are those passes


class LaidPart(NamedTuple):
    """A part as it lies in a worked rope: its beads are `first` to before `first + beads`; a cut is at its beginning
    where `cut_first` says so, else at its end."""

    part: Part
    first: int
    beads: int
    cut_first: bool

    @property
    def last(self) -> int:
        return self.first + self.beads

    @property
    def times(self) -> float:
        """How often its chart is worked."""
        return self.beads / len(self.part.beads)

    @property
    def worked(self) -> bytes:
        """Its beads in working order."""
        chart = self.part.beads
        said = chart * -(-self.beads // len(chart))
        return said[len(said) - self.beads :] if self.cut_first else said[: self.beads]

    @property
    def begin(self) -> int:
        """Where the first whole pass begins, counted along the rope."""
        return self.first + self.beads % len(self.part.beads) if self.cut_first else self.first

    @property
    def pass_ends(self) -> tuple[int, ...]:
        """Where its passes end, counted along the rope; a pass that is cut ends, too."""
        chart = len(self.part.beads)
        begins = range(self.begin, self.last, chart)
        return (*(end for end in begins if end > self.first), *((self.last,) if self.beads else ()))


def lay(parts: Sequence[Part], shares: Sequence[int]) -> tuple[LaidPart, ...]:
    """The parts one behind the other; `shares` are the beads of the fills in their order."""
    laid, first, left = [], 0, list(shares)
    for place, part in enumerate(parts):
        beads = left.pop(0) if part.fills else part.fixed_beads
        laid.append(LaidPart(part, first, beads, place == 0 and part.fills and len(parts) > 1))
        first += beads
    return tuple(laid)


def shared(parts: Sequence[Part], between: int, bead_mm: Sequence[float] | None = None) -> tuple[int, ...]:
    """Beads of every fill where `between` beads are to be shared.

    The length is shared: `bead_mm` is what a bead of each fill adds to the rope; left out, they are all alike. Where no
    fill stands at an end of the rope, what is no whole pass lies behind the last one.
    """
    filling = _Filling.of(parts, bead_mm)
    evenly = filling.evenly(between)
    inner = {fill: _passes(evenly[fill] / filling.charts[fill], whole) for fill in filling.inner}
    if filling.beads_of(inner) > between or not filling.outer:
        inner = filling.topped_up({fill: _passes(evenly[fill] / filling.charts[fill], int) for fill in inner}, between)
    rest = between - filling.beads_of(inner)
    return filling.with_rest(inner, rest)


def whole_passes(
    parts: Sequence[Part],
    between: float,
    rounded: Callable[[float], int],
    bead_mm: Sequence[float] | None = None,
) -> tuple[int, ...]:
    """Beads of every fill in whole passes, one or more each, with which they share so many beads most evenly."""
    filling = _Filling.of(parts, bead_mm)
    evenly = filling.evenly(between)
    return tuple(chart * max(1, _passes(evenly[fill] / chart, rounded)) for fill, chart in enumerate(filling.charts))


def _passes(passes: float, rounded: Callable[[float], int]) -> int:
    nearest = whole(passes)
    return nearest if abs(passes - nearest) < SAME else rounded(passes)


class _Filling(NamedTuple):
    """The fills of a rope: beads of their charts, which stand at an end of the rope, and what a bead weighs."""

    charts: tuple[int, ...]
    outer: tuple[int, ...]
    weights: tuple[float, ...]

    @classmethod
    def of(cls, parts: Sequence[Part], bead_mm: Sequence[float] | None) -> _Filling:
        places = [place for place, part in enumerate(parts) if part.fills]
        outer = tuple(fill for fill, place in enumerate(places) if place in (0, len(parts) - 1))
        charts = tuple(len(parts[place].beads) for place in places)
        return cls(charts, outer, tuple(1 / mm for mm in bead_mm) if bead_mm else (1.0,) * len(places))

    @property
    def inner(self) -> tuple[int, ...]:
        """The fills between fixed parts."""
        return tuple(fill for fill in range(len(self.charts)) if fill not in self.outer)

    def evenly(self, between: float) -> list[float]:
        """Beads of every fill where each has the same length."""
        return [between * weight / sum(self.weights) for weight in self.weights]

    def beads_of(self, passes: dict[int, int]) -> int:
        return sum(self.charts[fill] * times for fill, times in passes.items())

    def topped_up(self, passes: dict[int, int], between: int) -> dict[int, int]:
        """Without a fill at an end: a pass more for the fills that are shortest, as long as one fits."""
        evenly, topped = self.evenly(between), dict(passes)
        while not self.outer:
            left = between - self.beads_of(topped)
            wanting = [fill for fill in topped if self.charts[fill] <= left]
            if not wanting:
                break
            topped[max(wanting, key=lambda fill: evenly[fill] - topped[fill] * self.charts[fill])] += 1
        return topped

    def with_rest(self, passes: dict[int, int], rest: int) -> tuple[int, ...]:
        """Beads of every fill: the inner ones have those passes, the outer ones share the rest."""
        beads = {fill: self.charts[fill] * times for fill, times in passes.items()}
        if len(self.outer) == 2:
            first, last = self.outer
            share = whole(rest * self.weights[first] / (self.weights[first] + self.weights[last]) + SAME)
            beads |= {first: share, last: rest - share}
        elif self.outer:
            beads[self.outer[0]] = rest
        elif beads:
            beads[max(beads)] += rest
        return tuple(beads[fill] for fill in sorted(beads))
