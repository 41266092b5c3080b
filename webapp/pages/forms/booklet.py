"""The choices for a booklet: paper, terms, and the size it is printed for."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from engine.errors import EngineError
from webapp.pages.forms.sent import Sent
from webapp.pages.forms.size import SizeForm, read_size
from webapp.records import MakerSettings

PAPERS = ("A4", "Letter")
TERMS = ("us", "uk")


@dataclass(frozen=True)
class BookletForm:
    """Paper and terms as chosen, the size form, and what is wrong by field, the size's errors among them."""

    paper: str
    terms: str
    size: SizeForm
    errors: Mapping[str, str]

    def refused(self, error: EngineError) -> BookletForm:
        """The form with an objection of the engine beside its field."""
        size = self.size.refused(error)
        return replace(self, size=size, errors={**self.errors, **size.errors})


def read_booklet(pairs: Iterable[tuple[str, object]], settings: MakerSettings) -> BookletForm:
    """The booklet form of a query or a form; what is not said is as the maker's settings have it."""
    sent = Sent(pairs)
    size = read_size(sent.pairs, settings)
    paper, terms = sent.one("paper") or settings.paper, sent.one("terms") or settings.terms
    errors = dict(size.errors)
    if paper not in PAPERS:
        errors["paper"] = f"Paper is {' or '.join(PAPERS)}."
    if terms not in TERMS:
        errors["terms"] = "Crochet terms are US or UK."
    return BookletForm(paper, terms, size, errors)
