"""Two states of a pattern compared: in words, and on their charts with the beads that differ ringed."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from engine.drawing.compared import ringed
from engine.drawing.svg import to_svg
from engine.pattern.differences import Differences, PartPair, differences, paired_parts
from engine.pattern.differences_in_words import bead_lines, field_lines, palette_lines
from engine.pattern.pattern import Pattern
from engine.units import count
from webapp.pages.addresses import address
from webapp.pages.filters import moment
from webapp.pages.views.frame import Frame, Head, head
from webapp.records import StoredPattern

NOW = 0  # the number under which the state as it stands is asked for
WINDOW_BEADS = 1500
BEAD_MM = 5.0


@dataclass(frozen=True)
class Side:
    """One of the two states."""

    number: Annotated[int, "Its revision; nought is the pattern as it stands."]
    name: Annotated[str, "What it is, in a few words."]
    chart: Annotated[str, "Address of its chart with rings; empty where none of its beads are shown."]


@dataclass(frozen=True)
class PartLink:
    """A part whose charts can be shown."""

    name: Annotated[str, "What it is called."]
    differing: Annotated[int, "How many of its beads differ."]
    address: Annotated[str, "Where its charts are; empty for the part that is shown."]


@dataclass(frozen=True)
class ComparePage:
    """Any two states of a pattern at `/patterns/{id}/history/compare`."""

    frame: Frame
    head: Head
    old: Annotated[Side, "The state compared with."]
    new: Annotated[Side, "The state that is compared."]
    choices: Annotated[tuple[tuple[str, str], ...], "The states to choose from: value and words."]
    words: Annotated[tuple[str, ...], "Differences of title, around and the other words."]
    palette: Annotated[tuple[str, ...], "Differences of the palette."]
    beads: Annotated[tuple[str, ...], "Where beads differ."]
    differing: Annotated[int, "How many beads differ, were put in or taken out."]
    shown: Annotated[str, "Which beads the charts show; empty where they show all."]
    earlier: Annotated[str, "Address of the stretch before; empty at the first."]
    later: Annotated[str, "Address of the stretch after; empty at the last."]
    parts: Annotated[tuple[PartLink, ...], "The parts whose charts can be shown; none where there is one."]


def compare_page(
    frame: Frame,
    stored: StoredPattern,
    numbers: Sequence[tuple[int, datetime, str]],
    old: tuple[int, Pattern],
    new: tuple[int, Pattern],
    first: int | None = None,
    part: str = "",
) -> ComparePage:
    """The page for two states, each with its number.

    `first` is where the charts begin, else the first difference; `part` is the part that they show.
    """
    (old_number, was), (new_number, now) = old, new
    changes = differences(was, now)
    shown = _shown_part(was, now, changes, part)
    beads = max(len(shown.was), len(shown.now))
    begin = window(was, now, changes, first, part)
    choices = _choices(stored, numbers)
    asked = {"id": stored.id, "old": old_number, "new": new_number}

    def turned(to: int) -> str:
        return address("compare", **asked, part=part, first=to) if 0 <= to < beads else ""

    names = dict(choices)

    def seen(side: str, number: int, its_beads: bytes) -> Side:
        stretch = {"side": side, "part": part, "first": begin}
        return Side(
            number,
            names[str(number)],
            address("compare_chart", **asked, **stretch) if begin < len(its_beads) else "",
        )

    whole = beads <= WINDOW_BEADS
    return ComparePage(
        frame=frame,
        head=head(stored),
        old=seen("old", old_number, shown.was),
        new=seen("new", new_number, shown.now),
        choices=choices,
        words=field_lines(changes),
        palette=palette_lines(changes),
        beads=bead_lines(was, now, changes),
        differing=sum(max(len(change.was), len(change.now)) for change in changes.beads),
        shown=""
        if whole
        else f"Beads {count(begin + 1)} to {count(min(beads, begin + WINDOW_BEADS))} of {count(beads)}",
        earlier=turned(begin - WINDOW_BEADS) if not whole else "",
        later=turned(begin + WINDOW_BEADS) if not whole else "",
        parts=tuple(_part_links(was, now, changes, shown, asked)),
    )


def _shown_part(was: Pattern, now: Pattern, changes: Differences, part: str) -> PartPair:
    """The part asked for; else the chart or the first part that differs."""
    pairs = paired_parts(was, now)
    differ = [change.part for change in changes.beads]
    for name in (part, "chart", *differ):
        if found := next((pair for pair in pairs if pair.name == name), None):
            return found
    return pairs[0]


def _part_links(
    was: Pattern, now: Pattern, changes: Differences, shown: PartPair, asked: dict[str, int]
) -> Iterator[PartLink]:
    """The parts whose charts can be shown, of patterns that have several, with how many beads differ in each."""
    pairs = [pair for pair in paired_parts(was, now) if pair.was or pair.now]
    if len(pairs) == 1:
        return
    for pair in pairs:
        differ = sum(max(len(change.was), len(change.now)) for change in changes.of_part(pair.name))
        here = pair.name == shown.name
        words = f"{pair.name[0].upper()}{pair.name[1:]}"
        yield PartLink(words, differ, "" if here else address("compare", **asked, part=pair.name))


def compared_chart(was: Pattern, now: Pattern, side: str, first: int | None = None, part: str = "") -> str:
    """One side as SVG: a stretch of the lying chart of a part with the beads that differ ringed."""
    changes = differences(was, now)
    shown = _shown_part(was, now, changes, part)
    begin = window(was, now, changes, first, part)
    pattern, beads = (was, shown.was) if side == "old" else (now, shown.now)
    last = min(len(beads), begin + WINDOW_BEADS)
    drawn = pattern.alone(beads or pattern.main.beads)
    return to_svg(ringed(drawn, marked(shown, changes, side), min(begin, last), last, BEAD_MM))


def window(was: Pattern, now: Pattern, changes: Differences, first: int | None, part: str = "") -> int:
    """Where the charts begin: nought where they fit whole, else what was asked for, or the first bead that differs."""
    shown = _shown_part(was, now, changes, part)
    if max(len(shown.was), len(shown.now)) <= WINDOW_BEADS:
        return 0
    differs = next((change.first for change in changes.of_part(shown.name)), 0)
    return max(0, differs if first is None else first) // WINDOW_BEADS * WINDOW_BEADS


def marked(shown: PartPair, changes: Differences, side: str) -> Collection[int]:
    """The beads of that part that differ, as they stand on that side."""
    if side == "old":
        return {change.was_first + k for change in changes.of_part(shown.name) for k in range(len(change.was))}
    return {change.first + k for change in changes.of_part(shown.name) for k in range(len(change.now))}


def _choices(stored: StoredPattern, numbers: Sequence[tuple[int, datetime, str]]) -> tuple[tuple[str, str], ...]:
    stands = "As it stands" if stored.working else f"As it stands, revision {stored.revision}"
    return (
        (str(NOW), stands),
        *(
            (str(number), f"Revision {number}{f', {mark}' if mark else ''}, {moment(made)}")
            for number, made, mark in numbers
        ),
    )
