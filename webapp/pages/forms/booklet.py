"""The choices for a booklet: paper, format, terms, what it is printed for, and the size."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from engine.booklet.papers import FORMATS, LARGE, PAPERS, STANDARD
from engine.booklet.terms import TERMS
from engine.counting.questions import NamedSize
from engine.errors import EngineError
from webapp.pages.forms.sent import Sent
from webapp.pages.forms.size import SizeForm, read_size
from webapp.records import MakerSettings

TRIAL, EDITION = PURPOSES = ("trial", "edition")


@dataclass(frozen=True)
class BookletForm:
    """The choices as made, the size form, and what is wrong by field, the size's errors among them.

    `purpose` is "trial", or "edition" for a print that is to be published. `colourway` is the number of the one that is
    printed, nought for the pattern's own palette; with `bills` those of all others are printed besides.
    """

    paper: str
    terms: str
    size: SizeForm
    errors: Mapping[str, str]
    format: str = STANDARD
    ink_saving: bool = False
    purpose: str = TRIAL
    colourway: int = 0
    bills: bool = False

    def refused(self, error: EngineError) -> BookletForm:
        """The form with an objection of the engine beside its field."""
        if error.field in ("paper", "edition"):
            return replace(self, errors={**self.errors, error.field: error.message})
        size = self.size.refused(error)
        return replace(self, size=size, errors={**self.errors, **size.errors})


def read_booklet(
    pairs: Iterable[tuple[str, object]], settings: MakerSettings, sizes: Iterable[NamedSize] = ()
) -> BookletForm:
    """The booklet form of a query or a form; what is not said is as the maker's settings have it."""
    sent = Sent(pairs)
    size = read_size(sent.pairs, settings, sizes)
    paper, terms = sent.one("paper") or settings.paper, sent.one("terms") or settings.terms
    format, purpose = sent.one("edition") or STANDARD, sent.one("purpose") or TRIAL
    errors = dict(size.errors)
    colourway = sent.one("colourway", "0")
    if paper not in PAPERS:
        errors["paper"] = f"Paper is {', '.join(PAPERS[:-1])} or {PAPERS[-1]}."
    elif format == LARGE and paper == "A5":
        errors["paper"] = "Large print needs A4 or Letter: on A5 a line would hold two or three words."
    if terms not in TERMS:
        errors["terms"] = "Crochet terms are US or UK."
    if format not in FORMATS:
        errors["edition"] = "The edition is standard or large print."
    if purpose not in PURPOSES:
        errors["purpose"] = "A booklet is printed as a trial, or for an edition."
    return BookletForm(
        paper=paper,
        terms=terms,
        size=size,
        errors=errors,
        format=format,
        ink_saving=bool(sent.one("ink_saving")),
        purpose=purpose,
        colourway=int(colourway) if colourway.isascii() and colourway.isdigit() and len(colourway) < 10 else 0,
        bills=bool(sent.one("bills")),
    )
