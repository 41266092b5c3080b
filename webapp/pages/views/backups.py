"""The backups: those that are kept, what is inside one, and where they are kept."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from engine.units import fixed
from webapp.pages.views.frame import Frame
from webapp.records import BackupFolder, BackupInside, KeptBackup, PatternInside

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


@dataclass(frozen=True)
class InsidePage:
    """What is inside a backup at `/backups/inside`."""

    frame: Frame
    name: Annotated[str, "The name of its file."]
    patterns: Annotated[int, "How many patterns it holds."]
    binned: Annotated[int, "How many stand in its bin."]
    newest: Annotated[datetime | None, "When the newest of them was changed."]
    told: Annotated[tuple[tuple[str, int], ...], "How many patterns come back, change, go and stay, in words."]
    lines: Annotated[tuple[tuple[str, str], ...], "Title of a pattern, and what becomes of it."]
    more: Annotated[int, "How many patterns are not listed."]


def backups_page(
    frame: Frame,
    kept: Iterable[KeptBackup],
    folder: BackupFolder,
    typed: str | None = None,
    wrong: str = "",
    undo: str = "",
) -> BackupsPage:
    """The list; `typed` and `wrong` when a folder was sent that cannot be used."""
    found = tuple(kept)
    chosen = str(folder.chosen) if folder.chosen else ""
    return BackupsPage(
        frame,
        tuple(_line(one) for one in found if not one.aside),
        tuple(_line(one) for one in found if one.aside),
        str(folder.path),
        chosen if typed is None else typed,
        folder.wrong,
        wrong,
        undo,
    )


def inside_page(frame: Frame, inside: BackupInside) -> InsidePage:
    """What a backup holds beside the present library."""
    found = Counter(line.state for line in inside.lines)
    told = tuple((words[found[state] > 1], found[state]) for state, words in COUNTED.items() if found[state])
    shown = inside.lines[:MOST_LINES]
    return InsidePage(
        frame,
        inside.path.name,
        inside.patterns,
        inside.binned,
        inside.newest,
        told,
        tuple(map(_told, shown)),
        len(inside.lines) - len(shown),
    )


def size_in_words(size: int) -> str:
    """Bytes for people: "120 kB", "3.4 MB"."""
    return f"{fixed(size / 1e6, 1)} MB" if size >= 1_000_000 else f"{fixed(size / 1e3, 0)} kB"


def _line(kept: KeptBackup) -> BackupLine:
    return BackupLine(kept.path.name, kept.made, size_in_words(kept.size), kept.patterns)


def _told(line: PatternInside) -> tuple[str, str]:
    return line.title, STATE_WORDS[line.state]
