"""Pieces that were made: noted, taken off the stock, and put back where that is undone."""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import UTC

from sqlmodel import col, select

from webapp.records import MadePieces
from webapp.storage.beads import put_back, take_off
from webapp.storage.database import Database
from webapp.storage.errors import NotFound
from webapp.storage.patterns import row_of
from webapp.storage.tables import MadeRow

LISTED = 20


def note_made(database: Database, pattern: int, pieces: int, size: str, takes: Mapping[str, int]) -> int:
    """Notes that so many pieces were made, and takes mg by key off the stock, as far as it goes; the note's number.

    Raises NotFound for a pattern or a bead that is not there; then nothing is changed.
    """
    with database.writing() as session:
        title = row_of(session, pattern).title
        taken = take_off(session, takes)
        row = MadeRow(
            pattern=pattern, title=title, made=database.now(), pieces=pieces, size=size, taken=json.dumps(taken)
        )
        session.add(row)
        session.flush()
        return row.id or 0


def undo(database: Database, number: int) -> MadePieces:
    """Puts back what those pieces took off the stock; once is enough. Raises NotFound."""
    with database.writing() as session:
        row = session.get(MadeRow, number) if 0 < number < 2**63 else None
        if row is None:
            raise NotFound("such note of a piece")
        if not row.undone:
            put_back(session, json.loads(row.taken))
        row.undone = True
        session.add(row)
        session.flush()
        return _made(row)


def last_made(database: Database, pattern: int) -> tuple[MadePieces, ...]:
    """What was made of a pattern, the newest first."""
    asked = select(MadeRow).where(MadeRow.pattern == pattern).order_by(col(MadeRow.id).desc()).limit(LISTED)
    with database.reading() as session:
        return tuple(_made(row) for row in session.exec(asked))


def _made(row: MadeRow) -> MadePieces:
    return MadePieces(
        id=row.id or 0,
        pattern=row.pattern,
        title=row.title,
        made=row.made.replace(tzinfo=UTC),
        pieces=row.pieces,
        size=row.size,
        taken=json.loads(row.taken),
        undone=row.undone,
    )
