"""How beads of several sizes lie in a rope: larger and further out than others, settled as the model has it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

import numpy as np

from engine.drawing.beadform import Array
from engine.pattern.helix import helix
from engine.pattern.settled import Settled, settled_charts
from engine.pattern.shares import LaidPart


class Relief(NamedTuple):
    """Of every bead of a rope: its size and how far out it lies, both as a share of what is usual; how far along the
    rope, as a share of its length; and by how many radians it is turned from its place on the lattice."""

    size: Array
    out: Array
    along: Array
    turned: Array

    def part(self, first: int, beads: int) -> Relief:
        """That of so many beads from `first` on, as if they were the whole rope."""
        size, out, along, turned = (column[first : first + beads] for column in self)
        end = self.along[first + beads] if first + beads < len(self.along) else 1.0
        return Relief(size, out, (along - along[0]) / (end - along[0]), turned)


def relief(around: int, laid: Iterable[LaidPart], sizes: Sequence[float]) -> Relief | None:
    """The relief of a rope whose parts lie so; `sizes` are diameters by palette index, in any unit.

    None where all its beads are of one size.
    """
    parts = [part for part in laid if part.beads]
    used = {sizes[bead] for part in parts for bead in part.part.beads}
    if len(used) < 2:
        return None
    found = settled_charts(around, (part.part.beads for part in parts), tuple(sizes))
    told = [_of_part(around, part, sizes, found.get(part.part.beads)) for part in parts]
    size, out, rise, turned = (np.concatenate(column) for column in zip(*told, strict=True))
    mean, along = size.mean(), np.concatenate([[0.0], np.cumsum(rise)])
    return Relief(size / mean, out / mean / helix(around).radius, along[:-1] / along[-1], turned)


def _of_part(
    around: int, part: LaidPart, sizes: Sequence[float], found: Settled | None
) -> tuple[Array, Array, Array, Array]:
    """Size, distance from the axis, step to the next bead and turn of every bead of a part, in the unit of `sizes`."""
    made, chart = helix(around), part.part.beads
    first = -part.beads % len(chart) if part.cut_first else 0
    if found is None:
        size = np.array([sizes[bead] for bead in part.worked])
        return size, size * made.radius, size * made.rise, np.zeros(len(size))
    mean = float(np.mean([sizes[bead] for bead in chart]))
    places, stretch = np.array(found.places), len(found.places)
    k = (np.arange(part.beads) + first) % stretch
    steps = np.diff(np.append(places[:, 2], places[0, 2] + found.move))
    turned = np.arctan2(places[:, 1], places[:, 0]) - np.arange(stretch) * found.twist / stretch
    turned = np.angle(np.exp(1j * turned))
    return (
        np.array(found.diameters)[k] * mean,
        np.hypot(places[:, 0], places[:, 1])[k] * mean,
        steps[k] * mean,
        (turned - turned.mean())[k],
    )
