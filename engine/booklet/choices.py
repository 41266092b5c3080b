"""What a maker chooses before a booklet is printed."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass, field
from typing import NamedTuple

from engine.booklet.own import OwnWords
from engine.booklet.papers import FORMATS, PAPERS, STANDARD, paper
from engine.booklet.terms import TERMS
from engine.cabinet.colourways import Colourway
from engine.counting.cuts import BALANCED, Plan
from engine.counting.questions import Question
from engine.errors import ChoiceError
from engine.pattern.pattern import Pattern
from engine.units import UNITS

DIFFICULTIES = {1: "easy", 2: "simple", 3: "middling", 4: "demanding", 5: "hard"}

MIRRORED, KEPT = PICTURES = "mirrored", "picture kept"

_DATE = re.compile(r"\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])")


@dataclass(frozen=True)
class Imprint:
    """Who sells the booklet, how to reach them, and what a buyer may do with it. Each may be empty."""

    maker: str = ""
    contact: str = ""
    licence: str = ""


class Photograph(NamedTuple):
    """A photograph of the worked piece: the key of its picture, its caption, what is seen in it, its size in px."""

    key: str
    caption: str
    seen: str
    width: int
    height: int


@dataclass(frozen=True)
class Choices:
    """Everything that is chosen beside the pattern itself.

    `question` and `plan` give size and threads, `spare` is in percent, `format` is standard or large print, `date` is
    YYYY-MM-DD or empty, `revision` 0 for a pattern that is in no library, `published` the number of the edition, 0
    before there is one. `ink_saving`: beads are printed as symbols without fills, and no shaded pictures. `picture` is
    one of PICTURES for a pattern that was made for the other hand, `difficulty` one of DIFFICULTIES, 0 where it is not
    said. `colourway` names the one that is printed, where that is not the pattern's own palette; the bills of `others`
    are printed besides. Raises ChoiceError for a word that is not one of its
    list, and for large print on paper that is too small for it.
    """

    question: Question = field(default_factory=Question)
    plan: Plan = BALANCED
    paper: str = "A4"
    format: str = STANDARD
    terms: str = "us"
    spare: float = 10.0
    units: str = "cm"
    imprint: Imprint = field(default_factory=Imprint)
    date: str = ""
    revision: int = 0
    published: int = 0
    ink_saving: bool = False
    own: OwnWords = field(default_factory=OwnWords)
    photographs: tuple[Photograph, ...] = ()
    picture: str = ""
    difficulty: int = 0
    colourway: str = ""
    others: tuple[Colourway, ...] = ()

    @property
    def skill(self) -> str:
        """How hard it is in words: "Easy, 1 of 5"; empty where it is not said."""
        word = DIFFICULTIES.get(self.difficulty, "")
        return f"{word.capitalize()}, {self.difficulty} of {len(DIFFICULTIES)}" if word else ""

    def named(self, hand: str) -> str:
        """Which booklet of a pattern it is: "Standard, A4", "Large print, Letter, left-handed, mirrored"."""
        said = (
            self.format.replace("-", " ").capitalize(),
            self.paper,
            "ink-saving" if self.ink_saving else "",
            self.handed(hand) if self.picture or hand == "left" else "",
            self.coloured,
            "UK terms" if self.terms == "uk" else "",
            {"cm": "", "in": "inches", "both": "centimetres and inches"}[self.units],
        )
        return ", ".join(filter(None, said))

    def handed(self, hand: str) -> str:
        """For which hand, and how its picture stands: "left-handed, picture kept"."""
        return ", ".join(filter(None, (f"{hand}-handed", self.picture)))

    @property
    def coloured(self) -> str:
        """Which colourways it shows: "in Dusk", "in all colourways"; empty for the pattern's own palette alone."""
        if self.others:
            return "in all colourways"
        return f"in {self.colourway}" if self.colourway else ""

    def __post_init__(self) -> None:
        _check("Paper", self.paper, PAPERS, "paper")
        _check("Edition", self.format, FORMATS, "edition")
        paper(self.paper, self.format)
        _check("Crochet terms", self.terms, TERMS, "terms")
        _check("Units", self.units, UNITS, "units")
        _check("Picture", self.picture, ("", *PICTURES), "hand")
        if self.date and not _DATE.fullmatch(self.date):
            raise ChoiceError("Date", self.date, ("YYYY-MM-DD",), "date")


def picture_in_hand(pattern: Pattern, hand: str | None, keep_picture: bool = False) -> str:
    """How a picture stands in that hand: one of PICTURES, nothing where the hand is the pattern's own."""
    if not hand or hand == pattern.hand:
        return ""
    return KEPT if keep_picture else MIRRORED


def _check(what: str, given: str, choices: Collection[str], field: str) -> None:
    if given not in choices:
        raise ChoiceError(what, given, choices, field)
