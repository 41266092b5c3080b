"""Files that only their owner may read: the library has the names of buyers."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

FILE, FOLDER = 0o600, 0o700


def make_folder(folder: Path) -> None:
    """Makes the folder and those above it that are missing; the new ones are private."""
    if folder.is_dir():
        return
    make_folder(folder.parent)
    with suppress(FileExistsError):
        folder.mkdir(FOLDER)


def make_file(path: Path) -> None:
    """Makes an empty file, if there is none."""
    os.close(os.open(path, os.O_RDWR | os.O_CREAT, FILE))


def make_private(folder: Path) -> None:
    """Takes from everybody else what they may read in that folder, also in what was there before."""
    for into, folders, names in os.walk(folder):
        _restrict(Path(into), FOLDER)
        for name in names:
            _restrict(Path(into, name), FILE)
        folders[:] = [name for name in folders if not Path(into, name).is_symlink()]


def _restrict(path: Path, mode: int) -> None:
    with suppress(OSError):
        if not path.is_symlink() and path.stat().st_mode & 0o077:
            path.chmod(mode)
