"""Saved states and the working copy: a save names what it was made from, an older one is refused, old ones thin out."""

from __future__ import annotations

from datetime import UTC, datetime

from sqlalchemy import delete
from sqlmodel import Session, col, select

from engine.pattern.pattern import Pattern
from webapp.records import StoredPattern
from webapp.storage import clock
from webapp.storage.database import Database
from webapp.storage.errors import NotFound, Stale
from webapp.storage.patterns import number_of, pattern_of, row_of, store_state, text_of
from webapp.storage.tables import EditionRow, PatternRow, RevisionRow, WorkingRow
from webapp.storage.thinning import REVISIONS, kept


def save(database: Database, number: int, pattern: Pattern, made_from: int, note: str = "") -> int:
    """Keeps the pattern as a new revision and gives its number.

    A working copy that stands is kept first as an automatic revision, so that nothing acknowledged is lost. Raises
    NotFound, or Stale when `made_from` is not the newest revision; then nothing is changed.
    """
    with database.writing() as session:
        row = row_of(session, number)
        if made_from != row.revision:
            raise Stale(
                f"This pattern has been saved since: revision {row.revision} is the newest, "
                f"and this was made from revision {made_from}. Nothing was changed.",
                "made_from",
            )
        put_revision(session, row, pattern, database, note)
        return row.revision


def put_revision(session: Session, row: PatternRow, pattern: Pattern, database: Database, note: str = "") -> None:
    """Makes the pattern the newest revision, a working copy being kept first; part of a larger change."""
    if working := session.get(WorkingRow, number_of(row)):
        _add(session, row, working.document, "Working copy", database, automatic=True)
        session.exec(delete(WorkingRow).where(col(WorkingRow.pattern) == number_of(row)))
    _add(session, row, text_of(pattern), note, database)
    store_state(session, row, pattern)


def put_state(session: Session, row: PatternRow, pattern: Pattern, database: Database, note: str) -> None:
    """Makes the pattern the state as it stands, without the maker's doing; part of a larger change.

    A working copy becomes it; else it is an automatic revision with that note.
    """
    if working := session.get(WorkingRow, number_of(row)):
        working.document = text_of(pattern)
        session.add(working)
    else:
        _add(session, row, text_of(pattern), note, database, automatic=True)
    store_state(session, row, pattern)


def standing_in(session: Session, row: PatternRow) -> Pattern:
    """The pattern of a row as it stands."""
    working = session.get(WorkingRow, number_of(row))
    return pattern_of((working or session.get_one(RevisionRow, (number_of(row), row.revision))).document)


def write_working(database: Database, number: int, pattern: Pattern, sequence: int) -> int:
    """Overwrites the working copy and gives the next sequence number.

    `sequence` is the number last seen. Raises NotFound, or Stale when another page has written since.
    """
    with database.writing() as session:
        row = row_of(session, number)
        if sequence != row.sequence:
            raise Stale(
                f"Another page has written to this pattern since: its sequence is {row.sequence}, "
                f"this page knows {sequence}. Nothing was changed.",
                "sequence",
            )
        working = session.get(WorkingRow, number) or WorkingRow(
            pattern=number, made_from=row.revision, changed=database.now(), document=""
        )
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
        kept = session.get(RevisionRow, (number, revision_number)) if 0 < revision_number < 2**63 else None
        if kept is None:
            raise NotFound(f"revision {revision_number} of this pattern")
        return StoredPattern(
            id=number,
            pattern=pattern_of(kept.document),
            revision=kept.number,
            revision_date=kept.made.replace(tzinfo=UTC),
            working=False,
            sequence=row.sequence,
            example=row.example,
            binned=row.binned,
        )


def thin(database: Database) -> int:
    """Thins the automatic revisions of all patterns; how many went."""
    with database.writing() as session:
        busy = select(RevisionRow.pattern).where(RevisionRow.automatic, RevisionRow.mark == "").distinct()
        rows = session.exec(select(PatternRow).where(col(PatternRow.id).in_(busy))).all()
        return sum(thin_pattern(session, row, database.now()) for row in rows)


def thin_pattern(session: Session, row: PatternRow, now: datetime) -> int:
    """Thins the automatic revisions of a pattern by the rule; how many went.

    What the maker made or named, what was published, the newest, and what a working copy was made from stay. Nothing
    goes while the clock may be wrong.
    """
    if clock.jump_in(session, now) is not None:
        return 0
    number = number_of(row)
    working = session.get(WorkingRow, number)
    stay = {
        row.revision,
        working.made_from if working else row.revision,
        *session.exec(select(EditionRow.revision).where(EditionRow.pattern == number)),
    }
    automatic = session.exec(
        select(RevisionRow.number, RevisionRow.made).where(
            RevisionRow.pattern == number, RevisionRow.automatic, RevisionRow.mark == ""
        )
    )
    dated = {of: made.replace(tzinfo=UTC) for of, made in automatic}
    if gone := dated.keys() - kept(dated, now, REVISIONS) - stay:
        session.exec(delete(RevisionRow).where(col(RevisionRow.pattern) == number, col(RevisionRow.number).in_(gone)))
    return len(gone)


def _add(
    session: Session, row: PatternRow, document: str, note: str, database: Database, automatic: bool = False
) -> None:
    row.revision += 1
    row.changed = database.now()
    session.add(row)
    session.add(
        RevisionRow(
            pattern=number_of(row),
            number=row.revision,
            made=row.changed,
            automatic=automatic,
            note=note,
            document=document,
        )
    )
    thin_pattern(session, row, row.changed)
