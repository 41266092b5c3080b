"""Notes of what patterns earned."""

from __future__ import annotations

from dataclasses import asdict

from sqlmodel import col, select

from engine.cabinet.earnings import Earning
from webapp.records import KeptEarning
from webapp.storage.database import Database
from webapp.storage.errors import NotFound
from webapp.storage.patterns import row_of
from webapp.storage.tables import EarningRow


def note(database: Database, earning: Earning) -> int:
    """Keeps a note and gives its number. Raises NotFound for a pattern that is not in the library."""
    with database.writing() as session:
        title = row_of(session, earning.pattern).title
        row = EarningRow(title=title, **asdict(earning))
        session.add(row)
        session.flush()
        return row.id or 0


def noted(database: Database, pattern: int | None = None) -> tuple[KeptEarning, ...]:
    """The notes of a pattern, or all, the newest day first."""
    asked = select(EarningRow).order_by(col(EarningRow.date).desc(), col(EarningRow.id).desc())
    if pattern is not None:
        if not 0 < pattern < 2**63:
            return ()
        asked = asked.where(EarningRow.pattern == pattern)
    with database.reading() as session:
        return tuple(_kept(row) for row in session.exec(asked))


def remove(database: Database, number: int) -> KeptEarning:
    """Removes a note and gives it. Raises NotFound."""
    with database.writing() as session:
        row = session.get(EarningRow, number) if 0 < number < 2**63 else None
        if row is None:
            raise NotFound("such note")
        session.delete(row)
        return _kept(row)


def _kept(row: EarningRow) -> KeptEarning:
    return KeptEarning(row.id or 0, row.title, Earning(**row.model_dump(exclude={"id", "title"})))
