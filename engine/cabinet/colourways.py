"""Colourways: the same chart with another palette, and one made of the beads that are in stock."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from engine.cabinet.bead import Bead
from engine.cabinet.nearness import nearest
from engine.errors import PatternError
from engine.pattern.colour import TOO_NEAR, colour_pairs, least_apart, linear_rgb
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern
from engine.pattern.words import check_line

LONGEST_NAME = 60
MOST_COLOURWAYS = 40
MOST_TRIED = 400  # beads nearest to a colour among which one is looked for that stays apart from the others


@dataclass(frozen=True)
class Colourway:
    """A full palette under a name; its entries go by the codes of the pattern. Raises PatternError for the name."""

    name: str
    palette: Palette

    def __post_init__(self) -> None:
        check_line(self.name, "name of the colourway", LONGEST_NAME, "name")


@dataclass(frozen=True)
class Matched:
    """A palette in which beads of the cabinet stand for those of another.

    `unmatched` are codes for which no bead of their kind was left, so that they stay as they are; `alike` are pairs of
    codes that could be told apart before and cannot now.
    """

    palette: Palette
    unmatched: tuple[str, ...]
    alike: tuple[tuple[str, str], ...]


def in_colourway(pattern: Pattern, colourway: Colourway) -> Pattern:
    """The pattern worked in those beads."""
    return replace(pattern, palette=fitted(colourway.palette, pattern.palette))


def fitted(palette: Palette, of: Palette) -> Palette:
    """A colourway's palette for a pattern's palette as it stands.

    Order, codes and symbols are those of the pattern; a code that the colourway does not have stays as in the pattern.
    """
    by_code = {entry.code: entry for entry in palette}
    return Palette(tuple(replace(by_code.get(own.code, own), code=own.code, symbol=own.symbol) for own in of))


def matched(palette: Palette, beads: Sequence[Bead], uses: Sequence[int], least_mg: Mapping[str, int]) -> Matched:
    """The nearest beads by CIEDE2000, each taken once; pairs that can be told apart stay so where the beads allow it.

    Entries choose in the order of their `uses`, the most used first. A bead stands for an entry where it is of the same
    kind and at least so much of it is there as `least_mg` says by code.
    """
    apart = {(pair.first, pair.second) for pair in colour_pairs(palette) if pair.least >= TOO_NEAR}
    chosen: dict[int, Bead] = {}
    for place in sorted(range(len(palette)), key=lambda place: -uses[place]):
        entry = palette[place]
        fitting = _fitting(entry, beads, chosen.values(), least_mg.get(entry.code, 1))
        against = [bead.colour for other, bead in chosen.items() if (min(place, other), max(place, other)) in apart]
        if fitting:
            chosen[place] = _nearest_staying_apart(entry.colour, fitting, against)
    new = Palette(
        tuple(
            chosen[place].entry(entry.code, entry.symbol) if place in chosen else entry
            for place, entry in enumerate(palette)
        )
    )
    lost = [pair for pair in colour_pairs(new) if (pair.first, pair.second) in apart and pair.least < TOO_NEAR]
    return Matched(
        palette=new,
        unmatched=tuple(entry.code for place, entry in enumerate(palette) if place not in chosen),
        alike=tuple((new[pair.first].code, new[pair.second].code) for pair in lost),
    )


def _fitting(entry: Entry, beads: Iterable[Bead], taken: Iterable[Bead], least_mg: int) -> list[Bead]:
    gone = {bead.key for bead in taken}
    return [bead for bead in beads if bead.kind == entry.kind and bead.stock_mg >= least_mg and bead.key not in gone]


def _nearest_staying_apart(colour: str, fitting: Sequence[Bead], against: Sequence[str]) -> Bead:
    """The nearest that stays apart from those colours; where none does, the one that stays apart most."""
    tried = [near.bead for near in nearest(colour, fitting, MOST_TRIED)]
    if not against:
        return tried[0]
    apart = least_apart(linear_rgb([bead.colour for bead in tried]), linear_rgb(against)).tolist()
    clear = [bead for bead, least in zip(tried, apart, strict=True) if least >= TOO_NEAR]
    return clear[0] if clear else tried[apart.index(max(apart))]


def check_name_free(name: str, others: Iterable[Colourway]) -> None:
    """Raises PatternError where another colourway of the pattern has that name."""
    if name.casefold() in {other.name.casefold() for other in others}:
        raise PatternError(f"There is a colourway “{name}” already; take another name.", "name")
