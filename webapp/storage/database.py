"""Opens the library file and hands out sessions: many readers, one writer, nothing acknowledged but on disk."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager, suppress
from datetime import UTC, datetime
from pathlib import Path
from threading import Condition, Lock
from typing import Any, TypeVar

from sqlalchemy import Connection, Engine, QueuePool, event
from sqlalchemy.engine.interfaces import DBAPIConnection
from sqlalchemy.exc import DatabaseError
from sqlmodel import Session, create_engine

from webapp.storage import health
from webapp.storage.errors import Damaged, LibraryError, LibraryGone, library_error
from webapp.storage.health import Health

T = TypeVar("T")

LIBRARY = "library.sqlite"
PRAGMAS = {"journal_mode": "WAL", "synchronous": "FULL", "foreign_keys": "ON", "busy_timeout": "20000"}
PATIENCE_S = 10.0
GONE = (
    "The library file {} was removed or exchanged while Ropewright ran. Nothing was saved. Put it back where it was, "
    "or restore the newest backup."
)


class Database:
    """The library in a data folder; sessions are made per use, `close` lets the file go, `now` is the time in UTC.

    Sessions raise a LibraryError, in a sentence, for what SQLite objects to in the file.
    """

    def __init__(self, folder: Path, now: Callable[[], datetime] = lambda: datetime.now(UTC)) -> None:
        self.folder = folder
        self.now = now
        self.path = folder / LIBRARY
        self.connections = connect(self.path)
        self.gate = Gate()
        self.remembered = Remembered(self.path, self.gate)
        self.health = Health()
        self.one_backup = Lock()
        self._identity = identity_of(self.path)

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """A session that sees one state of the library throughout."""
        with (
            self._in_words(),
            self.gate.passing(),
            self.connections.connect() as connection,
            Session(connection) as session,
        ):
            yield session

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """A session whose changes are kept whole at its end, or not at all.

        Raises LibraryGone where the file that was opened is not the one that stands in the data folder.
        """
        with (
            self._in_words(),
            self.gate.passing(),
            self.connections.connect().execution_options(writes=True) as connection,
            Session(connection) as session,
        ):
            session.connection()  # takes the lock: a restore by another process is over before the file is compared
            self._check_identity()
            yield session
            session.commit()

    @contextmanager
    def at_rest(self) -> Iterator[None]:
        """The file let go by everybody here, so that it may be exchanged; sessions that begin meanwhile wait.

        Raises LibraryError where those that are open do not end.
        """
        with self.gate.shut():
            self.close()
            try:
                yield
            finally:
                self._identity = identity_of(self.path)

    def fold(self) -> bool:
        """Brings the write-ahead log into the library file, where nobody is in the way; whether that was done."""
        with (
            self.gate.passing(),
            suppress(sqlite3.Error),
            closing(sqlite3.connect(existing(self.path), uri=True)) as folding,
        ):
            folding.execute("PRAGMA busy_timeout = 0")
            busy, *_ = folding.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
            return not busy
        return False

    def close(self) -> None:
        """Lets the file go; the last connection to close folds the write-ahead log into it."""
        self.remembered.forget()
        self.connections.dispose()

    def _check_identity(self) -> None:
        if self._identity is None:
            self._identity = identity_of(self.path)
        if self._identity is None or identity_of(self.path) != self._identity:
            raise LibraryGone(GONE.format(self.path))

    @contextmanager
    def _in_words(self) -> Iterator[None]:
        try:
            yield
        except DatabaseError as error:
            objection = library_error(error)
            if objection is None:
                raise
            self._note(objection)
            raise objection from error
        except LibraryGone as error:
            self._note(error)
            raise

    def _note(self, objection: LibraryError) -> None:
        if isinstance(objection, Damaged | LibraryGone):
            self.health.trouble(health.LIBRARY, objection.message, self.now())
        else:
            self.health.problem(objection.message, self.now())


class Remembered:
    """What was worked out from the whole library, kept until anybody changes it, in this process or another."""

    def __init__(self, path: Path, gate: Gate) -> None:
        self._path = path
        self._gate = gate
        self._lock = Lock()
        self._looking: sqlite3.Connection | None = None
        self._kept: dict[str, tuple[int, Any]] = {}

    def get(self, name: str, make: Callable[[], T]) -> T:
        """What is kept under that name; made and kept where there is nothing, or the library has changed since."""
        with self._gate.passing():
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
            try:
                if self._looking is None:
                    self._looking = sqlite3.connect(existing(self._path), uri=True, check_same_thread=False)
                version: int = self._looking.execute("PRAGMA data_version").fetchone()[0]
            except sqlite3.Error as error:
                raise library_error(error) or LibraryError("The library cannot be read.") from error
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
    """Connections to an SQLite file that is there, with our pragmas; one that writes takes the lock as it begins."""
    connections = create_engine(
        "sqlite://",
        creator=lambda: sqlite3.connect(existing(path), uri=True, check_same_thread=False),
        poolclass=QueuePool,
        pool_size=10,
        max_overflow=40,
    )
    event.listen(connections, "connect", _set_up)
    event.listen(connections, "begin", _begin)
    return connections


def existing(path: Path) -> str:
    """The address of a file that SQLite may not make anew: an empty one in the place of a lost one hides the loss."""
    return f"{path.absolute().as_uri()}?mode=rw"


def identity_of(path: Path) -> tuple[int, int] | None:
    """What tells a file from another one of its name; None where there is none."""
    with suppress(OSError):
        state = path.stat()
        return state.st_dev, state.st_ino
    return None


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
