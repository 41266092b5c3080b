"""The maker's own words and photographs for the booklets of a pattern."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Annotated

from engine.booklet.own import NOTED
from webapp.pages.addresses import address
from webapp.pages.forms.own_words import OwnWordsForm
from webapp.pages.views.frame import Frame, Head, head
from webapp.records import Photograph, StoredPattern

NOTE_NAMES = {
    "need": "What you need", "sample": "The maker’s sample", "read": "How to read chart and list", "chart": "Chart",
    "lists": "Stringing lists", "work": "Working guide", "finish": "Finishing guide", "sizes": "Sizes",
    "care": "Care and safety"}


@dataclass(frozen=True)
class PhotographLine:
    """A photograph as it will be printed."""

    id: Annotated[int, "Its number."]
    picture: Annotated[str, "Address of the picture."]
    caption: Annotated[str, "What stands below it; may be empty."]
    seen: Annotated[str, "What is seen in it, for those who do not see it; may be empty."]
    width: Annotated[int, "Its width in pixels."]
    height: Annotated[int, "Its height in pixels."]


@dataclass(frozen=True)
class OwnWordsPage:
    """Own words and photographs, at `/patterns/{id}/words`."""

    frame: Annotated[Frame, "What stands round the page."]
    head: Annotated[Head, "The pattern's heading."]
    form: Annotated[OwnWordsForm, "The words as typed, and what is wrong."]
    notes: Annotated[tuple[tuple[str, str], ...], "Place and name of every chapter that may have a note."]
    photographs: Annotated[tuple[PhotographLine, ...], "The photographs in their order."]
    most: Annotated[int, "How many there may be."]
    wrong: Annotated[str, "What is wrong with a photograph that was sent; may be empty."]


def own_words_page(frame: Frame, stored: StoredPattern, form: OwnWordsForm, photographs: Iterable[Photograph],
                   most: int, wrong: str = "") -> OwnWordsPage:
    """The page of the words as they stand or were typed."""
    lines = tuple(PhotographLine(one.id, address("photograph", id=stored.id, photograph=one.id), one.caption, one.seen,
                                 one.width, one.height) for one in photographs)
    notes = tuple((place, NOTE_NAMES[place]) for place in NOTED)
    return OwnWordsPage(frame, head(stored), form, notes, lines, most, wrong)
