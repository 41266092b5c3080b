"""Copies of the library to keep elsewhere, and back again: each is checked before it counts."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from datetime import datetime
from pathlib import Path
from shutil import rmtree

from webapp.storage.database import LIBRARY, Database
from webapp.storage.errors import LibraryError
from webapp.storage.upgrade import COPIES, copy_library, upgrade

TABLES = {"pattern", "revision", "working", "kind", "swatch", "setting"}
TRIAL = "trial"


def write(library: Path, target: Path) -> None:
    """A checked copy of the library at `target`. Raises LibraryError when it cannot be written or is not sound."""
    if not target.parent.is_dir():
        raise LibraryError(f"The folder {target.parent} does not exist; make it first or name another.")
    try:
        copy_library(library, target)
    except (OSError, sqlite3.Error) as error:
        raise LibraryError(f"The backup cannot be written to {target}: {error}.") from None
    check(target)


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
    """A library file for looking only; one that is not in use has nothing put beside it."""
    how = "mode=ro" if in_use else "mode=ro&immutable=1"
    with closing(sqlite3.connect(f"{path.resolve().as_uri()}?{how}", uri=True)) as connection:
        yield connection


def restore(folder: Path, source: Path, now: datetime) -> Path | None:
    """Puts a backup in the place of the library, which nobody may have open; gives where the present one is kept.

    Raises LibraryError and changes nothing when the backup is not a sound library, or one of a newer program. Killed at
    any moment it leaves the library as it was or as the backup is: the backup is brought up to date beside it, and
    takes its place in one step.
    """
    check(source)
    folder.mkdir(parents=True, exist_ok=True)
    aside, library = None, folder / LIBRARY
    if library.exists():
        aside = _free_name(folder / COPIES, f"before-restore-{now:%Y-%m-%d-%H%M%S}")
        copy_library(library, aside)
    with _brought_up_to_date(source, folder) as fresh:
        if library.exists():
            _settle(library)
        fresh.replace(library)
    return aside


@contextmanager
def _brought_up_to_date(source: Path, folder: Path) -> Iterator[Path]:
    """A copy of the backup in the newest schema, in a folder that is removed afterwards."""
    trial = folder / TRIAL
    rmtree(trial, ignore_errors=True)  # of a restore that was killed
    try:
        copy_library(source, trial / LIBRARY)
        database = Database(trial)
        try:
            upgrade(database)
        finally:
            database.close()
        _settle(trial / LIBRARY)
        yield trial / LIBRARY
    finally:
        rmtree(trial, ignore_errors=True)


def _settle(path: Path) -> None:
    """Brings everything into the one file: what stands beside it could be taken for part of another one."""
    with closing(sqlite3.connect(path)) as connection:
        busy, *_ = connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    if busy:
        raise LibraryError("Another program has the library open; close it and try again.")
    for part in ("-wal", "-shm"):
        path.with_name(path.name + part).unlink(missing_ok=True)


def _free_name(folder: Path, stem: str) -> Path:
    """A copy that is kept is never written over: it may be the very one that is being put back."""
    names = (f"{stem}{again}.sqlite" for again in ("", *(f"-{number}" for number in range(2, 1000))))
    return next(folder / name for name in names if not (folder / name).exists())
