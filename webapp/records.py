"""The frozen values that storage gives and pages show: patterns, settings, swatches and print jobs."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import NamedTuple

from engine.booklet.proof.proof import Proof
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
    series: str = ""
    difficulty: int = 0
    made: datetime | None = None
    published: bool = False


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


@dataclass(frozen=True)
class KeptRevision:
    """A saved state: who made it, its note and its name, and the numbers of the editions published from it."""

    number: int
    made: datetime
    automatic: bool
    note: str
    mark: str
    editions: tuple[int, ...]
    pattern: Pattern


@dataclass(frozen=True)
class RevisionList:
    """A page of the revisions of a pattern, the newest first; `before` is the state before the last of them.

    `working` says since when there is a working copy.
    """

    revisions: tuple[KeptRevision, ...]
    page: int
    pages: int
    total: int
    before: Pattern | None = None
    working: datetime | None = None


@dataclass(frozen=True)
class BackupFolder:
    """Where backups are kept, which folder was chosen, and why it cannot be used just now, if it cannot."""

    path: Path
    chosen: Path | None
    wrong: str


@dataclass(frozen=True)
class KeptBackup:
    """A backup, or a library kept aside: `size` in bytes, `patterns` None where the file cannot be read."""

    path: Path
    made: datetime
    size: int
    patterns: int | None
    aside: bool


class ArrivedPattern(NamedTuple):
    """A pattern that has arrived: new, same or different, and the number of the one of its title, or nought."""

    title: str
    state: str
    number: int


class PatternInside(NamedTuple):
    """A pattern of a backup or of the present library, and what a restore does to it."""

    title: str
    state: str


@dataclass(frozen=True)
class BackupInside:
    """What a backup holds, and what restoring it would do to each pattern."""

    path: Path
    patterns: int
    binned: int
    newest: datetime | None
    lines: tuple[PatternInside, ...]


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

    `message` is one sentence when it failed; `pages` is known when it is done, `proof` too where one was asked for.
    `name` says which booklet it is, `revision` of which state of the pattern, `published` the edition it is meant for.
    """

    id: str
    pattern_id: int
    state: str
    steps: tuple[tuple[str, str], ...]
    message: str = ""
    pages: int | None = None
    name: str = ""
    revision: int = 0
    proof: Proof | None = None
    published: int = 0

    @property
    def over(self) -> bool:
        return self.state in ("done", "failed", "cancelled")


class FreshBooklet(NamedTuple):
    """A booklet that is to be published: which one, the choices it was printed with as JSON, its pages, its bytes."""

    name: str
    choices: str
    pages: int
    pdf: bytes


class EditionBooklet(NamedTuple):
    """A booklet of an edition: which one, the choices it was printed with as JSON, pages, hash, size in bytes."""

    name: str
    choices: str
    pages: int
    sha256: str
    bytes: int


@dataclass(frozen=True)
class Edition:
    """A revision as published. `words` are the maker's own as they then were, as JSON; `why` it was withdrawn."""

    pattern: int
    number: int
    revision: int
    published: datetime
    note: str
    words: str
    booklets: tuple[EditionBooklet, ...]
    withdrawn: datetime | None = None
    why: str = ""


@dataclass(frozen=True)
class GivenCopy:
    """A booklet of an edition as given to somebody; `told` is the edition whose errata they were sent last."""

    id: int
    pattern: int
    edition: int
    booklet: str
    name: str
    test: bool
    given: datetime
    told: int


class Photograph(NamedTuple):
    """A photograph of a pattern: its number, caption, what is seen in it, and its size in px."""

    id: int
    caption: str
    seen: str
    width: int
    height: int


@dataclass(frozen=True)
class MissingLibrary:
    """What this computer lacks for printing: libraries by name, and what to type, as (system, line)."""

    names: tuple[str, ...]
    remedies: tuple[tuple[str, str], ...]
