"""How the library is: whether its file is sound, and how much room everything takes."""

from __future__ import annotations

from pathlib import Path
from shutil import disk_usage

from webapp.records import FolderSizes
from webapp.storage import health, library_file
from webapp.storage.backup_folder import OWN_FOLDER
from webapp.storage.database import Database
from webapp.storage.errors import LibraryBusy, LibraryError
from webapp.storage.upgrade import COPIES


def check_library(database: Database) -> bool:
    """Reads the library file from end to end; what is wrong with it stands on every page from then on."""
    try:
        library_file.check(database.path, in_use=True)
    except LibraryBusy:
        return not database.health.has(health.LIBRARY)
    except LibraryError as error:
        database.health.trouble(health.LIBRARY, error.message, database.now())
        return False
    database.health.clear(health.LIBRARY)
    return True


def folder_sizes(database: Database) -> FolderSizes:
    """Bytes of the library, of what is kept beside it, and of the room that is left on its disk."""
    return FolderSizes(
        library=sum(_size(path) for path in database.folder.glob(f"{database.path.name}*")),
        backups=_sum(database.folder / OWN_FOLDER),
        aside=_sum(database.folder / COPIES),
        pictures=_sum(database.folder / "pictures"),
        left=disk_usage(database.folder).free,
    )


def _sum(folder: Path) -> int:
    return sum(map(_size, folder.glob("*")))


def _size(path: Path) -> int:
    try:
        return path.stat().st_size
    except OSError:
        return 0
