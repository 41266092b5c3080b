"""The pairs of a palette that look alike, with their differences to all eyes, and what would help."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from engine.cabinet.bead import Bead
from engine.cabinet.finishes_in_words import finishes_in_words
from engine.cabinet.suggestions import Suggestion, suggestion
from engine.pattern.colour import PLAIN, SIGHTS, TOO_NEAR, LookAlike, colour_pairs, look_alikes
from engine.pattern.colour_changes import nearest_change
from engine.pattern.palette import Palette
from engine.units import plain
from webapp.pages.views.signs import Sign, signs

SIGHT_WORDS = {PLAIN: "Plain sight", "protan": "Weak in red", "deutan": "Weak in green", "tritan": "Weak in blue"}
EYES = {"protan": "to eyes weak in red", "deutan": "to eyes weak in green", "tritan": "to eyes weak in blue"}
MOST_PAIRS = 12
MOST_LISTED = 66  # pairs of twelve beads; of more the table would be no help
MOST_HELPED = 4  # pairs for which a bead or a colour is looked for


@dataclass(frozen=True)
class HelpfulBead:
    """A bead of the cabinet that would tell a pair apart."""

    key: Annotated[str, "Its key."]
    name: Annotated[str, "Its name."]
    colour: Annotated[str, "Its colour, #rrggbb."]
    code: Annotated[str, "The code of the entry whose place it would take."]


@dataclass(frozen=True)
class AlikeLine:
    """Two beads that look alike."""

    first: Annotated[Sign, "The one."]
    second: Annotated[Sign, "The other."]
    apart: Annotated[tuple[tuple[str, str, bool], ...], "To which eyes, how far apart, and whether that is too near."]
    finishes: Annotated[str, "What their finishes do for the eye."]
    helpful: Annotated[HelpfulBead | None, "The bead of the cabinet that would help; none where none does."]
    change: Annotated[str, "Else which change of a colour would help; may be empty."]


@dataclass(frozen=True)
class PairLine:
    """Any two beads of the palette."""

    codes: Annotated[str, "Their codes."]
    apart: Annotated[tuple[tuple[str, str, bool], ...], "To which eyes, how far apart, and whether that is too near."]


@dataclass(frozen=True)
class Alike:
    """The look-alikes of a palette."""

    lines: Annotated[tuple[AlikeLine, ...], "The nearest pairs that look alike to some eyes."]
    more: Annotated[int, "How many such pairs there are besides."]
    threshold: Annotated[str, "The difference under which two beads are questioned."]
    pairs: Annotated[tuple[PairLine, ...], "Every pair of the palette, the nearest first; none of a very large one."]


def alike(palette: Palette, beads: Sequence[Bead]) -> Alike:
    """The pairs that look alike, with the bead of the cabinet, or the change, that would tell them apart."""
    found = look_alikes(palette)
    drawn = signs(palette)
    apart = {(pair.first, pair.second): pair.apart for pair in colour_pairs(palette)}
    lines = []
    for place, pair in enumerate(found[:MOST_PAIRS]):
        bead = suggestion(palette, pair, beads) if place < MOST_HELPED else None
        lines.append(
            AlikeLine(
                first=drawn[pair.first],
                second=drawn[pair.second],
                apart=_apart(apart[pair.first, pair.second]),
                finishes=finishes_in_words(palette[pair.first], palette[pair.second]),
                helpful=_helpful(palette, bead) if bead else None,
                change="" if bead or place >= MOST_HELPED else _change(palette, pair),
            )
        )
    return Alike(tuple(lines), max(0, len(found) - MOST_PAIRS), plain(TOO_NEAR, 1), _pairs(palette))


def _pairs(palette: Palette) -> tuple[PairLine, ...]:
    pairs = sorted(colour_pairs(palette), key=lambda pair: pair.least)
    if len(pairs) > MOST_LISTED:
        return ()
    codes = palette.codes
    return tuple(PairLine(f"{codes[pair.first]} and {codes[pair.second]}", _apart(pair.apart)) for pair in pairs)


def _apart(apart: Sequence[float]) -> tuple[tuple[str, str, bool], ...]:
    return tuple(
        (SIGHT_WORDS[sight], plain(difference, 1), difference < TOO_NEAR)
        for sight, difference in zip(SIGHTS, apart, strict=True)
    )


def _helpful(palette: Palette, found: Suggestion) -> HelpfulBead:
    return HelpfulBead(
        key=found.bead.key, name=found.bead.name, colour=found.bead.colour, code=palette[found.entry].code
    )


def _change(palette: Palette, pair: LookAlike) -> str:
    nearest = nearest_change(palette, pair)
    if nearest is None:
        return ""
    entry = palette[nearest.entry]
    return f"{entry.code} {entry.name} can be told apart when it is {nearest.words}, such as {nearest.colour}."
