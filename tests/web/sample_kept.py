"""What is kept of a sample pattern: the state before, its revisions, and backups of a library with it."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from pathlib import Path

from engine.pattern.pattern import Pattern
from webapp.records import KeptBackup, KeptRevision, RevisionList, StoredPattern

WHEN = datetime(2026, 5, 4, 9, 7)


def before(stored: StoredPattern) -> Pattern:
    """The pattern as it was: another title, one bead less and one of another colour."""
    return replace(stored.pattern, title=f"Old {stored.pattern.title}"[:120], chart=b"\1" + stored.pattern.chart[1:-1])


def backups(stored: StoredPattern) -> tuple[KeptBackup, ...]:
    """A backup, one that cannot be read, and a library kept aside."""
    named = Path(f"{stored.pattern.title.replace('/', '')}.sqlite")
    return (
        KeptBackup(named, WHEN, 3_400_000, 1200, False),
        KeptBackup(Path("two.sqlite"), WHEN, 90_000, None, False),
        KeptBackup(Path("before-restore.sqlite"), WHEN, 90_000, 1, True),
    )


def history(stored: StoredPattern, working: datetime | None = None, pages: int = 1) -> RevisionList:
    """Two revisions: a published one with note and name, and an automatic one before it."""
    words = stored.pattern.title
    return RevisionList(
        (
            KeptRevision(3, WHEN, False, words, words, (1, 2), stored.pattern),
            KeptRevision(2, WHEN, True, "", "", (), before(stored)),
        ),
        1,
        pages,
        2,
        before(stored),
        working,
    )
