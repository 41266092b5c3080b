"""The library as it is at one moment, to be read for as long as a slow reader takes, with nobody held up."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from secrets import token_hex
from shutil import rmtree

from webapp.storage.database import LIBRARY, Database
from webapp.storage.library_file import copy_library

FOLDER = "outgoing"


@contextmanager
def snapshot(database: Database) -> Iterator[Database]:
    """A copy in a folder of its own, which goes afterwards."""
    folder = database.folder / FOLDER / token_hex(8)
    try:
        with database.gate.passing():
            copy_library(database.path, folder / LIBRARY)
        copy = Database(folder, database.now)
        try:
            yield copy
        finally:
            copy.close()
    finally:
        rmtree(folder, ignore_errors=True)


def sweep(data: Path, before: float) -> None:
    """Removes what a killed download left."""
    for folder in (data / FOLDER).glob("*"):
        if folder.stat().st_mtime < before:
            rmtree(folder, ignore_errors=True)
