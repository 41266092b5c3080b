"""Saved states and the working copy: a save names what it was made from, and an older one is refused."""

from __future__ import annotations

from datetime import UTC

from sqlalchemy import delete
from sqlmodel import Session, col

from engine.pattern.pattern import Pattern
from webapp.records import StoredPattern
from webapp.storage.database import Database
from webapp.storage.errors import NotFound, Stale
from webapp.storage.patterns import number_of, pattern_of, row_of, store_state, text_of
from webapp.storage.tables import PatternRow, RevisionRow, WorkingRow


def save(database: Database, number: int, pattern: Pattern, made_from: int, note: str = "") -> int:
    """Keeps the pattern as a new revision and gives its number.

    A working copy that stands is kept first as an automatic revision, so that nothing acknowledged is lost. Raises
    NotFound, or Stale when `made_from` is not the newest revision; then nothing is changed.
    """
    with database.writing() as session:
        row = row_of(session, number)
        if made_from != row.revision:
            raise Stale(f"This pattern has been saved since: revision {row.revision} is the newest, "
                        f"and this was made from revision {made_from}. Nothing was changed.", "made_from")
        if working := session.get(WorkingRow, number):
            _add(session, row, working.document, "Working copy", database, automatic=True)
            session.exec(delete(WorkingRow).where(col(WorkingRow.pattern) == number))
        _add(session, row, text_of(pattern), note, database)
        store_state(session, row, pattern)
        return row.revision


def write_working(database: Database, number: int, pattern: Pattern, sequence: int) -> int:
    """Overwrites the working copy and gives the next sequence number.

    `sequence` is the number last seen. Raises NotFound, or Stale when another page has written since.
    """
    with database.writing() as session:
        row = row_of(session, number)
        if sequence != row.sequence:
            raise Stale(f"Another page has written to this pattern since: its sequence is {row.sequence}, "
                        f"this page knows {sequence}. Nothing was changed.", "sequence")
        working = session.get(WorkingRow, number) or WorkingRow(
            pattern=number, made_from=row.revision, changed=database.now(), document="")
        working.document, working.changed = text_of(pattern), database.now()
        row.changed = working.changed
        session.add(working)
        store_state(session, row, pattern)
        return row.sequence


def keep_working(database: Database, number: int, note: str = "") -> int:
    """Makes the working copy, if there is one, a revision; gives the number of the newest. Raises NotFound."""
    with database.writing() as session:
        row = row_of(session, number)
        if working := session.get(WorkingRow, number):
            _add(session, row, working.document, note, database, automatic=not note)
            session.exec(delete(WorkingRow).where(col(WorkingRow.pattern) == number))
        return row.revision


def revision(database: Database, number: int, revision_number: int) -> StoredPattern:
    """That saved state. Raises NotFound."""
    with database.reading() as session:
        row = row_of(session, number)
        kept = session.get(RevisionRow, (number, revision_number)) if revision_number > 0 else None
        if kept is None:
            raise NotFound(f"revision {revision_number} of this pattern")
        return StoredPattern(number, pattern_of(kept.document), kept.number, kept.made.replace(tzinfo=UTC), False,
                             row.sequence, row.example, row.binned)


def _add(session: Session, row: PatternRow, document: str, note: str, database: Database,
         automatic: bool = False) -> None:
    row.revision += 1
    row.changed = database.now()
    session.add(row)
    session.add(RevisionRow(pattern=number_of(row), number=row.revision, made=row.changed, automatic=automatic,
                            note=note, document=document))
