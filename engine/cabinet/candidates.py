"""Beads that could stand for an entry of a palette, and which of its other beads each would be mistaken for."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from engine.cabinet.bead import Bead
from engine.cabinet.nearness import nearest
from engine.pattern.colour import PLAIN, SIGHTS, TOO_NEAR, apart_by_sight, linear_rgb
from engine.pattern.palette import Palette


class Mistaken(NamedTuple):
    """Another entry of the palette for which a bead would be mistaken, by which eyes, and how near it is to them."""

    code: str
    sight: str
    difference: float


class Candidate(NamedTuple):
    """A bead, how far its colour is from that of the entry, and for which others it would be mistaken."""

    bead: Bead
    difference: float
    mistaken: tuple[Mistaken, ...]


def candidates(palette: Palette, place: int, beads: Sequence[Bead], most: int) -> tuple[Candidate, ...]:
    """The beads nearest in colour to that entry, at most so many."""
    near = nearest(palette[place].colour, beads, most)
    others = [entry for number, entry in enumerate(palette) if number != place]
    if not near or not others:
        return tuple(Candidate(bead, difference, ()) for bead, difference in near)
    apart = apart_by_sight(
        linear_rgb([one.bead.colour for one in near]), linear_rgb([entry.colour for entry in others])
    ).tolist()
    return tuple(
        Candidate(
            one.bead,
            one.difference,
            tuple(
                mistaken
                for column, entry in enumerate(others)
                if (mistaken := _mistaken(entry.code, [of_sight[row][column] for of_sight in apart]))
            ),
        )
        for row, one in enumerate(near)
    )


def _mistaken(code: str, apart: Sequence[float]) -> Mistaken | None:
    """As `look_alikes`: whom it looks alike to, plain sight before all others."""
    by_sight = dict(zip(SIGHTS, apart, strict=True))
    sight = PLAIN if by_sight[PLAIN] < TOO_NEAR else min(by_sight, key=by_sight.__getitem__)
    return Mistaken(code, sight, by_sight[sight]) if by_sight[sight] < TOO_NEAR else None
