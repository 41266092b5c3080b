"""What goes into a shop kit: booklets, pictures, and how long title and description may be."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from engine.booklet.listing import (
    LEAST_DESCRIPTION,
    LEAST_TITLE,
    MOST_DESCRIPTION,
    MOST_TITLE,
    read_longest,
)
from engine.booklet.papers import FORMATS, LARGE, PAPERS, STANDARD
from engine.scenes.all import SCENES
from engine.scenes.settings import GROUNDS, SHAPES
from webapp.pages.forms.pictures import STILL_FORMS
from webapp.pages.forms.sent import Objections, Sent
from webapp.records import MakerSettings

PRINTS: Mapping[str, tuple[str, str, str]] = {
    f"{format}-{paper}-{hand}": (format, paper, hand)
    for format in FORMATS
    for hand in ("right", "left")
    for paper in PAPERS
    if not (format == LARGE and paper == "A5")
}
"""Prints that may be added to those of an edition: format, paper, hand, by their keys."""
PICTURE_FORMS: Mapping[str, str] = {key: STILL_FORMS[key] for key in ("jpeg", "png", "webp")}
USUAL_SCENES = ("close-up", "ring", "necklace", "ruler")
CHOSEN = "chosen"  # a form was sent; without it everything is as usual


@dataclass(frozen=True)
class KitForm:
    """The choices as made, and what is wrong by field. `title` and `description` are as typed.

    `prints` are keys of PRINTS beside the booklets of the edition, `scenes` those of pictures.
    """

    prints: tuple[str, ...]
    scenes: tuple[str, ...]
    shape: str
    ground: str
    form: str
    title: str
    description: str
    longest_title: int
    longest_description: int
    errors: Mapping[str, str]

    @property
    def asked(self) -> dict[str, object]:
        """The choices as they stand in an address."""
        return {
            CHOSEN: "yes",
            "print": list(self.prints),
            "scene": list(self.scenes),
            "shape": self.shape,
            "ground": self.ground,
            "form": self.form,
            "title": self.title,
            "description": self.description,
        }


def read_kit(pairs: Iterable[tuple[str, object]], maker: MakerSettings) -> KitForm:
    """The choices of a form or an address; what is not offered is passed over, the lengths are the maker's last."""
    sent, wrong = Sent(pairs), Objections()
    chosen = sent.has(CHOSEN)
    title = sent.one("title") or str(int(maker.title_most))
    description = sent.one("description") or str(int(maker.description_most))
    shape, ground, form = (
        _one_of(sent.one(name), known)
        for name, known in (("shape", SHAPES), ("ground", GROUNDS), ("form", PICTURE_FORMS))
    )
    if GROUNDS[ground].colour is None and form == "jpeg":
        wrong.add("form", "JPEG has no clear background; choose another background, or PNG or WebP.")
    scenes = tuple(key for key in SCENES if key in sent.all("scene")) if chosen else USUAL_SCENES
    return KitForm(
        prints=tuple(key for key in PRINTS if key in sent.all("print")),
        scenes=scenes,
        shape=shape,
        ground=ground,
        form=form,
        title=title,
        description=description,
        longest_title=wrong.read("title", lambda: read_longest(title, LEAST_TITLE, MOST_TITLE, "title"), 0),
        longest_description=wrong.read(
            "description", lambda: read_longest(description, LEAST_DESCRIPTION, MOST_DESCRIPTION, "description"), 0
        ),
        errors=wrong.by_field,
    )


def print_in_words(key: str) -> str:
    """ "Standard, A4, left-handed"."""
    format, paper, hand = PRINTS[key]
    named = "Standard" if format == STANDARD else "Large print"
    return ", ".join((named, paper, *(("left-handed",) if hand == "left" else ())))


def _one_of(text: str, known: Iterable[str]) -> str:
    offered = tuple(known)
    return text if text in offered else offered[0]
