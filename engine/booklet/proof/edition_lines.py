"""The line that tells one edition from another: on cover and back, and on no other print."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from engine.booklet.chapters.opening import edition
from engine.booklet.choices import Choices
from engine.booklet.proof.printed_lists import AGAIN
from engine.booklet.proof.readback import ReadBooklet, ReadPage, Remark
from engine.counting.questions import Question
from engine.pattern.pattern import Pattern

COVER = BACK = 2  # pages: a cover of many words runs on, and so does a last chapter


class OtherPrint(NamedTuple):
    """Another print of the same edition: which booklet it is, its edition line, and the size that it is for."""

    name: str
    line: str
    question: Question


def other_print(pattern: Pattern, choices: Choices) -> OtherPrint:
    """A print as those beside it are held to it."""
    return OtherPrint(choices.named(pattern.hand), edition(choices, pattern), choices.question)


def edition_remarks(
    pattern: Pattern, choices: Choices, read: ReadBooklet, beside: Iterable[OtherPrint] = ()
) -> Iterator[Remark]:
    """A cover or back without its line, and prints `beside` this one that say the same line."""
    own = other_print(pattern, choices)
    for where, pages in (("Cover", read.pages[:COVER]), ("The last page", read.pages[-BACK:])):
        if not _says(pages, own.line):
            yield Remark(True, where, f"It does not say which edition it is: “{own.line}”", AGAIN)
    for other in dict.fromkeys(beside):
        if other.line != own.line or other == own:
            continue
        if other.name != own.name:
            yield Remark(True, "Edition", f"The print “{other.name}” says the same line: “{own.line}”", AGAIN)
        else:
            yield Remark(
                blocks=False,
                where="Edition",
                what="Another print of this edition is for another size and says the same line.",
                mend="Publish one of them, so that a buyer can say which booklet is meant.",
                at="booklet",
            )


def _says(pages: Iterable[ReadPage], line: str) -> bool:
    """Whether it stands there, wherever its lines end and its words are parted."""
    return any(_letters(line) in _letters(page.text) for page in pages)


def _letters(text: str) -> str:
    return "".join(filter(str.isalnum, text))
