"""Opens the library file and hands out sessions: many readers, one writer, nothing acknowledged but on disk."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, event
from sqlalchemy.engine.interfaces import DBAPIConnection
from sqlmodel import Session, create_engine

LIBRARY = "library.sqlite"
PRAGMAS = {"journal_mode": "WAL", "synchronous": "FULL", "foreign_keys": "ON", "busy_timeout": "10000"}


class Database:
    """The library in a data folder; sessions are made per use, `close` lets the file go, `now` is the time in UTC."""

    def __init__(self, folder: Path, now: Callable[[], datetime] = lambda: datetime.now(UTC)) -> None:
        self.folder = folder
        self.now = now
        self.path = folder / LIBRARY
        self.connections = connect(self.path)

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """A session that sees one state of the library throughout."""
        with self.connections.connect() as connection, Session(connection) as session:
            yield session

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """A session whose changes are kept whole at its end, or not at all."""
        with self.connections.connect().execution_options(writes=True) as connection, Session(connection) as session:
            yield session
            session.commit()

    def close(self) -> None:
        self.connections.dispose()


def connect(path: Path) -> Engine:
    """Connections to an SQLite file with our pragmas; a transaction that writes takes the lock as it begins."""
    connections = create_engine(f"sqlite:///{path}", connect_args={"check_same_thread": False})
    event.listen(connections, "connect", _set_up)
    event.listen(connections, "begin", _begin)
    return connections


def _set_up(connection: DBAPIConnection, record: Any) -> None:
    # sqlite3 would begin transactions by itself, and only at the first change
    connection.isolation_level = None
    cursor = connection.cursor()
    for name, value in PRAGMAS.items():
        cursor.execute(f"PRAGMA {name} = {value}")
    cursor.close()


def _begin(connection: Connection) -> None:
    writes = connection.get_execution_options().get("writes", False)
    connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
