"""Puts a backup in the place of the library, which is kept aside, so that a restore can be undone."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from datetime import UTC, datetime
from pathlib import Path
from shutil import copyfile, rmtree

from webapp.storage import health
from webapp.storage.backup_contents import standing
from webapp.storage.content_check import check_contents
from webapp.storage.database import LIBRARY, Database
from webapp.storage.errors import Damaged, LibraryBusy
from webapp.storage.library_file import check, copy_library, opened, remove_beside, settle
from webapp.storage.numbers import UNREAD, Numbers, highest_in, raise_numbers, readable_in
from webapp.storage.private import OUR_FOLDERS, make_folder
from webapp.storage.upgrade import COPIES, upgrade

TRIAL = "trial"
DATE = "%Y-%m-%d %H:%M:%S.%f"  # as dates stand in the library


def put_back(database: Database, path: Path) -> Path | None:
    """Puts a backup in the place of the library while it is open; gives where the present one is kept aside, if any.

    Raises LibraryError and changes nothing where the backup is not sound or the library is being written to.
    """
    with database.at_rest():
        aside = restore(database.folder, path, database.now(), pages_open=True)
    database.health.clear(health.LIBRARY)
    return aside


def restore(folder: Path, source: Path, now: datetime, pages_open: bool = False) -> Path | None:
    """Puts a backup in the place of the library, which nobody may have open; gives where the present one is kept.

    Raises LibraryError and changes nothing when the backup is not a sound library, or one of a newer program. Killed at
    any moment it leaves the library as it was or as the backup is: the backup is brought up to date beside it, and
    takes its place in one step. Numbers of revisions never go back, so no page that was open before can save over it;
    where the present library is damaged or gone, they go far beyond what can be read. A folder that had no
    library handed out none, unless there are `pages_open`.
    """
    check(source)
    check_contents(source)
    known = pages_open or any((folder / name).exists() for name in (LIBRARY, *OUR_FOLDERS))
    make_folder(folder)
    library = folder / LIBRARY
    with _brought_up_to_date(source, folder) as fresh:
        if not library.exists() or library.stat().st_size == 0:
            if known:
                _raise_beyond(fresh, None, now)
            _exchange(fresh, library)
            return None
        aside = _free_name(folder / COPIES, f"before-restore-{now:%Y-%m-%d-%H%M%S}")
        with _gone_if_it_fails(aside):
            if _is_sound(library):
                _write_into(fresh, library, aside, now)
            else:
                make_folder(aside.parent)
                copyfile(library, aside)
                _raise_beyond(fresh, aside, now)
                _exchange(fresh, library)
    return aside


def _write_into(fresh: Path, library: Path, aside: Path, now: datetime) -> None:
    """Overwrites every page in one transaction of SQLite's, so that whoever else has the library open stays sound.

    Raises LibraryBusy where another process writes after the present library was copied aside: that would be lost.
    """
    with opened(library, in_use=True) as looking, closing(sqlite3.connect(library)) as target:
        version = looking.execute("PRAGMA data_version").fetchone()
        copy_library(library, aside)
        _raise_numbers(fresh, aside, now)

        def compare(status: int, remaining: int, total: int) -> None:
            # once pages are written nobody else can write before the last is
            if remaining and looking.execute("PRAGMA data_version").fetchone() != version:
                raise LibraryBusy("Another program wrote to the library meanwhile; nothing was changed. Try again.")

        with opened(fresh) as source:
            try:
                source.backup(target, pages=16, progress=compare)
            except sqlite3.OperationalError:
                raise LibraryBusy("Another program has the library open; close it and try again.") from None
        target.execute("PRAGMA wal_checkpoint(TRUNCATE)")


def _exchange(fresh: Path, library: Path) -> None:
    """For a library that is no more, or damaged."""
    remove_beside(library)
    fresh.replace(library)


def _is_sound(library: Path) -> bool:
    try:
        check(library, in_use=True)
    except Damaged:
        return False
    return True


@contextmanager
def _gone_if_it_fails(aside: Path) -> Iterator[None]:
    """A restore that fails leaves no copy behind."""
    try:
        yield
    except BaseException:
        aside.unlink(missing_ok=True)
        raise


def _raise_numbers(fresh: Path, present: Path, now: datetime) -> None:
    """Patterns that are in both as they stand keep their numbers."""
    here, there = standing(present), standing(fresh)
    same = frozenset(number for (number, made), state in there.items() if here.get((number, made)) == state)
    with opened(present) as connection:
        before = highest_in(connection)
    _raise_in(fresh, before, same, now)


def _raise_beyond(fresh: Path, damaged: Path | None, now: datetime) -> None:
    """Where the numbers that were handed out cannot all be read."""
    with opened(fresh) as connection:
        before = highest_in(connection)
    if damaged is not None:
        with suppress(sqlite3.DatabaseError), opened(damaged) as connection:
            before = before.joined(readable_in(connection))
    _raise_in(fresh, before.beyond(UNREAD), frozenset(), now)


def _raise_in(fresh: Path, before: Numbers, same: frozenset[int], now: datetime) -> None:
    with closing(sqlite3.connect(fresh)) as connection, connection:
        raise_numbers(connection, before, same, f"{now.astimezone(UTC):{DATE}}")
    settle(fresh)


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
        settle(trial / LIBRARY)
        yield trial / LIBRARY
    finally:
        rmtree(trial, ignore_errors=True)


def _free_name(folder: Path, stem: str) -> Path:
    """A copy that is kept is never written over: it may be the very one that is being put back."""
    names = (f"{stem}{again}.sqlite" for again in ("", *(f"-{number}" for number in range(2, 1000))))
    return next(folder / name for name in names if not (folder / name).exists())
