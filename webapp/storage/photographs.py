"""The photographs of a pattern's booklets, in their order; those that were removed can be taken back."""

from __future__ import annotations

from collections.abc import Sequence

from sqlalchemy import ColumnElement, delete, func, update
from sqlalchemy import select as columns
from sqlmodel import Session, col, select

from webapp.records import Photograph
from webapp.storage.database import Database
from webapp.storage.errors import NotFound, StorageError
from webapp.storage.patterns import row_of
from webapp.storage.tables import PhotographRow

MOST = 10
MOST_REMOVED = 10  # kept of a pattern, besides those that its booklet shows


class TooMany(StorageError):
    """A pattern has as many photographs as its booklet shows."""

    code = "photographs"


def of(database: Database, pattern: int) -> tuple[Photograph, ...]:
    """The photographs in their order, without their bytes."""
    return _photographs(database, pattern, col(PhotographRow.place) > 0)


def removed(database: Database, pattern: int) -> tuple[Photograph, ...]:
    """Those that were removed and can be taken back, without their bytes."""
    return _photographs(database, pattern, col(PhotographRow.place) < 0)


def jpeg(database: Database, pattern: int, number: int) -> bytes:
    """The bytes of one, also of one that was removed. Raises NotFound."""
    with database.reading() as session:
        return _row(session, pattern, number).jpeg


def add_all(database: Database, pattern: int, pictures: Sequence[tuple[bytes, int, int]]) -> tuple[int, ...]:
    """Puts photographs (JPEG bytes, width and height in px) behind the others, all or none; gives their numbers.

    Raises NotFound, or TooMany beyond MOST.
    """
    with database.writing() as session:
        row_of(session, pattern)
        last = _check_room(session, pattern, len(pictures), "nothing was added")
        rows = [
            PhotographRow(
                pattern=pattern, place=last + place, caption="", seen="", width=width, height=height, jpeg=jpeg
            )
            for place, (jpeg, width, height) in enumerate(pictures, 1)
        ]
        session.add_all(rows)
        session.flush()
        return tuple(row.id or 0 for row in rows)


def describe(database: Database, pattern: int, number: int, caption: str, seen: str) -> None:
    """Keeps caption and description of one. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, pattern, number)
        row.caption, row.seen = caption, seen
        session.add(row)


def move(database: Database, pattern: int, number: int, up: bool) -> None:
    """Lets one change places with the one before it, or with the one after it. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, pattern, number)
        place = col(PhotographRow.place)
        beyond = place.between(1, row.place - 1) if up else place > row.place
        other = session.exec(
            select(PhotographRow)
            .where(PhotographRow.pattern == pattern, beyond)
            .order_by(place.desc() if up else place)
        ).first()
        if other is not None and row.place > 0:
            row.place, other.place = other.place, row.place
            session.add_all((row, other))


def remove(database: Database, pattern: int, number: int) -> None:
    """Removes one; it and the newest of those removed before are kept, MOST_REMOVED in all. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, pattern, number)
        row.place = -abs(row.place)
        session.add(row)
        before = session.exec(
            select(PhotographRow.id)
            .where(PhotographRow.pattern == pattern, PhotographRow.place < 0, PhotographRow.id != number)
            .order_by(col(PhotographRow.id).desc())
        ).all()
        session.exec(delete(PhotographRow).where(col(PhotographRow.id).in_(before[MOST_REMOVED - 1 :])))


def take_back(database: Database, pattern: int, number: int) -> None:
    """Puts one that was removed back where it stood. Raises NotFound, or TooMany beyond MOST."""
    with database.writing() as session:
        row = _row(session, pattern, number)
        if row.place > 0:
            return
        _check_room(session, pattern, 1, "this one stays removed")
        place = col(PhotographRow.place)
        session.exec(
            update(PhotographRow)
            .where(col(PhotographRow.pattern) == pattern, place >= -row.place)
            .values(place=place + 1)
        )
        row.place = -row.place
        session.add(row)


def forget_removed(database: Database, pattern: int) -> None:
    """Lets go for good of those that were removed."""
    with database.writing() as session:
        session.exec(delete(PhotographRow).where(col(PhotographRow.pattern) == pattern, col(PhotographRow.place) < 0))


def _photographs(database: Database, pattern: int, wanted: ColumnElement[bool]) -> tuple[Photograph, ...]:
    with database.reading() as session:
        rows = session.connection().execute(
            columns(
                col(PhotographRow.id),
                col(PhotographRow.caption),
                col(PhotographRow.seen),
                col(PhotographRow.width),
                col(PhotographRow.height),
            )
            .where(col(PhotographRow.pattern) == pattern, wanted)
            .order_by(func.abs(PhotographRow.place), col(PhotographRow.id))
        )
        return tuple(
            Photograph(id=row[0] or 0, caption=row[1], seen=row[2], width=row[3], height=row[4]) for row in rows
        )


def _check_room(session: Session, pattern: int, more: int, otherwise: str) -> int:
    """The last place that is taken. Raises TooMany where so many more find no room."""
    many, last = session.exec(
        select(func.count(), func.max(PhotographRow.place)).where(
            PhotographRow.pattern == pattern, PhotographRow.place > 0
        )
    ).one()
    if many + more > MOST:
        raise TooMany(
            f"A booklet shows at most {MOST} photographs, and {many} are there already; {otherwise}.", "photographs"
        )
    return last or 0


def _row(session: Session, pattern: int, number: int) -> PhotographRow:
    row = session.get(PhotographRow, number) if 0 < number < 2**63 else None
    if row is None or row.pattern != pattern:
        raise NotFound("such photograph")
    return row
