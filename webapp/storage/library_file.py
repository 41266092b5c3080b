"""A library file by itself: copied while it is in use, checked, opened for reading only."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from datetime import datetime
from pathlib import Path
from secrets import token_hex

from webapp.storage.errors import Damaged, LibraryBusy, LibraryError, library_error
from webapp.storage.private import make_file, make_folder

TABLES = {"pattern", "revision", "working", "kind", "swatch", "setting"}
BESIDE = ("-wal", "-shm", "-journal")  # what SQLite puts beside a file
BACKUP_NOTE = "last backup"


class NotSound(Damaged):
    """A copy that is damaged; it stays where it was written, as `copy`."""

    def __init__(self, message: str, copy: Path) -> None:
        super().__init__(message)
        self.copy = copy


def write_backup(library: Path, target: Path, made: datetime | None = None, unsound: Path | None = None) -> None:
    """A copy of the library at `target`, which is replaced only when the copy is checked; `made` is noted in it.

    Raises LibraryError when it cannot be written, and NotSound when the library is damaged: then the copy goes, or
    becomes the file `unsound`.
    """
    if not target.parent.is_dir():
        raise LibraryError(f"The folder {target.parent} does not exist; make it first or name another.")
    try:
        with _unfinished(target) as part:
            _copy_pages(library, part)
            try:
                check(part)
            except Damaged:
                if unsound is not None:
                    _put(part, unsound)
                raise NotSound(
                    f"The library {library} is damaged, so no backup was made of it; earlier ones stay as they are.",
                    unsound or part,
                ) from None
            if made is not None:
                _note(part, made)
            _put(part, target)
    except (OSError, sqlite3.Error) as error:
        objection = library_error(error)
        reason = objection.message if objection else f"{error}."
        raise LibraryError(f"The backup cannot be written to {target}: {reason}") from None


def copy_library(path: Path, target: Path) -> None:
    """A consistent copy of the library, also while it is in use; it appears whole or not at all."""
    make_folder(target.parent)
    with _unfinished(target) as part:
        _copy_pages(path, part)
        _put(part, target)


def check(path: Path, in_use: bool = False) -> None:
    """Raises Damaged unless the file is a sound library, LibraryError where there is none."""
    if not path.is_file():
        raise LibraryError(f"There is no file {path}.")
    try:
        with opened(path, in_use) as connection:
            sound = connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
            whole = connection.execute("PRAGMA foreign_key_check").fetchone() is None
            names = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
    except sqlite3.Error as error:
        if isinstance(library_error(error), LibraryBusy):
            raise LibraryBusy(f"{path} is in use by another program.") from None
        raise Damaged(f"{path} is not a library of this program.") from None
    if not (sound and whole):
        raise Damaged(f"The library in {path} is damaged.")
    if not names >= TABLES:
        raise Damaged(f"{path} is not a library of this program.")


@contextmanager
def opened(path: Path, in_use: bool = False) -> Iterator[sqlite3.Connection]:
    """A library file for reading only; one that is not in use has nothing put beside it."""
    in_use = in_use or path.with_name(f"{path.name}-wal").exists()
    how = "mode=ro" if in_use else "mode=ro&immutable=1"
    with closing(sqlite3.connect(f"{path.resolve().as_uri()}?{how}", uri=True)) as connection:
        yield connection


def settle(path: Path) -> None:
    """Brings everything into the one file: what stands beside it could be taken for part of another one."""
    with closing(sqlite3.connect(path)) as connection:
        busy, *_ = connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    if busy:
        raise LibraryBusy("Another program has the library open; close it and try again.")
    remove_beside(path)


def remove_beside(path: Path) -> None:
    """Removes what SQLite put beside a file that nobody has open."""
    for part in BESIDE:
        path.with_name(path.name + part).unlink(missing_ok=True)


@contextmanager
def _unfinished(target: Path) -> Iterator[Path]:
    """An empty file of its own name in the same folder, gone at the end unless it was put in a place."""
    part = target.with_name(f"{target.name}.{token_hex(4)}.part")
    make_file(part)
    try:
        yield part
    finally:
        part.unlink(missing_ok=True)
        remove_beside(part)


def _copy_pages(path: Path, copy: Path) -> None:
    """The copy is one file, also for a program that opens it later."""
    with opened(path) as source, closing(sqlite3.connect(copy)) as target:
        source.backup(target)
        with suppress(sqlite3.DatabaseError):  # a damaged one is found out by its check
            target.execute("PRAGMA journal_mode = DELETE")


def _note(copy: Path, made: datetime) -> None:
    """So that a library that is put back knows of the backup it came from."""
    with closing(sqlite3.connect(copy)) as connection, connection:
        connection.execute(
            "INSERT OR REPLACE INTO setting (name, value) VALUES (?, ?)", (BACKUP_NOTE, made.isoformat())
        )


def _put(part: Path, target: Path) -> None:
    """In one step, and on the disk before anybody is told."""
    part.replace(target)
    with suppress(OSError):  # not every system lets a folder be opened
        folder = os.open(target.parent, os.O_RDONLY)
        try:
            os.fsync(folder)
        finally:
            os.close(folder)
