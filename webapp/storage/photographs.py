"""The photographs of a pattern's booklets, in their order."""

from __future__ import annotations

from collections.abc import Sequence

from sqlalchemy import func
from sqlalchemy import select as columns
from sqlmodel import Session, col, select

from webapp.records import Photograph
from webapp.storage.database import Database
from webapp.storage.errors import NotFound, StorageError
from webapp.storage.patterns import row_of
from webapp.storage.tables import PhotographRow

MOST = 10


class TooMany(StorageError):
    """A pattern has as many photographs as its booklet shows."""

    code = "photographs"


def of(database: Database, pattern: int) -> tuple[Photograph, ...]:
    """The photographs in their order, without their bytes."""
    with database.reading() as session:
        rows = session.connection().execute(columns(
            col(PhotographRow.id), col(PhotographRow.caption), col(PhotographRow.seen), col(PhotographRow.width),
            col(PhotographRow.height))
            .where(col(PhotographRow.pattern) == pattern).order_by(col(PhotographRow.place), col(PhotographRow.id)))
        return tuple(Photograph(row[0] or 0, row[1], row[2], row[3], row[4]) for row in rows)


def jpeg(database: Database, pattern: int, number: int) -> bytes:
    """The bytes of one. Raises NotFound."""
    with database.reading() as session:
        return _row(session, pattern, number).jpeg


def add_all(database: Database, pattern: int, pictures: Sequence[tuple[bytes, int, int]]) -> None:
    """Puts photographs (JPEG bytes, width and height in px) behind the others: all of them or none.

    Raises NotFound, or TooMany beyond MOST.
    """
    with database.writing() as session:
        row_of(session, pattern)
        many, last = session.exec(select(func.count(), func.max(PhotographRow.place)).where(
            PhotographRow.pattern == pattern)).one()
        if many + len(pictures) > MOST:
            raise TooMany(f"A booklet shows at most {MOST} photographs, and {many} are there already; nothing was "
                          "added.", "photographs")
        session.add_all(PhotographRow(pattern=pattern, place=(last or 0) + place, caption="", seen="", width=width,
                                      height=height, jpeg=jpeg)
                        for place, (jpeg, width, height) in enumerate(pictures, 1))


def describe(database: Database, pattern: int, number: int, caption: str, seen: str) -> None:
    """Keeps caption and description of one. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, pattern, number)
        row.caption, row.seen = caption, seen
        session.add(row)


def move_up(database: Database, pattern: int, number: int) -> None:
    """Lets one change places with the one before it. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, pattern, number)
        before = session.exec(select(PhotographRow).where(
            PhotographRow.pattern == pattern, PhotographRow.place < row.place)
            .order_by(col(PhotographRow.place).desc())).first()
        if before is not None:
            row.place, before.place = before.place, row.place
            session.add_all((row, before))


def remove(database: Database, pattern: int, number: int) -> None:
    """Removes one. Raises NotFound."""
    with database.writing() as session:
        session.delete(_row(session, pattern, number))


def _row(session: Session, pattern: int, number: int) -> PhotographRow:
    row = session.get(PhotographRow, number) if 0 < number < 2**63 else None
    if row is None or row.pattern != pattern:
        raise NotFound("such photograph")
    return row
