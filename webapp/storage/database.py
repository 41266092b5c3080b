"""Opens the library file and hands out sessions: many readers, one writer, nothing acknowledged but on disk."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from threading import Condition, Lock
from typing import Any, TypeVar

from sqlalchemy import Connection, Engine, event
from sqlalchemy.engine.interfaces import DBAPIConnection
from sqlmodel import Session, create_engine

from webapp.storage.errors import LibraryError

T = TypeVar("T")

LIBRARY = "library.sqlite"
PRAGMAS = {"journal_mode": "WAL", "synchronous": "FULL", "foreign_keys": "ON", "busy_timeout": "60000"}
PATIENCE_S = 10.0


class Database:
    """The library in a data folder; sessions are made per use, `close` lets the file go, `now` is the time in UTC."""

    def __init__(self, folder: Path, now: Callable[[], datetime] = lambda: datetime.now(UTC)) -> None:
        self.folder = folder
        self.now = now
        self.path = folder / LIBRARY
        self.connections = connect(self.path)
        self.gate = Gate()
        self.remembered = Remembered(self.path)

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """A session that sees one state of the library throughout."""
        with self.gate.passing(), self.connections.connect() as connection, Session(connection) as session:
            yield session

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """A session whose changes are kept whole at its end, or not at all."""
        with (
            self.gate.passing(),
            self.connections.connect().execution_options(writes=True) as connection,
            Session(connection) as session,
        ):
            yield session
            session.commit()

    @contextmanager
    def at_rest(self) -> Iterator[None]:
        """The file let go by everybody here, so that it may be exchanged; sessions that begin meanwhile wait.

        Raises LibraryError where those that are open do not end.
        """
        with self.gate.shut():
            self.close()
            yield

    def close(self) -> None:
        self.remembered.forget()
        self.connections.dispose()


class Remembered:
    """What was worked out from the whole library, kept until anybody changes it, in this process or another."""

    def __init__(self, path: Path) -> None:
        self._path = path
        self._lock = Lock()
        self._looking: sqlite3.Connection | None = None
        self._kept: dict[str, tuple[int, Any]] = {}

    def get(self, name: str, make: Callable[[], T]) -> T:
        """What is kept under that name; made and kept where there is nothing, or the library has changed since."""
        version = self._version()
        with self._lock:
            kept = self._kept.get(name)
        if kept is not None and kept[0] == version:
            value: T = kept[1]
            return value
        made = make()
        with self._lock:
            self._kept[name] = (version, made)
        return made

    def forget(self) -> None:
        """Lets go of the file and of everything that was kept."""
        with self._lock:
            self._kept.clear()
            if self._looking is not None:
                self._looking.close()
                self._looking = None

    def __del__(self) -> None:
        self.forget()  # also where somebody looked once more after the library was closed

    def _version(self) -> int:
        """A number that SQLite changes, for a connection that only looks, whenever another has written."""
        with self._lock:
            if self._looking is None:
                self._looking = sqlite3.connect(self._path, check_same_thread=False)
            version: int = self._looking.execute("PRAGMA data_version").fetchone()[0]
            return version


class Gate:
    """Lets many pass, and can be shut once all of them are through."""

    def __init__(self) -> None:
        self.moved = Condition()
        self.inside = 0
        self.closed = False

    @contextmanager
    def passing(self) -> Iterator[None]:
        with self.moved:
            self.moved.wait_for(lambda: not self.closed)
            self.inside += 1
        try:
            yield
        finally:
            with self.moved:
                self.inside -= 1
                self.moved.notify_all()

    @contextmanager
    def shut(self, patience_s: float = PATIENCE_S) -> Iterator[None]:
        with self.moved:
            self.moved.wait_for(lambda: not self.closed)
            self.closed = True
            empty = self.moved.wait_for(lambda: not self.inside, patience_s)
        try:
            if not empty:
                raise LibraryError("The library is being written to just now; try again in a moment.")
            yield
        finally:
            with self.moved:
                self.closed = False
                self.moved.notify_all()


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
