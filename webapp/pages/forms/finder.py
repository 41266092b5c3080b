"""What the library is asked for: words, what patterns are and carry, an order, a page, a view; and what is chosen."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from webapp.pages.forms.sent import Sent
from webapp.records import Wanted

SORTS = ("changed", "made", "title", "around", "beads", "difficulty")
VIEWS = ("pictures", "list")
MOST_CHOSEN = 500
_COLOUR = re.compile(r"#[0-9a-f]{6}")


@dataclass(frozen=True)
class Finder:
    """The search as it stands in the address; anything that cannot be meant takes its usual value."""

    search: str = ""
    tag: str = ""
    sort: str = "changed"
    page: int = 1
    view: str = "pictures"
    more: Wanted = field(default_factory=Wanted)

    @property
    def wanted(self) -> Wanted:
        """Everything that narrows."""
        return replace(self.more, search=self.search, tag=self.tag)

    @property
    def query(self) -> dict[str, object]:
        """The values of an address that asks for the same again, without the page."""
        more = self.more
        return {
            "search": self.search,
            "tag": self.tag,
            "sort": "" if self.sort == "changed" else self.sort,
            "view": "" if self.view == "pictures" else self.view,
            "series": more.series,
            "around": more.around or "",
            "beads_least": more.beads[0] or "",
            "beads_most": more.beads[1] or "",
            "colours_least": more.colours[0] or "",
            "colours_most": more.colours[1] or "",
            "kind": more.kind,
            "difficulty": more.difficulty or "",
            "published": more.published,
            "near": more.near,
            "by_colour": "yes" if more.near else "",
        }


@dataclass(frozen=True)
class Chosen:
    """Patterns chosen in the library, and what is to be done with them."""

    numbers: tuple[int, ...]
    do: str
    tag: str


def read_finder(pairs: Iterable[tuple[str, object]]) -> Finder:
    """The search of a query."""
    sent = Sent(pairs)
    sort, view, published, near = (sent.one(name) for name in ("sort", "view", "published", "near"))
    more = Wanted(
        series=sent.one("series")[:120],
        around=_number(sent, "around"),
        beads=(_number(sent, "beads_least"), _number(sent, "beads_most")),
        colours=(_number(sent, "colours_least"), _number(sent, "colours_most")),
        kind=sent.one("kind")[:120],
        difficulty=_number(sent, "difficulty"),
        published=published if published in ("yes", "no") else "",
        near=near.lower() if sent.has("by_colour") and _COLOUR.fullmatch(near.lower()) else "",
    )
    return Finder(
        search=sent.one("search")[:200],
        tag=sent.one("tag"),
        sort=sort if sort in SORTS else "changed",
        page=_number(sent, "page") or 1,
        view=view if view in VIEWS else "pictures",
        more=more,
    )


def read_chosen(pairs: Iterable[tuple[str, object]]) -> Chosen:
    """What is chosen; numbers may stand one a field, or several in one with hyphens between."""
    sent = Sent(pairs)
    texts = [text for field in sent.all("chosen") for text in field.split("-")]
    numbers = dict.fromkeys(int(text) for text in texts if text.isascii() and text.isdigit() and len(text) < 16)
    return Chosen(tuple(numbers)[:MOST_CHOSEN], sent.one("do"), sent.one("with_tag"))


def _number(sent: Sent, name: str) -> int:
    text = sent.one(name)
    return int(text) if text.isascii() and text.isdigit() and 0 < len(text) < 7 else 0
