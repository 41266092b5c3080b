"""What the maker adds in her own words: an introduction, hours, notes on chapters, a chapter of her own, tips."""

from __future__ import annotations

import re
from dataclasses import dataclass

from engine.booklet.markup import Block, blocks
from engine.errors import PatternError
from engine.units import count

INTRODUCTION, HOURS, TIPS, TITLE, SECTION = "introduction", "hours", "tips", "own-title", "own"
NOTED = ("need", "sample", "read", "chart", "lists", "work", "finish", "sizes", "care")
PLACES = (INTRODUCTION, HOURS, *NOTED, TITLE, SECTION, TIPS)
LONGEST = 20_000
SHORT = {TITLE: 120, HOURS: 40}  # letters of the places that have one line

_NUMBERS = re.compile(r"\d+([.,]\d+)?( ?(to|-|–) ?\d+([.,]\d+)?)?")


@dataclass(frozen=True)
class OwnWords:
    """Texts with light markup by their place, one of PLACES; a place that is empty is left out.

    Raises PatternError for a place that there is not, and for a text that is too long.
    """

    texts: tuple[tuple[str, str], ...] = ()

    def __post_init__(self) -> None:
        kept = {place: text.replace("\r\n", "\n").strip() for place, text in self.texts}
        for place, text in kept.items():
            if place not in PLACES:
                raise PatternError(f"There is no place “{place}” in a booklet.", place)
            most = SHORT.get(place, LONGEST)
            if len(text) > most:
                raise PatternError(
                    f"This text has {count(len(text))} letters; at most {count(most)} are printed.", place
                )
        object.__setattr__(self, "texts", tuple((place, kept[place]) for place in PLACES if kept.get(place)))

    def __bool__(self) -> bool:
        return bool(self.texts)

    def text(self, place: str) -> str:
        """What was written there, as it was written."""
        return dict(self.texts).get(place, "")

    def blocks(self, place: str) -> tuple[Block, ...]:
        """What was written there, ready to be set."""
        return blocks(self.text(place))

    @property
    def hours(self) -> str:
        """How long the piece takes: "8 to 10 hours" for "8 to 10", else as it was written."""
        text = " ".join(self.text(HOURS).split())
        if not _NUMBERS.fullmatch(text):
            return text
        return f"{text} hour" if text == "1" else f"{text} hours"

    @property
    def title(self) -> str:
        """The title of the maker's own chapter."""
        return self.text(TITLE) or "From the maker"
