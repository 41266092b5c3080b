"""What the library is asked for: words, a tag, an order, a page."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from webapp.pages.forms.sent import Sent

SORTS = ("changed", "title", "around")


@dataclass(frozen=True)
class Finder:
    """The search as it stands in the address; anything that cannot be meant takes its usual value."""

    search: str = ""
    tag: str = ""
    sort: str = "changed"
    page: int = 1


def read_finder(pairs: Iterable[tuple[str, object]]) -> Finder:
    """The search of a query."""
    sent = Sent(pairs)
    sort, page = sent.one("sort"), sent.one("page")
    return Finder(sent.one("search")[:200], sent.one("tag"), sort if sort in SORTS else "changed",
                  int(page) if page.isascii() and page.isdigit() and 0 < len(page) < 7 and int(page) else 1)
