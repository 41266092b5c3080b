"""The backups that are kept: made by a button, by the day, or by cron, in one folder, and thinned by a rule."""

from __future__ import annotations

import os
import re
import sqlite3
import tempfile
from contextlib import suppress
from datetime import UTC, datetime
from functools import lru_cache
from pathlib import Path
from shutil import rmtree
from stat import S_ISDIR

from webapp.records import BackupFolder, KeptBackup
from webapp.storage import clock, library_file, snapshot
from webapp.storage.database import Database
from webapp.storage.errors import LibraryError, NotFound
from webapp.storage.private import make_folder
from webapp.storage.restore import TRIAL
from webapp.storage.tables import SettingRow
from webapp.storage.thinning import BACKUPS, kept
from webapp.storage.upgrade import COPIES
from webapp.storage.workshop import note_backup

OWN_FOLDER = "backups"
CHOSEN = "backup folder"
STAMP = "%Y-%m-%d-%H%M%S"  # in UTC
NAME = re.compile(r"ropewright-(\d{4}-\d\d-\d\d-\d{6})(?:-\d+)?\.sqlite")
UNSOUND = "unsound.sqlite"  # the last copy of a damaged library: it may hold what no backup has
UNFINISHED = re.compile(
    r"(ropewright-\d{4}-\d\d-\d\d-\d{6}|before-.+|unsound).*\.part(-journal|-wal|-shm)?"
    r"|(ropewright-|before-).+\.sqlite-(journal|wal|shm)"
)
ABANDONED_S = 3600  # nothing is still being written an hour after it last was
LONGEST_PATH = 1000


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


def folder_while_library_is_gone(database: Database) -> BackupFolder:
    """Our own folder where the library cannot be asked for the chosen one."""
    with suppress(LibraryError):
        return folder(database)
    return BackupFolder(database.folder / OWN_FOLDER, None, "")


def choose(database: Database, text: str) -> None:
    """Keeps backups in that folder from now on; an empty text chooses our own again. Raises LibraryError."""
    chosen = _read_path(text) if text else None
    if chosen:
        _check_folder(chosen, database.folder)
    with database.writing() as session:
        if chosen:
            session.merge(SettingRow(name=CHOSEN, value=str(chosen.resolve())))
        elif row := session.get(SettingRow, CHOSEN):
            session.delete(row)


def make(database: Database) -> Path:
    """A checked backup in the folder, after which the rule takes older ones away. Raises LibraryError."""
    into = folder(database).path
    make_folder(into)
    with database.one_backup:
        now = database.now()
        target = _free_name(into, f"ropewright-{now:{STAMP}}")
        library_file.write_backup(database.path, target, now, into / UNSOUND)
        note_backup(database, now)
        thin(database, into)
    return target


def make_daily(database: Database) -> Path | None:
    """A backup where there is no sound one of today yet."""
    today = database.now().date()
    into = folder(database).path
    if any(made.date() == today and is_sound(path) for path, made in _dated(into).items()):
        return None
    return make(database)


def sweep(database: Database) -> None:
    """Takes away what a backup or a restore left unfinished when it was killed; what may still be written to stays."""
    before = database.now().timestamp() - ABANDONED_S
    folders = {folder(database).path, database.folder / OWN_FOLDER, database.folder / COPIES}
    for path in [path for into in folders if into.is_dir() for path in into.iterdir()]:
        if UNFINISHED.fullmatch(path.name) and path.lstat().st_mtime < before:
            path.unlink(missing_ok=True)
    trial = database.folder / TRIAL
    if trial.is_dir() and trial.stat().st_mtime < before:
        rmtree(trial, ignore_errors=True)
    snapshot.sweep(database.folder, before)
    _sweep_downloads(Path(tempfile.gettempdir()), before)


def _sweep_downloads(temporary: Path, before: float) -> None:
    """Copies of libraries that earlier versions left in the temporary folder when a download was killed."""
    if os.name == "nt":  # there, the temporary folder is a person's own
        return
    for path in temporary.glob("ropewright-????????"):
        with suppress(OSError):
            state, inside = path.lstat(), [kept.name for kept in path.iterdir()]
            ours = S_ISDIR(state.st_mode) and state.st_uid == os.getuid() and state.st_mtime < before
            if ours and all(re.fullmatch(r"ropewright-[\d-]+\.(sqlite|part)", name) for name in inside):
                rmtree(path, ignore_errors=True)


