"""Generated patterns: of any number of beads, with runs of a chosen length, the same at every run of the bench."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise
from random import Random

from engine.pattern.palette import Entry, Palette
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern

COLOURS = ("#1d3350", "#f2e8d5", "#b23a30", "#dfa63a", "#2f7f76", "#8a97a3", "#6b4a6e", "#c9b8a0")
NAMES = ("Night water", "Foam", "Brick", "Lamp gold", "Sea glass", "Slate", "Plum", "Sand")
PALETTE = Palette(
    tuple(Entry(code, name, colour) for code, name, colour in zip("ABCDEFGH", NAMES, COLOURS, strict=True))
)
PLACES = ("harbour", "meadow", "lantern", "orchard", "quarry", "ferry", "heath", "willow")


def pattern(beads: int, around: int = 20, run: int = 4, seed: int = 0, title: str = "") -> Pattern:
    """A pattern of that many beads whose runs are `run` long in the mean."""
    chance, chart = Random(seed), bytearray()
    while len(chart) < beads:
        chart += bytes([chance.randrange(len(PALETTE))]) * chance.randint(1, 2 * run - 1)
    return Pattern(title or f"Trial of {beads:,} beads", around, PALETTE, bytes(chart[:beads]))


def parted(beads: int, parts: int = 12, around: int = 20, seed: int = 0) -> Pattern:
    """A pattern of that many beads drawn in so many parts, of which every other fills."""
    whole = pattern(beads, around, seed=seed)
    cuts = [beads * part // parts for part in range(parts + 1)]
    told = tuple(
        Part(f"Part {place}", whole.chart[first:last], None if place % 2 else 1)
        for place, (first, last) in enumerate(pairwise(cuts))
    )
    return Pattern(f"{parts} parts of {beads:,} beads", around, PALETTE, in_parts=told)


def titles_with(patterns: Sequence[Pattern], words: Sequence[str]) -> set[str]:
    """The titles of those that a search for these words has to find, by a look at every pattern."""

    def has_all(pattern: Pattern) -> bool:
        text = f"{pattern.title} {pattern.notes} {' '.join(pattern.tags)} around {pattern.around}".casefold()
        told = text.replace(",", " ").replace(".", " ").split()
        return all(any(part.startswith(word) for part in told) for word in words)

    return {pattern.title for pattern in patterns if has_all(pattern)}


@lru_cache(1)
def many(number: int) -> tuple[Pattern, ...]:
    """That many small patterns with titles, tags and notes to search in."""
    chance = Random(number)
    made = []
    for n in range(number):
        place, other = chance.choice(PLACES), chance.choice(PLACES)
        small = pattern(chance.randrange(60, 600), chance.randrange(5, 30), 3, n, f"{place} {other} {n}".capitalize())
        made.append(
            Pattern(
                small.title,
                small.around,
                small.palette,
                small.chart,
                notes=f"Made for the {other}, trial {n % 97}.",
                tags=(place, f"series {n % 40}"),
            )
        )
    return tuple(made)
