"""Opens a data folder: the folder made, the schema brought up to date, examples put in at the first start."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import ExitStack
from pathlib import Path

from sqlalchemy.exc import DatabaseError
from sqlmodel import Session

from engine.pattern.pattern import Pattern
from webapp.storage import backup_folder
from webapp.storage.database import LIBRARY, Database
from webapp.storage.errors import LibraryError, NoLibrary
from webapp.storage.patterns import put
from webapp.storage.private import make_file, make_folder, make_private
from webapp.storage.upgrade import COPIES, upgrade


def open_library(folder: Path, examples: Iterable[Pattern] = (), anew: bool = False) -> Database:
    """The library of that folder; a new one begins with the examples.

    Raises LibraryError in a sentence, and NoLibrary where there are backups but no library, unless one is to be made
    `anew`.
    """
    library = folder / LIBRARY
    try:
        if not library.exists() or library.stat().st_size == 0:
            if not anew:
                _check_no_backups(folder)
            make_folder(folder)
            make_file(library)
        make_private(folder)
        return _upgraded(folder, tuple(examples))
    except (OSError, DatabaseError) as error:
        reason = getattr(error, "orig", None) or getattr(error, "strerror", None) or error
        way_back = _way_back(folder) if isinstance(error, DatabaseError) else ""
        raise LibraryError(f"The library in {folder} cannot be opened: {reason}.{way_back}") from None


def newest_backup(folder: Path) -> Path | None:
    """The newest sound library among the backups and copies of a data folder."""
    kept = [*(folder / backup_folder.OWN_FOLDER).glob("*.sqlite"), *(folder / COPIES).glob("*.sqlite")]
    sound = [path for path in kept if backup_folder.is_sound(path)]
    return max(sound, key=lambda path: path.stat().st_mtime, default=None)


def _way_back(folder: Path) -> str:
    """For a library that is damaged: how to go on from the newest sound backup, where there is one."""
    newest = newest_backup(folder)
    return f" Put the newest sound backup in its place with “restore {newest} --data {folder}”." if newest else ""


def _check_no_backups(folder: Path) -> None:
    newest = newest_backup(folder)
    if newest is not None:
        raise NoLibrary(
            f"There is no library in {folder}, or it is empty, but there are backups; the newest is {newest}. Put it "
            f"back with “restore {newest} --data {folder}”, or begin an empty library with “serve --new”."
        )


def _upgraded(folder: Path, examples: tuple[Pattern, ...]) -> Database:
    """The database with the newest schema; closed again where it cannot have it.

    A new one gets schema and examples in one transaction, so that a start that was killed is made good by the next.
    """
    with ExitStack() as failing:
        database = Database(folder)
        failing.callback(database.close)

        def put_examples(session: Session) -> None:
            for pattern in examples:
                put(session, pattern, database.now(), example=True)

        upgrade(database, put_examples)
        failing.pop_all()
    return database
