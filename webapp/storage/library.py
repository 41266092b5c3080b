"""Opens a data folder: the folder made, the schema brought up to date, examples put in at the first start."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import ExitStack
from pathlib import Path

from sqlalchemy.exc import DatabaseError

from engine.pattern.pattern import Pattern
from webapp.storage.database import LIBRARY, Database
from webapp.storage.errors import LibraryError
from webapp.storage.patterns import create
from webapp.storage.upgrade import upgrade


def open_library(folder: Path, examples: Iterable[Pattern] = ()) -> Database:
    """The library of that folder; a new one begins with the examples. Raises LibraryError in a sentence."""
    new = not (folder / LIBRARY).exists()
    try:
        folder.mkdir(parents=True, exist_ok=True)
        database = _upgraded(folder)
    except (OSError, DatabaseError) as error:
        reason = getattr(error, "orig", None) or getattr(error, "strerror", None) or error
        raise LibraryError(f"The library in {folder} cannot be opened: {reason}.") from None
    for pattern in examples if new else ():
        create(database, pattern, example=True)
    return database


def _upgraded(folder: Path) -> Database:
    """The database with the newest schema; closed again where it cannot have it."""
    with ExitStack() as failing:
        database = Database(folder)
        failing.callback(database.close)
        upgrade(database)
        failing.pop_all()
    return database
