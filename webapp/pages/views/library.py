"""The library, its bin, and the page on which pattern files are taken in."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from engine.units import count
from webapp.pages.addresses import address, picture
from webapp.pages.forms.finder import Finder
from webapp.pages.views.frame import Frame
from webapp.records import PatternSummary, SummaryPage

CARD_WIDTH = 640
MOST_COLOURS = 6
SORT_WORDS = (("changed", "Last changed"), ("title", "Title"), ("around", "Around"))


@dataclass(frozen=True)
class Card:
    """A pattern in the library."""

    id: Annotated[int, "The pattern's number."]
    title: Annotated[str, "Its title."]
    picture: Annotated[str, "Address of its ring picture."]
    facts: Annotated[str, "Around, kinds and repeat in one line."]
    changed: Annotated[datetime, "When it was last changed."]
    example: Annotated[bool, "Whether it came with the app."]
    colours: Annotated[tuple[str, ...], "The first colours of its palette, #rrggbb."]
    more: Annotated[int, "How many colours are not among them."]


@dataclass(frozen=True)
class TagLink:
    """A tag that narrows the library, or lets go of it again."""

    name: Annotated[str, "The tag."]
    patterns: Annotated[int, "How many patterns carry it."]
    chosen: Annotated[bool, "Whether the library is narrowed to it."]
    address: Annotated[str, "Where pressing it leads."]


@dataclass(frozen=True)
class LibraryPage:
    """The library at `/`."""

    frame: Annotated[Frame, "What stands round the page."]
    cards: Annotated[tuple[Card, ...], "The patterns of this page of the list."]
    total: Annotated[int, "How many patterns were found."]
    empty: Annotated[bool, "Whether nothing is kept at all, rather than nothing found."]
    finder: Annotated[Finder, "The search as typed."]
    sorts: Annotated[tuple[tuple[str, str], ...], "The orders that can be chosen: value and words."]
    tags: Annotated[tuple[TagLink, ...], "All tags of what was found."]
    page: Annotated[int, "Which page of the list this is, from one."]
    pages: Annotated[int, "How many pages the list has."]
    newer: Annotated[str, "Address of the page before; empty on the first."]
    older: Annotated[str, "Address of the page after; empty on the last."]
    examples: Annotated[int, "How many examples are in the library."]
    binned: Annotated[int, "How many patterns are in the bin."]


@dataclass(frozen=True)
class BinPage:
    """The bin: what can be taken back."""

    frame: Annotated[Frame, "What stands round the page."]
    patterns: Annotated[tuple[PatternSummary, ...], "The patterns in the bin, last changed first."]
    asked: Annotated[bool, "Whether the page asks before it empties the bin."]


@dataclass(frozen=True)
class ImportPage:
    """Where pattern files are taken in, and what became of those that were sent."""

    frame: Annotated[Frame, "What stands round the page."]
    taken: Annotated[tuple[tuple[int, str], ...], "Number and title of every pattern that was taken in."]
    refused: Annotated[tuple[tuple[str, str], ...], "Name of every file that was not, and the sentence why."]


def library_page(frame: Frame, found: SummaryPage, finder: Finder, examples: int = 0, binned: int = 0) -> LibraryPage:
    """The library for what was found."""
    narrowed = bool(finder.search or finder.tag)
    return LibraryPage(
        frame, tuple(map(_card, found.patterns)), found.total, not found.total and not narrowed, finder, SORT_WORDS,
        tuple(_tag(name, patterns, finder) for name, patterns in found.tags), found.page, found.pages,
        _turned(finder, found.page - 1) if found.page > 1 else "",
        _turned(finder, found.page + 1) if found.page < found.pages else "", examples, binned)


def bin_page(frame: Frame, binned: SummaryPage, asked: bool = False) -> BinPage:
    """The bin; `asked` when emptying it was pressed and must be confirmed."""
    return BinPage(frame, binned.patterns, asked)


def import_page(frame: Frame, taken: tuple[tuple[int, str], ...] = (),
                refused: tuple[tuple[str, str], ...] = ()) -> ImportPage:
    """The import page, before and after files were sent."""
    return ImportPage(frame, taken, refused)


def _card(summary: PatternSummary) -> Card:
    facts = f"{summary.around} around · {', '.join(summary.kinds)} · repeat {count(summary.repeat)}"
    shown = picture(summary.id, "ring", CARD_WIDTH, summary.picture)
    return Card(summary.id, summary.title, shown, facts, summary.changed, summary.example,
                summary.colours[:MOST_COLOURS], max(0, len(summary.colours) - MOST_COLOURS))


def _tag(name: str, patterns: int, finder: Finder) -> TagLink:
    chosen = name == finder.tag
    return TagLink(name, patterns, chosen, _narrowed(finder, "" if chosen else name))


def _narrowed(finder: Finder, tag: str) -> str:
    return address("library", search=finder.search, tag=tag, sort=_said_sort(finder))


def _turned(finder: Finder, page: int) -> str:
    return address("library", search=finder.search, tag=finder.tag, sort=_said_sort(finder),
                   page=page if page > 1 else "")


def _said_sort(finder: Finder) -> str:
    return "" if finder.sort == "changed" else finder.sort
