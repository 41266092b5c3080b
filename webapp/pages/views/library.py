"""The library, its bin, and the page on which pattern files are taken in."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from engine.booklet.choices import DIFFICULTIES
from engine.units import count, counted
from webapp.pages.addresses import address, picture
from webapp.pages.forms.finder import Finder
from webapp.pages.views.frame import Frame
from webapp.records import PatternSummary, Shelves, SummaryPage, Wanted

CARD_WIDTH = 640
MOST_COLOURS = 6
MOST_NAMED = 3
SORT_WORDS = (
    ("changed", "Last changed"),
    ("made", "Last made"),
    ("title", "Title"),
    ("around", "Around"),
    ("beads", "Beads"),
    ("difficulty", "Skill level"),
)
UNDO_WORDS = {
    "take-back": "Take them back",
    "bin": "Put what is new in the bin",
    "untag": "Remove the tag again",
    "tag": "Add the tag again",
}


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
    beads: Annotated[int, "Beads of its chart, or of all its parts."]
    around: Annotated[int, "Beads in a round."]
    series: Annotated[str, "The series it belongs to; may be empty."]
    difficulty: Annotated[str, "How hard it is, in a word; empty where that was not said."]
    published: Annotated[bool, "Whether an edition of it is given out."]


@dataclass(frozen=True)
class TagLink:
    """A tag that narrows the library, or lets go of it again."""

    name: Annotated[str, "The tag."]
    patterns: Annotated[int, "How many patterns carry it."]
    chosen: Annotated[bool, "Whether the library is narrowed to it."]
    address: Annotated[str, "Where pressing it leads."]


@dataclass(frozen=True)
class Undo:
    """What undoes something done to several patterns."""

    told: Annotated[str, "What was done, in a sentence that names the patterns."]
    do: Annotated[str, "What is sent to be done."]
    words: Annotated[str, "The words of the button."]
    chosen: Annotated[str, "The patterns, by number, with hyphens between."]
    tag: Annotated[str, "The tag in question; may be empty."]


@dataclass(frozen=True)
class Options:
    """What the library can be narrowed by: values and words."""

    series: Annotated[tuple[tuple[str, str], ...], "The series."]
    kinds: Annotated[tuple[tuple[str, str], ...], "The bead kinds."]
    arounds: Annotated[tuple[tuple[str, str], ...], "The numbers around."]
    difficulties: Annotated[tuple[tuple[str, str], ...], "The difficulties."]


@dataclass(frozen=True)
class LibraryPage:
    """The library at `/`."""

    frame: Frame
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
    narrowed: Annotated[bool, "Whether anything but words and a tag narrows the list."]
    options: Annotated[Options, "What it can be narrowed by."]
    colour: Annotated[str, "The colour that is sought, #rrggbb, or one to begin with."]
    views: Annotated[tuple[tuple[str, str, bool], ...], "The views: words, address, whether it is this one."]
    undo: Annotated[Undo | None, "What undoes what was just done."]


@dataclass(frozen=True)
class BinPage:
    """The bin: what can be taken back."""

    frame: Frame
    patterns: Annotated[tuple[PatternSummary, ...], "The patterns in the bin, last changed first."]
    asked: Annotated[bool, "Whether the page asks before it empties the bin."]


@dataclass(frozen=True)
class ImportPage:
    """Where pattern files are taken in, and what became of those that were sent."""

    frame: Frame
    taken: Annotated[tuple[tuple[int, str], ...], "Number and title of every pattern that was taken in."]
    refused: Annotated[tuple[tuple[str, str], ...], "Name of every file that was not, and the sentence why."]
    where: Annotated[str, "The place of a zip on this computer, as typed."]


def library_page(
    frame: Frame,
    listed: SummaryPage,
    finder: Finder,
    examples: int = 0,
    binned: int = 0,
    shelves: Shelves | None = None,
    undo: Undo | None = None,
) -> LibraryPage:
    """The library for what was found."""
    narrowed = finder.wanted != Wanted()
    views = tuple(
        (words, address("library", **{**finder.query, "view": value}), finder.view == view)
        for view, value, words in (("pictures", "", "Pictures"), ("list", "list", "List"))
    )
    return LibraryPage(
        frame=frame,
        cards=tuple(map(_card, listed.patterns)),
        total=listed.total,
        empty=not listed.total and not narrowed,
        finder=finder,
        sorts=SORT_WORDS,
        tags=tuple(_tag(name, patterns, finder) for name, patterns in listed.tags),
        page=listed.page,
        pages=listed.pages,
        newer=_turned(finder, listed.page - 1) if listed.page > 1 else "",
        older=_turned(finder, listed.page + 1) if listed.page < listed.pages else "",
        examples=examples,
        binned=binned,
        narrowed=finder.more != Wanted(),
        options=_options(shelves or Shelves((), (), ())),
        colour=finder.more.near or "#17635c",
        views=views,
        undo=undo,
    )


def undo_of(do: str, chosen: str, tag: str, binned: Sequence[str] = ()) -> Undo | None:
    """The undo that an address asks for, if it is one of those there are; `binned` are titles of what is in the bin."""
    if do not in UNDO_WORDS or not chosen:
        return None
    one = do == "take-back" and "-" not in chosen
    words = "Take it back" if one else UNDO_WORDS[do]
    return Undo(told=_binned(binned), do=do, words=words, chosen=chosen, tag=tag)


def _binned(titles: Sequence[str]) -> str:
    """The patterns that are in the bin by name, or some of them: "“Dusk”, “Dawn” and 3 others are in the bin."."""
    if not titles:
        return ""
    named = [f"“{title}”" for title in titles[:MOST_NAMED]]
    if len(titles) > len(named):
        named.append(counted(len(titles) - len(named), "other"))
    before, last = ", ".join(named[:-1]), named[-1]
    return f"{before} and {last} are in the bin." if before else f"{last} is in the bin."


def bin_page(frame: Frame, binned: SummaryPage, asked: bool = False) -> BinPage:
    """The bin; `asked` when emptying it was pressed and must be confirmed."""
    return BinPage(frame, binned.patterns, asked)


def import_page(
    frame: Frame, taken: tuple[tuple[int, str], ...] = (), refused: tuple[tuple[str, str], ...] = (), where: str = ""
) -> ImportPage:
    """The import page, before and after files were sent."""
    return ImportPage(frame, taken, refused, where)


def _card(summary: PatternSummary) -> Card:
    drawn = f"{summary.parts} parts" if summary.parts > 1 else f"repeat {count(summary.repeat)}"
    facts = f"{summary.around} around · {', '.join(summary.kinds)} · {drawn}"
    shown = picture(summary.id, "ring", CARD_WIDTH, summary.picture)
    return Card(
        id=summary.id,
        title=summary.title,
        picture=shown,
        facts=facts,
        changed=summary.changed,
        example=summary.example,
        colours=summary.colours[:MOST_COLOURS],
        more=max(0, len(summary.colours) - MOST_COLOURS),
        beads=summary.beads,
        around=summary.around,
        series=summary.series,
        difficulty=DIFFICULTIES.get(summary.difficulty, ""),
        published=summary.published,
    )


def _tag(name: str, patterns: int, finder: Finder) -> TagLink:
    chosen = name == finder.tag
    return TagLink(name, patterns, chosen, address("library", **{**finder.query, "tag": "" if chosen else name}))


def _options(shelves: Shelves) -> Options:
    def any_of(values: Iterable[tuple[str, str]]) -> tuple[tuple[str, str], ...]:
        return (("", "Any"), *values)

    return Options(
        any_of((name, name) for name in shelves.series),
        any_of((name, name) for name in shelves.kinds),
        any_of((str(around), str(around)) for around in shelves.arounds),
        any_of((str(number), word.capitalize()) for number, word in DIFFICULTIES.items()),
    )


def _turned(finder: Finder, page: int) -> str:
    return address("library", **finder.query, page=page if page > 1 else "")
