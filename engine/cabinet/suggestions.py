"""The bead of the cabinet that would tell two look-alike beads of a palette apart."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from engine.cabinet.bead import Bead
from engine.cabinet.nearness import nearest_apart
from engine.pattern.colour import LookAlike
from engine.pattern.palette import Palette


class Suggestion(NamedTuple):
    """A bead in the place of a palette entry, and how far its colour is from that of the entry."""

    entry: int
    bead: Bead
    difference: float


def suggestion(palette: Palette, pair: LookAlike, beads: Sequence[Bead]) -> Suggestion | None:
    """The nearest bead of the same kind for one of the two after which no other looks like it, to any eyes."""
    return min(_clearing(palette, pair, beads), key=lambda clear: clear.difference, default=None)


def _clearing(palette: Palette, pair: LookAlike, beads: Sequence[Bead]) -> Iterator[Suggestion]:
    used = {entry.bead for entry in palette}
    for place in (pair.second, pair.first):
        entry = palette[place]
        others = [other.colour for number, other in enumerate(palette) if number != place]
        fitting = [bead for bead in beads if bead.kind == entry.kind and bead.key not in used]
        if near := nearest_apart(entry.colour, fitting, others):
            yield Suggestion(place, near.bead, near.difference)
