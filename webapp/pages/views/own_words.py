"""The maker's own words and photographs for the booklets of a pattern."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Annotated

from engine.booklet.own import NOTED
from webapp.pages.addresses import address
from webapp.pages.forms.own_words import OwnWordsForm
from webapp.pages.views.frame import Frame, Head, head
from webapp.pages.views.glance import difficulties
from webapp.records import Photograph, StoredPattern

NOTE_NAMES = {
    "need": "What you need",
    "sample": "The maker’s sample",
    "read": "How to read chart and list",
    "chart": "Chart",
    "lists": "Stringing lists",
    "work": "Working guide",
    "finish": "Finishing guide",
    "sizes": "Sizes",
    "care": "Care and safety",
}


@dataclass(frozen=True)
class PhotographLine:
    """A photograph as it will be printed."""

    id: Annotated[int, "Its number."]
    picture: Annotated[str, "Address of the picture."]
    caption: Annotated[str, "What stands below it; may be empty."]
    seen: Annotated[str, "What it shows, for those who do not see it; may be empty."]
    width: Annotated[int, "Its width in pixels."]
    height: Annotated[int, "Its height in pixels."]


@dataclass(frozen=True)
class Done:
    """What was just done to photographs."""

    at: Annotated[int | None, "Number of the one it was done to; nought for all, none where nothing was done."] = None
    undo: Annotated[int, "Number of the one that can be taken back; nought where there is none."] = 0
    wrong: Annotated[str, "What is wrong with one that was sent or taken back; may be empty."] = ""


@dataclass(frozen=True)
class OwnWordsPage:
    """Own words and photographs, at `/patterns/{id}/words`."""

    frame: Frame
    head: Head
    form: Annotated[OwnWordsForm, "The words as typed, and what is wrong."]
    notes: Annotated[tuple[tuple[str, str], ...], "Place and name of every chapter that may have a note."]
    difficulties: Annotated[tuple[tuple[str, str], ...], "How hard it may be: number and word."]
    photographs: Annotated[tuple[PhotographLine, ...], "The photographs in their order."]
    removed: Annotated[tuple[PhotographLine, ...], "Those that were removed and can be taken back."]
    most: Annotated[int, "How many there may be."]
    done: Annotated[Done, "What was just done to photographs."]
    told: Annotated[str, "A sentence about that, which stands beside them; may be empty."]


def own_words_page(
    frame: Frame,
    stored: StoredPattern,
    form: OwnWordsForm,
    photographs: Iterable[Photograph],
    most: int,
    removed: Iterable[Photograph] = (),
    done: Done | None = None,
) -> OwnWordsPage:
    """The page of the words as they stand or were typed; what was done to photographs is said where they stand."""
    done, shown, gone = done or Done(), _lines(stored, photographs), _lines(stored, removed)
    undo = done.undo if done.undo in {line.id for line in gone} else 0
    told = frame.said if done.at is not None else ""
    notes = tuple((place, NOTE_NAMES[place]) for place in NOTED)
    return OwnWordsPage(
        frame=replace(frame, said="") if told else frame,
        head=head(stored),
        form=form,
        notes=notes,
        difficulties=difficulties(),
        photographs=shown,
        removed=gone,
        most=most,
        done=replace(done, undo=undo),
        told=told,
    )


def _lines(stored: StoredPattern, photographs: Iterable[Photograph]) -> tuple[PhotographLine, ...]:
    return tuple(
        PhotographLine(
            id=one.id,
            picture=address("photograph", id=stored.id, photograph=one.id),
            caption=one.caption,
            seen=one.seen,
            width=one.width,
            height=one.height,
        )
        for one in photographs
    )
