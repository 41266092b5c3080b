"""Whether the computer's clock can be right: nothing old is thinned across a jump of it until a person says so."""

from __future__ import annotations

from contextlib import suppress
from datetime import UTC, datetime, timedelta
from typing import NamedTuple

from sqlmodel import Session

from webapp.storage.database import Database
from webapp.storage.tables import SettingRow

SEEN = "clock"
FORWARD, BACK = timedelta(days=60), timedelta(days=2)


class Jump(NamedTuple):
    """The time that was seen before, and the time that the clock shows now."""

    before: datetime
    now: datetime


def jump(database: Database) -> Jump | None:
    """How far the clock has jumped since it was last trusted, if it has."""
    with database.reading() as session:
        return jump_in(session, database.now())


def jump_in(session: Session, now: datetime) -> Jump | None:
    """The same as part of a larger change."""
    row = session.get(SettingRow, SEEN)
    before = _read(row.value) if row else None
    if before is None or -BACK <= now - before <= FORWARD:
        return None
    return Jump(before, now)


def note_time(database: Database) -> Jump | None:
    """Keeps the time of now, unless the clock has jumped; then says how far."""
    with database.writing() as session:
        jumped = jump_in(session, database.now())
        if jumped is None:
            session.merge(SettingRow(name=SEEN, value=database.now().isoformat()))
        return jumped


def trust(database: Database) -> None:
    """The person says that the clock is right."""
    with database.writing() as session:
        session.merge(SettingRow(name=SEEN, value=database.now().isoformat()))


def _read(text: str) -> datetime | None:
    with suppress(ValueError):
        moment = datetime.fromisoformat(text)
        return moment if moment.tzinfo else moment.replace(tzinfo=UTC)
    return None
