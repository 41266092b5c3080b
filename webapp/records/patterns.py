"""Patterns as lists show them, what a list is narrowed to, and a pattern as it stands."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import NamedTuple

from engine.pattern.pattern import Pattern


@dataclass(frozen=True)
class PatternSummary:
    """What a list of patterns says about one of them.

    `beads` are those of its chart, or of all its `parts`, where it has several. `colours` are "#rrggbb" in palette
    order; `picture` changes whenever the picture would: a browser may keep it.
    """

    id: int
    title: str
    around: int
    beads: int
    repeat: int
    kinds: tuple[str, ...]
    colours: tuple[str, ...]
    tags: tuple[str, ...]
    changed: datetime
    revision: int
    example: bool
    picture: str
    binned: bool
    series: str = ""
    difficulty: int = 0
    made: datetime | None = None
    published: bool = False
    parts: int = 1


@dataclass(frozen=True)
class Wanted:
    """What a list of patterns is narrowed to; whatever is empty or nought does not narrow.

    Every word of `search` must begin a word of title, notes, tags, bead names or series. `beads` and `colours` are the
    least and the most, `published` is "yes" or "no", `near` a colour "#rrggbb" that some bead must come near.
    """

    search: str = ""
    tag: str = ""
    series: str = ""
    around: int = 0
    beads: tuple[int, int] = (0, 0)
    colours: tuple[int, int] = (0, 0)
    kind: str = ""
    difficulty: int = 0
    published: str = ""
    near: str = ""


@dataclass(frozen=True)
class SummaryPage:
    """One page of a list of patterns; `tags` are all tags of what was found, each with how many patterns carry it."""

    patterns: tuple[PatternSummary, ...]
    page: int
    pages: int
    total: int
    tags: tuple[tuple[str, int], ...] = ()


@dataclass(frozen=True)
class Shelves:
    """What there is to narrow a library by: series, bead kinds and numbers around, each in order."""

    series: tuple[str, ...]
    kinds: tuple[str, ...]
    arounds: tuple[int, ...]


@dataclass(frozen=True)
class StoredPattern:
    """A pattern as it stands. `working` says that it is the working copy, `sequence` how often that was written."""

    id: int
    pattern: Pattern
    revision: int
    revision_date: datetime
    working: bool
    sequence: int
    example: bool
    binned: bool
    series: str = ""
    difficulty: int = 0


class PatternInZip(NamedTuple):
    """A pattern that has arrived: new, same or different, and the number of the one of its title, or nought."""

    title: str
    state: str
    number: int
