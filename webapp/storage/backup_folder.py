"""The backups that are kept: made by a button, by the day, or by cron, in one folder, and thinned by a rule."""

from __future__ import annotations

import re
import sqlite3
import tempfile
from datetime import UTC, datetime
from pathlib import Path
from shutil import rmtree

from webapp.records import BackupFolder, KeptBackup
from webapp.storage import library_file
from webapp.storage.database import Database
from webapp.storage.errors import LibraryError, NotFound
from webapp.storage.restore import TRIAL
from webapp.storage.tables import SettingRow
from webapp.storage.thinning import BACKUPS, kept
from webapp.storage.upgrade import COPIES
from webapp.storage.workshop import note_backup

OWN_FOLDER = "backups"
CHOSEN = "backup folder"
STAMP = "%Y-%m-%d-%H%M%S"  # in UTC
NAME = re.compile(r"ropewright-(\d{4}-\d\d-\d\d-\d{6})\.sqlite")
UNFINISHED = re.compile(r"(ropewright-\d{4}-\d\d-\d\d-\d{6}|before-.+)\.part(-journal)?")
ABANDONED_S = 3600  # nothing is still being written an hour after it last was


def folder(database: Database) -> BackupFolder:
    """Where backups are kept: in the folder that was chosen, or in our own where that cannot be reached just now."""
    own = database.folder / OWN_FOLDER
    with database.reading() as session:
        row = session.get(SettingRow, CHOSEN)
    if row is None:
        return BackupFolder(own, None, "")
    try:
        _check_folder(Path(row.value), database.folder)
    except LibraryError as error:
        return BackupFolder(own, Path(row.value), error.message)
    return BackupFolder(Path(row.value), Path(row.value), "")


def choose(database: Database, text: str) -> None:
    """Keeps backups in that folder from now on; an empty text chooses our own again. Raises LibraryError."""
    chosen = Path(text).expanduser()
    if text:
        if not chosen.is_absolute():
            raise LibraryError(
                f"“{text}” does not begin at the top of a disk; write the whole path of the folder.", "folder"
            )
        _check_folder(chosen, database.folder)
    with database.writing() as session:
        if text:
            session.merge(SettingRow(name=CHOSEN, value=str(chosen.resolve())))
        elif row := session.get(SettingRow, CHOSEN):
            session.delete(row)


def make(database: Database) -> Path:
    """A checked backup in the folder, after which the rule takes older ones away. Raises LibraryError."""
    into = folder(database).path
    into.mkdir(parents=True, exist_ok=True)
    target = into / f"ropewright-{database.now():{STAMP}}.sqlite"
    note_backup(database)  # before it is written, so that a library put back knows of it
    library_file.write_backup(database.path, target)
    thin(database, into)
    return target


def make_daily(database: Database) -> Path | None:
    """A backup where there is none of today yet."""
    today = database.now().date()
    if any(made.date() == today for made in _dated(folder(database).path).values()):
        return None
    return make(database)


def sweep(database: Database) -> None:
    """Takes away what a backup or a restore left unfinished when it was killed; what may still be written to stays."""
    before = database.now().timestamp() - ABANDONED_S
    folders = {folder(database).path, database.folder / OWN_FOLDER, database.folder / COPIES}
    for path in [path for into in folders if into.is_dir() for path in into.iterdir()]:
        if UNFINISHED.fullmatch(path.name) and path.stat().st_mtime < before:
            path.unlink(missing_ok=True)
    trial = database.folder / TRIAL
    if trial.is_dir() and trial.stat().st_mtime < before:
        rmtree(trial, ignore_errors=True)


def thin(database: Database, into: Path) -> None:
    """Takes away the backups of a folder that the rule does not keep; nothing else that lies there."""
    dated = _dated(into)
    for path in dated.keys() - kept(dated, database.now(), BACKUPS):
        path.unlink(missing_ok=True)


def all_kept(database: Database) -> tuple[KeptBackup, ...]:
    """Backups and the libraries that were kept aside, the newest first."""
    folders = dict.fromkeys((folder(database).path, database.folder / OWN_FOLDER))
    backups = [_kept_backup(path, made, aside=False) for into in folders for path, made in _dated(into).items()]
    copies = [
        _kept_backup(path, datetime.fromtimestamp(path.stat().st_mtime, UTC), aside=True)
        for path in (database.folder / COPIES).glob("*.sqlite")
    ]
    return tuple(sorted(backups + copies, key=lambda backup: backup.made, reverse=True))


def path_of(database: Database, name: str) -> Path:
    """The file of a backup in the list. Raises NotFound for any other name."""
    paths = {backup.path.name: backup.path for backup in all_kept(database)}
    if name not in paths:
        raise NotFound("backup of that name")
    return paths[name]


def _dated(into: Path) -> dict[Path, datetime]:
    named = ((path, NAME.fullmatch(path.name)) for path in into.glob("ropewright-*.sqlite"))
    return {path: datetime.strptime(name[1], STAMP).replace(tzinfo=UTC) for path, name in named if name}


def _kept_backup(path: Path, made: datetime, aside: bool) -> KeptBackup:
    try:
        with library_file.opened(path) as connection:
            (patterns,) = connection.execute("SELECT count(*) FROM pattern WHERE NOT binned").fetchone()
    except sqlite3.Error:
        patterns = None
    return KeptBackup(path=path, made=made, size=path.stat().st_size, patterns=patterns, aside=aside)


def _check_folder(chosen: Path, data: Path) -> None:
    """Raises LibraryError unless backups can be written there, away from the library."""
    if not chosen.is_dir():
        raise LibraryError(f"There is no folder {chosen}; make it first, or plug in the disk that it is on.", "folder")
    if chosen.resolve().is_relative_to(data.resolve()):
        raise LibraryError(
            "That folder lies inside the data folder, so it would be lost with the library; choose "
            "one elsewhere, at best on another disk.",
            "folder",
        )
    try:
        with tempfile.NamedTemporaryFile(prefix=".ropewright-", dir=chosen):
            pass
    except OSError as error:
        raise LibraryError(f"Nothing can be written to {chosen}: {error.strerror}.", "folder") from None
