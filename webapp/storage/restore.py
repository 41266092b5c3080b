"""Puts a backup in the place of the library, which is kept aside, so that a restore can be undone."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path
from shutil import rmtree

from webapp.storage.database import LIBRARY, Database
from webapp.storage.library_file import check, copy_library, settle
from webapp.storage.upgrade import COPIES, upgrade

TRIAL = "trial"


def put_back(database: Database, path: Path) -> Path:
    """Puts a backup in the place of the library while it is open; gives where the present one is kept aside.

    Raises LibraryError and changes nothing where the backup is not sound or the library is being written to.
    """
    with database.at_rest():
        aside = restore(database.folder, path, database.now())
    assert aside is not None
    return aside


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
            settle(library)
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
        settle(trial / LIBRARY)
        yield trial / LIBRARY
    finally:
        rmtree(trial, ignore_errors=True)


def _free_name(folder: Path, stem: str) -> Path:
    """A copy that is kept is never written over: it may be the very one that is being put back."""
    names = (f"{stem}{again}.sqlite" for again in ("", *(f"-{number}" for number in range(2, 1000))))
    return next(folder / name for name in names if not (folder / name).exists())
