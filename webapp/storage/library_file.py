"""A library file by itself: copied while it is in use, checked, opened for reading only."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from webapp.storage.errors import LibraryError

TABLES = {"pattern", "revision", "working", "kind", "swatch", "setting"}


def write_backup(library: Path, target: Path) -> None:
    """A checked copy of the library at `target`. Raises LibraryError when it cannot be written or is not sound."""
    if not target.parent.is_dir():
        raise LibraryError(f"The folder {target.parent} does not exist; make it first or name another.")
    try:
        copy_library(library, target)
    except (OSError, sqlite3.Error) as error:
        raise LibraryError(f"The backup cannot be written to {target}: {error}.") from None
    check(target)


def copy_library(path: Path, target: Path) -> None:
    """A consistent copy of the library, also while it is in use; it appears whole or not at all."""
    target.parent.mkdir(parents=True, exist_ok=True)
    unfinished = target.with_suffix(".part")
    unfinished.unlink(missing_ok=True)
    with closing(sqlite3.connect(path)) as source, closing(sqlite3.connect(unfinished)) as copy:
        source.backup(copy)
    unfinished.replace(target)


def check(path: Path) -> None:
    """Raises LibraryError unless the file is a sound library."""
    if not path.is_file():
        raise LibraryError(f"There is no file {path}.")
    try:
        with opened(path) as connection:
            sound = connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
            names = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
    except sqlite3.Error:
        raise LibraryError(f"{path} is not a library of this program.") from None
    if not sound:
        raise LibraryError(f"The library in {path} is damaged.")
    if not names >= TABLES:
        raise LibraryError(f"{path} is not a library of this program.")


@contextmanager
def opened(path: Path, in_use: bool = False) -> Iterator[sqlite3.Connection]:
    """A library file for reading only; one that is not in use has nothing put beside it."""
    how = "mode=ro" if in_use else "mode=ro&immutable=1"
    with closing(sqlite3.connect(f"{path.resolve().as_uri()}?{how}", uri=True)) as connection:
        yield connection


def settle(path: Path) -> None:
    """Brings everything into the one file: what stands beside it could be taken for part of another one."""
    with closing(sqlite3.connect(path)) as connection:
        busy, *_ = connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    if busy:
        raise LibraryError("Another program has the library open; close it and try again.")
    for part in ("-wal", "-shm"):
        path.with_name(path.name + part).unlink(missing_ok=True)
