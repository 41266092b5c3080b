"""The backups: those that are kept, what is inside one, and where they are kept."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from engine.units import fixed
from webapp.pages.views.frame import Frame
from webapp.records import BackupContents, BackupFolder, KeptBackup, PatternInBackup

MOST_LINES = 300
COUNTED = {
    "comes back": ("comes back", "come back"),
    "is changed": ("goes back to what it was", "go back to what they were"),
    "goes": ("goes", "go"),
    "stays": ("stays as it is", "stay as they are"),
}
STATE_WORDS = {
    "comes back": "comes back: it is not in the library now",
    "is changed": "goes back to what it was",
    "goes": "goes: it is not in this backup",
    "stays": "stays as it is",
}


@dataclass(frozen=True)
class BackupLine:
    """A backup in the list."""

    name: Annotated[str, "The name of its file."]
    made: Annotated[datetime, "When it was made."]
    size: Annotated[str, "How large the file is, in words."]
    patterns: Annotated[int | None, "How many patterns it holds; None where it cannot be read."]
    sound: Annotated[bool, "Whether it was checked and found whole."]


@dataclass(frozen=True)
class BackupsPage:
    """The backups at `/backups`."""

    frame: Frame
    backups: Annotated[tuple[BackupLine, ...], "The backups, the newest first."]
    aside: Annotated[tuple[BackupLine, ...], "The libraries kept aside before a restore or an update."]
    folder: Annotated[str, "The folder that is written to."]
    typed: Annotated[str, "The folder that was chosen, as typed; empty for our own."]
    missing: Annotated[str, "Why the chosen folder cannot be used just now; may be empty."]
    wrong: Annotated[str, "What is wrong with the folder that was sent; may be empty."]
    undo: Annotated[str, "The file that undoes the restore just made; may be empty."]
    clock_asks: Annotated[bool, "Whether the person must say that this computer's date is right."]
    last_sound: Annotated[BackupLine | None, "The newest backup that is sound."]


@dataclass(frozen=True)
class InsidePage:
    """What is inside a backup at `/backups/inside`."""

    frame: Frame
    name: Annotated[str, "The name of its file."]
    patterns: Annotated[int, "How many patterns it holds."]
    binned: Annotated[int, "How many stand in its bin."]
    newest: Annotated[datetime | None, "When the newest of them was changed."]
    outcomes: Annotated[tuple[tuple[str, int], ...], "How many patterns come back, change, go and stay, in words."]
    lines: Annotated[tuple[tuple[str, str], ...], "Title of a pattern, and what becomes of it."]
    more: Annotated[int, "How many patterns are not listed."]


def backups_page(
    frame: Frame,
    kept: Iterable[KeptBackup],
    folder: BackupFolder,
    typed: str | None = None,
    wrong: str = "",
    undo: str = "",
    clock_asks: bool = False,
) -> BackupsPage:
    """The list; `typed` and `wrong` when a folder was sent that cannot be used."""
    listed = tuple(kept)
    chosen = str(folder.chosen) if folder.chosen else ""
    return BackupsPage(
        frame=frame,
        backups=tuple(_line(backup) for backup in listed if not backup.aside),
        aside=tuple(_line(backup) for backup in listed if backup.aside),
        folder=str(folder.path),
        typed=chosen if typed is None else typed,
        missing=folder.wrong,
        wrong=wrong,
        undo=undo,
        clock_asks=clock_asks,
        last_sound=next((_line(backup) for backup in listed if backup.sound and not backup.aside), None),
    )


def inside_page(frame: Frame, inside: BackupContents) -> InsidePage:
    """What a backup holds beside the present library."""
    counts = Counter(line.state for line in inside.lines)
    outcomes = tuple((words[counts[state] > 1], counts[state]) for state, words in COUNTED.items() if counts[state])
    listed = inside.lines[:MOST_LINES]
    return InsidePage(
        frame=frame,
        name=inside.path.name,
        patterns=inside.patterns,
        binned=inside.binned,
        newest=inside.newest,
        outcomes=outcomes,
        lines=tuple(map(_described, listed)),
        more=len(inside.lines) - len(listed),
    )


def size_in_words(size: int) -> str:
    """Bytes for people: "120 kB", "3.4 MB", "81.4 GB"."""
    if size >= 1_000_000_000:
        return f"{fixed(size / 1e9, 1)} GB"
    return f"{fixed(size / 1e6, 1)} MB" if size >= 1_000_000 else f"{fixed(size / 1e3, 0)} kB"


def _line(kept: KeptBackup) -> BackupLine:
    return BackupLine(
        name=kept.path.name, made=kept.made, size=size_in_words(kept.size), patterns=kept.patterns, sound=kept.sound
    )


def _described(line: PatternInBackup) -> tuple[str, str]:
    return line.title, STATE_WORDS[line.state]
