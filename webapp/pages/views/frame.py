"""What stands round every page: the maker, the look, what was just done, the last backup."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from types import MappingProxyType
from typing import Annotated

from engine.booklet.terms import TERMS
from engine.pattern.pattern import STITCHES
from webapp.records import MakerSettings, StoredPattern

SAID: Mapping[str, str] = MappingProxyType({
    "saved": "Saved as a new revision.",
    "unchanged": "Nothing was changed, so no new revision was made.",
    "made": "The pattern is in the library.",
    "copied": "This is the copy.",
    "kept": "Yours is kept as this copy; the other pattern is as it was.",
    "binned": "The pattern is in the bin, from which it can be taken back.",
    "back": "The pattern is back in the library.",
    "emptied": "The bin is empty.",
    "examples": "The examples are in the bin.",
    "settings": "The settings are kept.",
    "swatch": "The swatch is kept; every sum uses it from now on.",
    "swatch-gone": "The swatch is removed.",
    "kind": "The bead kind is kept.",
    "kind-gone": "The bead kind is removed.",
    "size": "The finished size is kept.",
    "size-gone": "The finished size is removed.",
    "sizes": "These sizes stand in the tables of this pattern from now on.",
})
HANDED = {"right": "right-handed", "left": "left-handed"}


@dataclass(frozen=True)
class Frame:
    """What the base template shows."""

    maker: Annotated[str, "The maker's name, in the top bar; may be empty."]
    look: Annotated[str, "system, light or dark."]
    units: Annotated[str, "cm, in or both: how lengths are shown."]
    terms: Annotated[str, "us or uk: how stitches are called."]
    stitches: Annotated[tuple[tuple[str, str], ...], "The stitches to choose from: value, and words in those terms."]
    backup: Annotated[datetime | None, "When the last backup was made."]
    said: Annotated[str, "A sentence about what was just done; may be empty."]


@dataclass(frozen=True)
class Head:
    """The heading of every page about one pattern."""

    id: Annotated[int, "The pattern's number, for its addresses."]
    title: Annotated[str, "Its title."]
    words: Annotated[str, "Around, kinds and hand in one line."]
    tags: Annotated[tuple[str, ...], "Its tags."]
    example: Annotated[bool, "Whether it came with the app."]
    binned: Annotated[bool, "Whether it is in the bin."]
    version: Annotated[str, "Changes with every save; part of picture addresses."]


def frame(settings: MakerSettings | None = None, backup: datetime | None = None, said: str = "") -> Frame:
    """The frame of a page. `said` is a key of SAID, as it stands in an address; any other says nothing."""
    kept = settings or MakerSettings()
    stitches = tuple((stitch, stitched(stitch, kept.terms).capitalize()) for stitch in STITCHES)
    return Frame(kept.maker, kept.look, kept.units, kept.terms, stitches, backup, SAID.get(said, ""))


def head(stored: StoredPattern) -> Head:
    """The heading of a stored pattern."""
    pattern = stored.pattern
    kinds = dict.fromkeys(entry.kind for entry in pattern.palette)
    words = " · ".join((f"{pattern.around} around", *kinds, HANDED[pattern.hand]))
    return Head(stored.id, pattern.title, words, pattern.tags, stored.example, stored.binned,
                f"{stored.revision}-{stored.sequence}")


def stitched(stitch: str, terms: str) -> str:
    """The name of a stitch in US or UK terms: US single crochet is UK double crochet."""
    return TERMS[terms].stitch(stitch)
