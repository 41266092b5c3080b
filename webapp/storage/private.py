"""Files that only their owner may read: the library has the names of buyers."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from stat import S_IRWXU

FILE, FOLDER = 0o600, 0o700
OTHERS = 0o077
OUR_FILES = ("library.sqlite*", "ropewright.log*", "running.*", "private.key")
OUR_FOLDERS = ("backups", "copies", "incoming", "outgoing", "pictures", "trial")


def make_folder(folder: Path) -> None:
    """Makes the folder and those above it that are missing; the new ones are private."""
    if folder.is_dir():
        return
    make_folder(folder.parent)
    with suppress(FileExistsError):
        folder.mkdir(FOLDER)


def make_file(path: Path) -> None:
    """Makes an empty file, if there is none."""
    path.touch(FILE)


def make_private(data: Path) -> None:
    """Takes from everybody else what they may read of ours in a data folder; what else lies there stays as it is."""
    for path in (data, *_ours(data)):
        with suppress(OSError):
            mode = path.lstat().st_mode
            if mode & OTHERS and not path.is_symlink():
                path.chmod(mode & S_IRWXU)


def _ours(data: Path) -> Iterator[Path]:
    for pattern in OUR_FILES:
        yield from data.glob(pattern)
    for name in OUR_FOLDERS:
        yield data / name
        yield from (data / name).glob("*")
