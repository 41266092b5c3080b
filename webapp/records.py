"""The frozen values that storage gives and pages show: patterns, settings, swatches and print jobs."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from engine.counting.rope import Swatch
from engine.pattern.pattern import Pattern


@dataclass(frozen=True)
class PatternSummary:
    """What a list of patterns says about one of them.

    `colours` are "#rrggbb" in palette order; `picture` changes whenever the picture would: a browser may keep it.
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


@dataclass(frozen=True)
class SummaryPage:
    """One page of a list of patterns; `tags` are all tags of what was found, each with how many patterns carry it."""

    patterns: tuple[PatternSummary, ...]
    page: int
    pages: int
    total: int
    tags: tuple[tuple[str, int], ...] = ()


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


@dataclass(frozen=True)
class MakerSettings:
    """What the maker says once: printed in every booklet and used in every sum. Millimetres; `spare` in percent.

    `longest_m` and `heaviest_g` are the most strung beads that can be handled on a thread; nought means any.
    """


    maker: str = ""
    contact: str = ""
    licence: str = ""
    units: str = "cm"
    terms: str = "us"
    paper: str = "A4"
    clasp_mm: float = 25.0
    glued_mm: float = 15.0
    spare: float = 10.0
    look: str = "system"
    greeting: str = ""
    closing: str = ""
    longest_m: float = 0.0
    heaviest_g: float = 0.0


@dataclass(frozen=True)
class KeptSwatch:
    """A swatch with the number it is kept under."""

    id: int
    swatch: Swatch


@dataclass(frozen=True)
class PrintJob:
    """A booklet on its way: waiting, running, done, failed or cancelled; every step is (name, state) in the same words.

    `message` is one sentence when it failed; `pages` is known when it is done.
    """

    id: str
    pattern_id: int
    state: str
    steps: tuple[tuple[str, str], ...]
    message: str = ""
    pages: int | None = None

    @property
    def over(self) -> bool:
        return self.state in ("done", "failed", "cancelled")


@dataclass(frozen=True)
class MissingLibrary:
    """What this computer lacks for printing: libraries by name, and what to type, as (system, line)."""

    names: tuple[str, ...]
    remedies: tuple[tuple[str, str], ...]
