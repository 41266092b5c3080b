"""Check of the library, for its owner: version, where everything lies, how large it is, and what went wrong lately."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Annotated

from webapp.pages.views.backups import size_in_words
from webapp.pages.views.frame import Frame
from webapp.records import FolderSizes, KeptBackup


@dataclass(frozen=True)
class CarePage:
    """Check of the library, at `/settings/library`."""

    frame: Annotated[Frame, "What stands round the page."]
    version: Annotated[str, "The version of the program."]
    folder: Annotated[str, "The data folder."]
    sizes: Annotated[tuple[tuple[str, str], ...], "What lies there, and how large it is, in words."]
    sound: Annotated[datetime | None, "When the last sound backup was made."]
    problems: Annotated[tuple[tuple[datetime, str], ...], "What went wrong since the program was started."]
    damaged: Annotated[bool, "Whether the library is known to be damaged or gone."]


def care_page(
    frame: Frame,
    version: str,
    folder: str,
    sizes: FolderSizes,
    sound: KeptBackup | None,
    problems: Iterable[tuple[datetime, str]],
    damaged: bool,
) -> CarePage:
    """The page for what was found."""
    told = (
        ("The library", sizes.library),
        ("Backups in the data folder", sizes.backups),
        ("Kept aside before restores and updates", sizes.aside),
        ("Pictures that can be drawn again", sizes.pictures),
        ("Free room on the disk", sizes.left),
    )
    return CarePage(
        frame=frame,
        version=version,
        folder=folder,
        sizes=tuple((words, size_in_words(size)) for words, size in told),
        sound=sound.made if sound else None,
        problems=tuple((moment, sentence) for moment, sentence in problems),
        damaged=damaged,
    )
