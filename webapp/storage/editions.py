"""Editions: a revision as published with its booklets, byte for byte, who was given them, and what they were told."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import UTC
from hashlib import sha256

from sqlalchemy import func
from sqlalchemy import select as columns
from sqlmodel import Session, col, select

from webapp.records import Edition, EditionBooklet, FreshBooklet, GivenCopy
from webapp.storage.database import Database
from webapp.storage.errors import NotFound
from webapp.storage.patterns import row_of
from webapp.storage.tables import CopyRow, EditionBookletRow, EditionRow, RevisionRow


def publish(
    database: Database, pattern: int, revision: int, booklets: Sequence[FreshBooklet], words: str = "", note: str = ""
) -> int:
    """Keeps that revision as the next edition, with its booklets, and gives its number. Raises NotFound."""
    with database.writing() as session:
        row_of(session, pattern)
        if session.get(RevisionRow, (pattern, revision)) is None:
            raise NotFound(f"revision {revision} of this pattern")
        number = _newest(session, pattern) + 1
        session.add(
            EditionRow(
                pattern=pattern, number=number, revision=revision, published=database.now(), note=note, words=words
            )
        )
        session.flush()
        session.add_all(
            EditionBookletRow(
                pattern=pattern,
                edition=number,
                name=made.name,
                choices=made.choices,
                pages=made.pages,
                sha256=sha256(made.pdf).hexdigest(),
                pdf=made.pdf,
            )
            for made in booklets
        )
        return number


def next_number(database: Database, pattern: int) -> int:
    """The number that the next edition of a pattern will have."""
    with database.reading() as session:
        return _newest(session, pattern) + 1


def editions(database: Database, pattern: int) -> tuple[Edition, ...]:
    """The editions of a pattern, the newest first, without the bytes of their booklets."""
    with database.reading() as session:
        rows = session.exec(
            select(EditionRow).where(EditionRow.pattern == pattern).order_by(col(EditionRow.number).desc())
        ).all()
        return tuple(_edition(session, row) for row in rows)


def edition(database: Database, pattern: int, number: int) -> Edition:
    """That edition. Raises NotFound."""
    with database.reading() as session:
        return _edition(session, _row(session, pattern, number))


def pdf(database: Database, pattern: int, number: int, name: str) -> bytes:
    """A booklet of an edition as it was published. Raises NotFound."""
    with database.reading() as session:
        kept = session.get(EditionBookletRow, (pattern, number, name))
        if kept is None:
            raise NotFound(f"booklet “{name}” in edition {number}")
        return kept.pdf


def withdraw(database: Database, pattern: int, number: int, why: str = "") -> None:
    """Notes that an edition is no longer given out; it stays as it is. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, pattern, number)
        if row.withdrawn is None:
            row.withdrawn, row.why = database.now(), why
            session.add(row)


def bring_back(database: Database, pattern: int, number: int) -> None:
    """Lets an edition that was withdrawn be given out again. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, pattern, number)
        row.withdrawn, row.why = None, ""
        session.add(row)


def give(database: Database, pattern: int, number: int, booklet: str, name: str, test: bool = False) -> int:
    """Notes that a person was given that booklet, and gives the number of the copy. Raises NotFound."""
    with database.writing() as session:
        if session.get(EditionBookletRow, (pattern, number, booklet)) is None:
            raise NotFound(f"booklet “{booklet}” in edition {number}")
        row = CopyRow(pattern=pattern, edition=number, booklet=booklet, name=name, test=test, given=database.now())
        session.add(row)
        session.flush()
        return row.id or 0


def copies(database: Database, pattern: int) -> tuple[GivenCopy, ...]:
    """The copies of a pattern that were given out, the newest first."""
    with database.reading() as session:
        rows = session.exec(
            select(CopyRow)
            .where(CopyRow.pattern == pattern)
            .order_by(col(CopyRow.given).desc(), col(CopyRow.id).desc())
        )
        return tuple(_copy(row) for row in rows)


def copy(database: Database, number: int) -> GivenCopy:
    """That copy. Raises NotFound."""
    with database.reading() as session:
        row = session.get(CopyRow, number) if 0 < number < 2**63 else None
        if row is None:
            raise NotFound("such copy")
        return _copy(row)


def note_told(database: Database, pattern: int, numbers: Iterable[int], edition: int) -> int:
    """Notes that those who have these copies were sent the errata up to that edition; how many copies that were."""
    with database.writing() as session:
        rows = session.exec(
            select(CopyRow).where(
                CopyRow.pattern == pattern, col(CopyRow.id).in_(list(numbers)), CopyRow.told < edition
            )
        ).all()
        for row in rows:
            row.told = edition
            session.add(row)
        return len(rows)


def _newest(session: Session, pattern: int) -> int:
    return session.exec(select(func.max(EditionRow.number)).where(EditionRow.pattern == pattern)).one() or 0


def _row(session: Session, pattern: int, number: int) -> EditionRow:
    row = session.get(EditionRow, (pattern, number)) if 0 < number < 2**63 else None
    if row is None:
        raise NotFound(f"edition {number} of this pattern")
    return row


def _edition(session: Session, row: EditionRow) -> Edition:
    kept = session.connection().execute(
        columns(
            col(EditionBookletRow.name),
            col(EditionBookletRow.choices),
            col(EditionBookletRow.pages),
            col(EditionBookletRow.sha256),
            func.length(EditionBookletRow.pdf),
        )
        .where(col(EditionBookletRow.pattern) == row.pattern, col(EditionBookletRow.edition) == row.number)
        .order_by(EditionBookletRow.name)
    )
    withdrawn = row.withdrawn.replace(tzinfo=UTC) if row.withdrawn else None
    return Edition(
        pattern=row.pattern,
        number=row.number,
        revision=row.revision,
        published=row.published.replace(tzinfo=UTC),
        note=row.note,
        words=row.words,
        booklets=tuple(EditionBooklet(*booklet) for booklet in kept),
        withdrawn=withdrawn,
        why=row.why,
    )


def _copy(row: CopyRow) -> GivenCopy:
    return GivenCopy(
        id=row.id or 0,
        pattern=row.pattern,
        edition=row.edition,
        booklet=row.booklet,
        name=row.name,
        test=row.test,
        given=row.given.replace(tzinfo=UTC),
        told=row.told,
    )
