"""Backups, where they are kept, and what is inside one."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import NamedTuple


@dataclass(frozen=True)
class BackupFolder:
    """Where backups are kept, which folder was chosen, and why it cannot be used just now, if it cannot."""

    path: Path
    chosen: Path | None
    wrong: str


class FolderSizes(NamedTuple):
    """Bytes of the library, of what is kept beside it, and of the room that is left on its disk."""

    library: int
    backups: int
    aside: int
    pictures: int
    left: int


@dataclass(frozen=True)
class KeptBackup:
    """A backup, or a library kept aside: `size` in bytes, `patterns` None where the file cannot be read.

    `sound` says whether it was found to be a whole library.
    """

    path: Path
    made: datetime
    size: int
    patterns: int | None
    aside: bool
    sound: bool = True


class PatternInBackup(NamedTuple):
    """A pattern of a backup or of the present library, and what a restore does to it."""

    title: str
    state: str


@dataclass(frozen=True)
class BackupContents:
    """What a backup holds, and what restoring it would do to each pattern."""

    path: Path
    patterns: int
    binned: int
    newest: datetime | None
    lines: tuple[PatternInBackup, ...]
