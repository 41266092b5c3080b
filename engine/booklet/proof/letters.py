"""Letters that the booklet's own fonts lack: those that another font has are advice, those that none has block."""

from __future__ import annotations

from collections.abc import Iterator

from engine.booklet.choices import Choices
from engine.booklet.own import INTRODUCTION, SECTION, TIPS, TITLE
from engine.booklet.proof.readback import ReadBooklet, Remark
from engine.pattern.pattern import Pattern

MOST_NAMED = 8
OWN_PLACES = {
    INTRODUCTION: "Your introduction",
    TITLE: "The title of your chapter",
    SECTION: "Your chapter",
    TIPS: "Your tips",
}


def letter_remarks(pattern: Pattern, choices: Choices, read: ReadBooklet) -> Iterator[Remark]:
    """Every place that has letters which no font has, and every font that lent some."""
    rest = set(read.lost)
    for where, text, at in _places(pattern, choices):
        lost = rest.intersection(text)
        if lost:
            yield _lost(where, "".join(sorted(lost)), at)
    missed = rest.difference(*(text for _, text, _ in _places(pattern, choices)))
    if missed:
        yield _lost("The booklet", "".join(sorted(missed)), "")
    for name, letters in read.borrowed:
        yield Remark(
            False,
            "Letters",
            f"{_named(letters)}: the booklet's own letters lack {_it(letters)}, so {name} is used for {_it(letters)}.",
            "Look at them in the print; write them in other letters if they do not suit.",
        )


def _lost(where: str, letters: str, at: str) -> Remark:
    what = f"{_named(letters)}: no font of this computer has {_it(letters)}, so question marks are printed."
    return Remark(
        blocks=True,
        where=where,
        what=what,
        mend="Write it in other letters, or install a font that has them, and print again.",
        at=at,
    )


def _places(pattern: Pattern, choices: Choices) -> Iterator[tuple[str, str, str]]:
    """Where words of the maker stand in the booklet: what it is called, the text, and where it is mended."""
    yield "The title", pattern.title, "edit"
    yield "The designer", pattern.designer, "edit"
    yield "The notes", pattern.notes, "edit"
    for entry in pattern.palette:
        yield f"Bead {entry.code}", f"{entry.name} {entry.maker_code} {entry.kind}", "edit#palette"
    for colourway in choices.others:
        words = " ".join(f"{entry.name} {entry.maker_code}" for entry in colourway.palette)
        yield f"The colourway “{colourway.name}”", f"{colourway.name} {words}", "colourways"
    yield "The colourway", choices.colourway, "colourways"
    yield "Maker, contact and licence", " ".join(vars(choices.imprint).values()), "settings"
    for place, text in choices.own.texts:
        yield OWN_PLACES.get(place, f"Your note on “{place}”"), text, "own_words"
    for number, photograph in enumerate(choices.photographs, 1):
        yield f"Photograph {number}", f"{photograph.caption} {photograph.seen}", "own_words#photographs"


def _named(letters: str) -> str:
    named = " ".join(f"“{letter}”" for letter in letters[:MOST_NAMED])
    return f"{named} and others" if len(letters) > MOST_NAMED else named


def _it(letters: str) -> str:
    return "it" if len(letters) == 1 else "them"
