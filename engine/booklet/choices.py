"""What a maker chooses before a booklet is printed."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from engine.counting.sizes import Question
from engine.counting.stringing import Plan
from engine.errors import ChoiceError, EngineError, shortened

PAPERS = ("A4", "Letter")
EDITIONS = ("standard",)
TERMS = ("us", "uk")
UNITS = ("cm", "in", "both")
LATER = ("A5", "large-print")

_DATE = re.compile(r"\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])")


@dataclass(frozen=True)
class Imprint:
    """Who sells the booklet, how to reach them, and what a buyer may do with it. Each may be empty."""

    maker: str = ""
    contact: str = ""
    licence: str = ""


@dataclass(frozen=True)
class Choices:
    """Everything that is chosen beside the pattern itself.

    `question` and `plan` give size and threads, `spare` is in percent, `date` is YYYY-MM-DD or empty, `revision` 0 for
    a pattern that is in no library. Raises ChoiceError for a word that is not one of its list.
    """

    question: Question = field(default_factory=Question)
    plan: Plan = "chart"
    paper: str = "A4"
    edition: str = "standard"
    terms: str = "us"
    spare: float = 10.0
    units: str = "cm"
    imprint: Imprint = field(default_factory=Imprint)
    date: str = ""
    revision: int = 0

    def named(self, hand: str) -> str:
        """Which booklet of a pattern it is: "Standard, A4", "Large print, Letter, left-handed"."""
        edition = self.edition.replace("-", " ").capitalize()
        return ", ".join((edition, self.paper, *(("left-handed",) if hand == "left" else ())))

    def __post_init__(self) -> None:
        _check("Paper", self.paper, PAPERS, "paper")
        _check("Edition", self.edition, EDITIONS, "edition")
        _check("Crochet terms", self.terms, TERMS, "terms")
        _check("Units", self.units, UNITS, "units")
        if self.date and not _DATE.fullmatch(self.date):
            raise ChoiceError("Date", self.date, ("YYYY-MM-DD",), "date")


class ComesLater(ChoiceError):
    """A word that a later version will know."""

    def __init__(self, what: str, given: str, choices: tuple[str, ...], field: str) -> None:
        EngineError.__init__(self, f"{what}: “{shortened(given)}” comes with a later version; "
                                   f"there is {' and '.join(choices)} now.", field)


def _check(what: str, given: str, choices: tuple[str, ...], field: str) -> None:
    if given in LATER and given not in choices:
        raise ComesLater(what, given, choices, field)
    if given not in choices:
        raise ChoiceError(what, given, choices, field)
