"""What is done to several patterns at once, all of it or nothing; each gives the patterns it changed, to be undone."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from sqlmodel import col, select

from engine.pattern.pattern import Pattern
from webapp.storage.database import Database
from webapp.storage.patterns import pattern_of, row_of
from webapp.storage.revisions import put_revision
from webapp.storage.tables import PatternRow, RevisionRow, WorkingRow


def set_binned(database: Database, numbers: Iterable[int], binned: bool) -> tuple[int, ...]:
    """Puts patterns into the bin, or takes them back."""
    with database.writing() as session:
        rows = session.exec(
            select(PatternRow).where(col(PatternRow.id).in_(tuple(numbers)), col(PatternRow.binned) != binned)
        ).all()
        for row in rows:
            row.binned = binned
            session.add(row)
        return tuple(row.id for row in rows if row.id is not None)


def set_tag(database: Database, numbers: Iterable[int], tag: str, carried: bool) -> tuple[int, ...]:
    """Lets patterns carry a tag, or no longer; each that changes gets a new revision.

    Raises NotFound, and PatternError for a tag that no pattern can carry; then nothing is changed.
    """
    changed = []
    with database.writing() as session:
        for number in numbers:
            row = row_of(session, number)
            newest = session.get(WorkingRow, number) or session.get_one(RevisionRow, (number, row.revision))
            pattern = pattern_of(newest.document)
            tagged = _tagged(pattern, tag, carried)
            if tagged != pattern:
                put_revision(session, row, tagged, database, f"Tag “{tag}” {'added' if carried else 'taken away'}")
                changed.append(number)
    return tuple(changed)


def _tagged(pattern: Pattern, tag: str, carried: bool) -> Pattern:
    others = tuple(other for other in pattern.tags if other != tag)
    if carried:
        return pattern if tag in pattern.tags else replace(pattern, tags=(*pattern.tags, tag))
    return replace(pattern, tags=others)
