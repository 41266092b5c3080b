"""Copies of the library to keep elsewhere, and back again: each is checked before it counts."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import datetime
from pathlib import Path

from webapp.storage.database import LIBRARY, Database
from webapp.storage.errors import LibraryError
from webapp.storage.upgrade import COPIES, copy_library, upgrade

TABLES = {"pattern", "revision", "working", "kind", "swatch", "setting"}


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
        with closing(sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True)) as connection:
            sound = connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
            names = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
    except sqlite3.Error:
        raise LibraryError(f"{path} is not a library of this program.") from None
    if not sound:
        raise LibraryError(f"The library in {path} is damaged.")
    if not names >= TABLES:
        raise LibraryError(f"{path} is not a library of this program.")


def restore(folder: Path, source: Path, now: datetime) -> Path | None:
    """Puts a backup in the place of the library, which nobody may have open; gives where the present one is kept.

    Raises LibraryError and changes nothing when the backup is not a sound library, or one of a newer program.
    """
    check(source)
    folder.mkdir(parents=True, exist_ok=True)
    aside, library = None, folder / LIBRARY
    if library.exists():
        aside = _free_name(folder / COPIES, f"before-restore-{now:%Y-%m-%d-%H%M%S}")
        copy_library(library, aside)
    _check_age(source, folder)
    for part in ("-wal", "-shm"):
        library.with_name(LIBRARY + part).unlink(missing_ok=True)
    copy_library(source, library)
    return aside


def _free_name(folder: Path, stem: str) -> Path:
    """A copy that is kept is never written over: it may be the very one that is being put back."""
    names = (f"{stem}{again}.sqlite" for again in ("", *(f"-{number}" for number in range(2, 1000))))
    return next(folder / name for name in names if not (folder / name).exists())


def _check_age(source: Path, folder: Path) -> None:
    """Tries the upgrade on a copy."""
    trial = folder / "trial"
    copy_library(source, trial / LIBRARY)
    database = Database(trial)
    try:
        upgrade(database)
    finally:
        database.close()
        for path in sorted(trial.rglob("*"), reverse=True):
            path.unlink() if path.is_file() else path.rmdir()
        trial.rmdir()
