"""Saved states of a pattern."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from engine.pattern.pattern import Pattern


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
