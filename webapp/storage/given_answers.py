"""Answers that were given, with who asked: kept, found again by name or pattern, and forgotten."""

from __future__ import annotations

from datetime import UTC

from sqlmodel import Session, col, or_, select

from webapp.records import Counted, GivenAnswer
from webapp.storage.database import Database
from webapp.storage.errors import NotFound
from webapp.storage.patterns import pattern_of, row_of, text_of
from webapp.storage.tables import KeptAnswerRow

LISTED = 100


def keep(database: Database, pattern: int, name: str, counted: Counted, question: str, sent: str, beads: int) -> int:
    """Keeps an answer and gives its number. Raises NotFound."""
    with database.writing() as session:
        row = KeptAnswerRow(
            pattern=pattern,
            title=row_of(session, pattern).title,
            name=name,
            asked=database.now(),
            revision=counted.revision,
            document=text_of(counted.pattern),
            counted=counted.text,
            question=question,
            sent=sent,
            beads=beads,
        )
        session.add(row)
        session.flush()
        return row.id or 0


def find(database: Database, search: str = "", pattern: int | None = None) -> tuple[GivenAnswer, ...]:
    """The newest answers in whose name or title every word of the search stands, of that pattern where one is named."""
    asked = select(KeptAnswerRow).order_by(col(KeptAnswerRow.id).desc()).limit(LISTED)
    for word in search.split():
        asked = asked.where(
            or_(
                col(KeptAnswerRow.name).icontains(word, autoescape=True),
                col(KeptAnswerRow.title).icontains(word, autoescape=True),
            )
        )
    if pattern is not None:
        if not 0 < pattern < 2**63:
            return ()
        asked = asked.where(KeptAnswerRow.pattern == pattern)
    with database.reading() as session:
        return tuple(_given(row) for row in session.exec(asked))


def load(database: Database, number: int) -> GivenAnswer:
    """That answer. Raises NotFound."""
    with database.reading() as session:
        return _given(_row(session, number))


def remove(database: Database, number: int) -> GivenAnswer:
    """Forgets an answer for good, and gives it. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, number)
        session.delete(row)
        return _given(row)


def _row(session: Session, number: int) -> KeptAnswerRow:
    row = session.get(KeptAnswerRow, number) if 0 < number < 2**63 else None
    if row is None:
        raise NotFound("such kept answer")
    return row


def _given(row: KeptAnswerRow) -> GivenAnswer:
    return GivenAnswer(
        id=row.id or 0,
        of=row.pattern,
        title=row.title,
        name=row.name,
        asked=row.asked.replace(tzinfo=UTC),
        counted=Counted(pattern_of(row.document), row.revision, row.counted),
        question=row.question,
        sent=row.sent,
        beads=row.beads,
    )