def thin(database: Database, into: Path) -> None:
    """Takes away the backups of a folder that the rule does not keep; nothing else that lies there.

    Only sound ones count and only sound ones go. Nothing goes while the clock may be wrong.
    """
    if clock.jump(database) is not None:
        return
    dated = {path: made for path, made in _dated(into).items() if is_sound(path)}
    for path in dated.keys() - kept(dated, database.now(), BACKUPS):
        path.unlink(missing_ok=True)


def all_kept(database: Database) -> tuple[KeptBackup, ...]:
    """Backups and the libraries that were kept aside, the newest first."""
    folders = dict.fromkeys((folder_while_library_is_gone(database).path, database.folder / OWN_FOLDER))
    backups = [_kept_backup(path, made, aside=False) for into in folders for path, made in _dated(into).items()]
    aside = [path for path in (database.folder / COPIES).glob("*.sqlite") if path.is_file()]
    unsound = [path for path in (into / UNSOUND for into in folders) if path.is_file()]
    copies = [_kept_backup(path, _written(path), aside=True) for path in aside + unsound]
    return tuple(sorted(backups + copies, key=lambda backup: backup.made, reverse=True))


def last_sound(database: Database) -> KeptBackup | None:
    """The newest backup that is sound."""
    return next((backup for backup in all_kept(database) if backup.sound and not backup.aside), None)


def path_of(database: Database, name: str) -> Path:
    """The file of a backup in the list. Raises NotFound for any other name."""
    paths = {backup.path.name: backup.path for backup in all_kept(database)}
    if name not in paths:
        raise NotFound("backup of that name")
    return paths[name]


def is_sound(path: Path) -> bool:
    """Whether a backup is a sound library; looked into once for as long as the file does not change."""
    try:
        state = path.stat()
    except OSError:
        return False
    return _checked(path, state.st_ino, state.st_size, state.st_mtime_ns)


@lru_cache(1000)
def _checked(path: Path, inode: int, size: int, changed: int) -> bool:
    try:
        library_file.check(path)
    except LibraryError:
        return False
    return True


def _dated(into: Path) -> dict[Path, datetime]:
    """The backups of a folder by the moment in their names; a link that leads nowhere is none."""
    named = ((path, NAME.fullmatch(path.name)) for path in into.glob("ropewright-*.sqlite"))
    return {path: made for path, name in named if name and path.is_file() and (made := _read_stamp(name[1]))}


def _read_stamp(text: str) -> datetime | None:
    with suppress(ValueError):
        return datetime.strptime(text, STAMP).replace(tzinfo=UTC)
    return None


def _written(path: Path) -> datetime:
    return datetime.fromtimestamp(path.stat().st_mtime, UTC)


def _kept_backup(path: Path, made: datetime, aside: bool) -> KeptBackup:
    sound = is_sound(path)
    return KeptBackup(
        path=path, made=made, size=path.stat().st_size, patterns=_count_patterns(path), aside=aside, sound=sound
    )


def _count_patterns(path: Path) -> int | None:
    try:
        with library_file.opened(path) as connection:
            number: int = connection.execute("SELECT count(*) FROM pattern WHERE NOT binned").fetchone()[0]
            return number
    except sqlite3.Error:
        return None


def _free_name(into: Path, stem: str) -> Path:
    names = (f"{stem}{again}.sqlite" for again in ("", *(f"-{number}" for number in range(2, 10_000))))
    return next(into / name for name in names if not (into / name).exists())


def _read_path(text: str) -> Path:
    """Raises LibraryError for what is no path of a folder."""
    if len(text) > LONGEST_PATH or any(len(part.encode()) > 255 for part in Path(text).parts):
        raise LibraryError(f"“{text[:60]}…” is too long for the path of a folder.", "folder")
    try:
        path = Path(text).expanduser()
    except RuntimeError:
        raise LibraryError(f"“{text}” names a person whom this computer does not know.", "folder") from None
    if not path.is_absolute() or "\0" in text:
        raise LibraryError(
            f"“{text}” does not begin at the top of a disk; write the whole path of the folder.", "folder"
        )
    return path


def _check_folder(chosen: Path, data: Path) -> None:
    """Raises LibraryError unless backups can be written there, away from the library."""
    try:
        if not chosen.is_dir():
            raise LibraryError(
                f"There is no folder {chosen}; make it first, or plug in the disk that it is on.", "folder"
            )
        if chosen.resolve().is_relative_to(data.resolve()):
            raise LibraryError(
                "That folder lies inside the data folder, so it would be lost with the library; choose "
                "one elsewhere, at best on another disk.",
                "folder",
            )
        with tempfile.NamedTemporaryFile(prefix=".ropewright-", dir=chosen):
            pass
    except OSError as error:
        raise LibraryError(f"Nothing can be written to {chosen}: {error.strerror}.", "folder") from None
