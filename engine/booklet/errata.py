"""The errata sheet: what a later edition of a pattern has changed, for those who have an earlier one."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field

from engine.booklet.own import PLACES, OwnWords
from engine.dates import day_of
from engine.pattern.differences import Differences, differences
from engine.pattern.differences_in_words import bead_lines, field_lines, palette_lines
from engine.pattern.pattern import Pattern
from engine.units import count

PLACE_NAMES = {
    "introduction": "the introduction",
    "hours": "the hours to make",
    "need": "what you need",
    "sample": "the maker’s sample",
    "read": "how to read",
    "chart": "the chart",
    "lists": "the stringing lists",
    "work": "the working guide",
    "finish": "the finishing guide",
    "sizes": "the sizes",
    "care": "care and safety",
    "own-title": "the maker’s own title",
    "own": "the maker’s own chapter",
    "tips": "the tips",
}


@dataclass(frozen=True)
class Published:
    """An edition as far as its errata go: number, date YYYY-MM-DD, the pattern, and the maker's own words."""

    number: int
    date: str
    pattern: Pattern
    own: OwnWords = field(default_factory=OwnWords)


@dataclass(frozen=True)
class Errata:
    """A sheet of errata: its heading, which editions it is about, and lines under headings."""

    title: str
    about: str
    groups: tuple[tuple[str, tuple[str, ...]], ...]
    closing: str

    @property
    def text(self) -> str:
        """The sheet as plain text, to be sent."""
        groups = ("\n".join((head, *(f"- {line}" for line in lines))) for head, lines in self.groups)
        return "\n\n".join((self.title, self.about, *groups, self.closing)) + "\n"


def errata(old: Published, new: Published, contact: str = "") -> Errata:
    """What is different in the new edition; a sheet without groups where nothing is."""
    changes = differences(old.pattern, new.pattern)
    groups = (
        ("Beads", bead_lines(old.pattern, new.pattern, changes)),
        ("Bead counts", tuple(_counts(old, new, changes))),
        ("Palette", palette_lines(changes)),
        ("Words", (*field_lines(changes), *_own_lines(old.own, new.own))),
    )
    kept = tuple((head, tuple(_sentence(line) for line in lines)) for head, lines in groups if lines)
    return Errata(
        f"Errata: {new.pattern.title}",
        f"For those who have edition {old.number} of {day_of(old.date)}. Edition {new.number} of {day_of(new.date)} "
        + ("changes this:" if kept else "has the same beads and the same words."),
        kept,
        "Rounds and beads count from one, in the order in which they are crocheted. If you have strung already, look "
        "for the beads named here before you work them." + (f" Questions: {contact}" if contact else ""),
    )


def _counts(old: Published, new: Published, changes: Differences) -> Iterator[str]:
    """Beads of one pass by code, where they are not the same."""
    if not changes.beads:
        return
    what = "all parts, each drawn once" if new.pattern.in_parts else "one pass"
    was, now = _by_code(old.pattern), _by_code(new.pattern)
    names = {entry.code: entry.name for entry in (*old.pattern.palette, *new.pattern.palette)}
    for code in dict.fromkeys((*now, *was)):
        if was[code] != now[code]:
            yield f"{what}: {code} {names[code]} {count(now[code])}, was {count(was[code])}"
    before, after = len(_once(old.pattern)), len(_once(new.pattern))
    if before != after:
        yield f"{what}: {count(after)} beads in all, was {count(before)}"


def _by_code(pattern: Pattern) -> Counter[str]:
    beads = _once(pattern)
    return Counter({entry.code: beads.count(index) for index, entry in enumerate(pattern.palette)})


def _once(pattern: Pattern) -> bytes:
    """The beads of one pass of the chart, or of every part where it has several of its own."""
    return pattern.drawn if pattern.in_parts else pattern.main.beads


def _own_lines(old: OwnWords, new: OwnWords) -> Iterator[str]:
    for place in PLACES:
        was, now = old.text(place), new.text(place)
        if was != now:
            how = "other words" if was and now else "words added" if now else "words taken out"
            yield f"{PLACE_NAMES[place]}: {how}"


def _sentence(line: str) -> str:
    return f"{line[0].upper()}{line[1:]}."
