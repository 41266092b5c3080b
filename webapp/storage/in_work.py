"""Pieces in work: begun with the list as it then was, kept in place, finished, put away and taken up again."""

from __future__ import annotations

from datetime import UTC

from sqlmodel import Session, col, select

from webapp.records import Counted, Piece
from webapp.storage.database import Database
from webapp.storage.errors import NotFound, Rejected, Stale
from webapp.storage.patterns import pattern_of, row_of, text_of
from webapp.storage.tables import PieceRow

MOST_PIECES = 500


def begin(database: Database, pattern: int, name: str, counted: Counted, asked: str) -> int:
    """Keeps a new piece of that pattern and gives its number. Raises NotFound, or Rejected where there are too many."""
    with database.writing() as session:
        row_of(session, pattern)
        if len(session.exec(select(PieceRow.id).where(PieceRow.pattern == pattern)).all()) >= MOST_PIECES:
            raise Rejected(
                f"At most {MOST_PIECES} pieces of a pattern are kept; remove some that are put away.", "name"
            )
        row = PieceRow(
            pattern=pattern,
            name=name,
            begun=database.now(),
            revision=counted.revision,
            document=text_of(counted.pattern),
            counted=counted.text,
            asked=asked,
        )
        session.add(row)
        session.flush()
        return row.id or 0


def pieces(database: Database, pattern: int) -> tuple[Piece, ...]:
    """The pieces of a pattern, the newest first."""
    asked = select(PieceRow).where(PieceRow.pattern == pattern).order_by(col(PieceRow.id).desc())
    with database.reading() as session:
        return tuple(_piece(row) for row in session.exec(asked))


def piece(database: Database, pattern: int, number: int) -> Piece:
    """That piece of that pattern. Raises NotFound."""
    with database.reading() as session:
        row = _row(session, number)
        if row.pattern != pattern:
            raise NotFound("such piece of this pattern")
        return _piece(row)


def move(database: Database, number: int, thread: int, strung: int, sequence: int) -> int:
    """Keeps the place of a piece and gives the next sequence number.

    Raises NotFound, or Stale where another page has moved on since; then nothing is changed.
    """
    with database.writing() as session:
        row = _row(session, number)
        if sequence != row.sequence:
            raise Stale(
                "The place of this piece was changed on another page since. Nothing was changed; load this page again.",
                "sequence",
            )
        row.thread, row.strung, row.sequence = thread, strung, row.sequence + 1
        session.add(row)
        return row.sequence


def rename(database: Database, number: int, name: str) -> None:
    """Gives a piece another name. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, number)
        row.name = name
        session.add(row)


def put(database: Database, number: int, state: str) -> None:
    """Says that a piece is open, finished or put away. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, number)
        row.state = state
        session.add(row)


def remove(database: Database, number: int) -> None:
    """Forgets a piece that is finished or put away, for good. Raises NotFound, or Rejected for one that is open."""
    with database.writing() as session:
        row = _row(session, number)
        if row.state == "open":
            raise Rejected("A piece in work is not removed; put it away first.")
        session.delete(row)


def _row(session: Session, number: int) -> PieceRow:
    row = session.get(PieceRow, number) if 0 < number < 2**63 else None
    if row is None:
        raise NotFound("such piece")
    return row


def _piece(row: PieceRow) -> Piece:
    return Piece(
        id=row.id or 0,
        of=row.pattern,
        name=row.name,
        begun=row.begun.replace(tzinfo=UTC),
        counted=Counted(pattern_of(row.document), row.revision, row.counted),
        asked=row.asked,
        thread=row.thread,
        strung=row.strung,
        sequence=row.sequence,
        state=row.state,
    )
