"""The revisions of a pattern: listed, named, brought back."""

from __future__ import annotations

from datetime import UTC, datetime

from sqlalchemy import func
from sqlmodel import Session, col, select

from webapp.records import KeptRevision, RevisionList
from webapp.storage.database import Database
from webapp.storage.errors import NotFound
from webapp.storage.patterns import load, pattern_of, row_of
from webapp.storage.revisions import revision, save
from webapp.storage.tables import EditionRow, RevisionRow, WorkingRow

PER_PAGE = 20


def revisions_of(database: Database, number: int, page: int = 1, per_page: int = PER_PAGE) -> RevisionList:
    """A page of the revisions of a pattern, the newest first; pages count from one. Raises NotFound."""
    with database.reading() as session:
        row_of(session, number)
        of_pattern = RevisionRow.pattern == number
        total = session.exec(select(func.count()).select_from(RevisionRow).where(of_pattern)).one()
        pages = max(1, -(-total // per_page))
        page = min(max(page, 1), pages)
        # one more than is shown: the last is compared with the one before it
        rows = session.exec(
            select(RevisionRow)
            .where(of_pattern)
            .order_by(col(RevisionRow.number).desc())
            .offset((page - 1) * per_page)
            .limit(per_page + 1)
        ).all()
        working = session.get(WorkingRow, number)
        editions = _editions(session, number)
        listed = tuple(_kept(row, editions) for row in rows)
        return RevisionList(
            revisions=listed[:per_page],
            page=page,
            pages=pages,
            total=total,
            before=listed[per_page].pattern if len(listed) > per_page else None,
            working=working.changed.replace(tzinfo=UTC) if working else None,
        )


def numbers_of(database: Database, number: int) -> tuple[tuple[int, datetime, str], ...]:
    """Number, date and name of every revision, the newest first. Raises NotFound."""
    with database.reading() as session:
        row_of(session, number)
        rows = session.exec(
            select(RevisionRow.number, RevisionRow.made, RevisionRow.mark)
            .where(RevisionRow.pattern == number)
            .order_by(col(RevisionRow.number).desc())
        )
        return tuple((of, made.replace(tzinfo=UTC), mark) for of, made, mark in rows)


def kept_revision(database: Database, number: int, revision_number: int) -> KeptRevision:
    """One revision with all that is known of it. Raises NotFound."""
    with database.reading() as session:
        row_of(session, number)
        return _kept(_revision_row(session, number, revision_number), _editions(session, number))


def mark(database: Database, number: int, revision_number: int, name: str) -> None:
    """Gives a revision a name, by which it is kept for good; an empty one takes it away. Raises NotFound."""
    with database.writing() as session:
        row = _revision_row(session, number, revision_number)
        row.mark = name
        session.add(row)


def bring_back(database: Database, number: int, revision_number: int) -> tuple[int, int]:
    """Makes an old state the newest revision; a working copy is kept first. Raises NotFound.

    Gives the number of the new revision, and of the one that holds what stood before: bringing that back undoes it. The
    two are alike where the old state is what stands already; then nothing is made.
    """
    old, stands = revision(database, number, revision_number), load(database, number)
    if old.pattern == stands.pattern and not stands.working:
        return stands.revision, stands.revision
    new = save(database, number, old.pattern, stands.revision, f"Revision {revision_number} brought back")
    return new, new - 1


def _revision_row(session: Session, number: int, revision_number: int) -> RevisionRow:
    row = session.get(RevisionRow, (number, revision_number)) if 0 < revision_number < 2**63 else None
    if row is None:
        raise NotFound(f"revision {revision_number} of this pattern")
    return row


def _editions(session: Session, number: int) -> dict[int, tuple[int, ...]]:
    """Numbers of editions by the revision they were published from."""
    editions: dict[int, tuple[int, ...]] = {}
    published = select(EditionRow).where(EditionRow.pattern == number).order_by(col(EditionRow.number))
    for edition in session.exec(published):
        editions[edition.revision] = (*editions.get(edition.revision, ()), edition.number)
    return editions


def _kept(row: RevisionRow, editions: dict[int, tuple[int, ...]]) -> KeptRevision:
    return KeptRevision(
        number=row.number,
        made=row.made.replace(tzinfo=UTC),
        automatic=row.automatic,
        note=row.note,
        mark=row.mark,
        editions=editions.get(row.number, ()),
        pattern=pattern_of(row.document),
    )
