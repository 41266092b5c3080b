"""The shop kit of an edition: what may go into it, how far it is, and where it is fetched."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Annotated

from engine.scenes.all import SCENES
from engine.scenes.scene import Subject
from engine.scenes.settings import GROUNDS, SHAPES
from webapp.pages.addresses import address
from webapp.pages.forms.kit import PICTURE_FORMS, PRINTS, KitForm, print_in_words
from webapp.pages.views.frame import Frame, Head, head
from webapp.records import Edition, StoredPattern

Options = tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class KitWork:
    """A kit on its way."""

    state: Annotated[str, "none, running or done."]
    done: Annotated[int, "Things that are made."]
    total: Annotated[int, "Things there are."]
    at: Annotated[str, "What is being made."]


@dataclass(frozen=True)
class KitPage:
    """The shop kit, at `/patterns/{id}/editions/{edition}/kit`."""

    frame: Frame
    head: Head
    edition: Annotated[int, "Of which edition."]
    form: Annotated[KitForm, "The choices as made, and what is wrong."]
    refused: Annotated[str, "Why there can be no kit of this edition, in a sentence; may be empty."]
    wrong: Annotated[str, "Why the kit was not made; may be empty."]
    kept: Annotated[tuple[str, ...], "Booklets that the edition has; they always go in."]
    prints: Annotated[Options, "Prints that may be added: key and name."]
    scenes: Annotated[Options, "Pictures to choose from."]
    shapes: Annotated[Options, "Proportions."]
    grounds: Annotated[Options, "Grounds."]
    forms: Annotated[Options, "Formats."]
    work: Annotated[KitWork, "How far it is."]
    steps: Annotated[str, "Address of how far it is."]
    stop: Annotated[str, "Address that stops it."]
    download: Annotated[str, "Address of the zip; empty where it is not made."]


def kit_page(
    frame: Frame,
    stored: StoredPattern,
    edition: Edition,
    form: KitForm,
    subject: Subject,
    more: Iterable[str],
    refused: str = "",
    work: KitWork | None = None,
    wrong: str = "",
) -> KitPage:
    """The page; `more` are the keys of prints that the edition does not have."""
    places = {"id": stored.id, "edition": edition.number}
    offered = set(more)
    how = work or KitWork("none", 0, 0, "")
    return KitPage(
        frame=frame,
        head=head(stored),
        edition=edition.number,
        form=form,
        refused=refused,
        wrong=wrong,
        kept=tuple(booklet.name for booklet in edition.booklets),
        prints=tuple((key, print_in_words(key)) for key in PRINTS if key in offered),
        scenes=tuple((scene.key, scene.name) for scene in SCENES.values() if not scene.lacks(subject)),
        shapes=tuple((shape.key, shape.words) for shape in SHAPES.values()),
        grounds=tuple((ground.key, ground.words) for ground in GROUNDS.values()),
        forms=tuple(PICTURE_FORMS.items()),
        work=how,
        steps=address("kit_steps", **places, **form.asked),
        stop=address("stop_kit", **places, **form.asked),
        download=address("kit_zip", **places, **form.asked) if how.state == "done" else "",
    )
