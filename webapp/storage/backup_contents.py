"""What is inside a backup, compared with the present library."""

from __future__ import annotations

import sqlite3
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from webapp.records import BackupContents, PatternInBackup
from webapp.storage.content_check import check_contents
from webapp.storage.database import Database
from webapp.storage.library_file import check, opened

STATES = ("comes back", "is changed", "goes", "stays")

# the oldest schema has these columns
STANDING_QUERY = """
SELECT pattern.id, pattern.title, pattern.changed, pattern.binned, pattern.revision, pattern.sequence, min(first.made),
       coalesce((SELECT document FROM working WHERE working.pattern = pattern.id),
                (SELECT document FROM revision WHERE revision.pattern = pattern.id AND number = pattern.revision))
FROM pattern JOIN revision AS first ON first.pattern = pattern.id GROUP BY pattern.id
"""


class Standing(NamedTuple):
    """A pattern as it stands in a library file."""

    title: str
    changed: str
    binned: bool
    revision: int
    sequence: int
    document_hash: bytes


def compare(database: Database, path: Path) -> BackupContents:
    """What a backup holds, and what would become of the present patterns. Raises LibraryError for one not sound."""
    check(path)
    check_contents(path)
    there, here = standing(path), _present(database.path)
    lines = [
        *(PatternInBackup(pattern.title, _state(pattern, here.get(key))) for key, pattern in there.items()),
        *(PatternInBackup(pattern.title, "goes") for key, pattern in here.items() if key not in there),
    ]
    newest = max((pattern.changed for pattern in there.values()), default="")
    return BackupContents(
        path=path,
        patterns=sum(not pattern.binned for pattern in there.values()),
        binned=sum(pattern.binned for pattern in there.values()),
        newest=datetime.fromisoformat(newest).replace(tzinfo=UTC) if newest else None,
        lines=tuple(sorted(lines, key=lambda line: (STATES.index(line.state), line.title.casefold()))),
    )


def _present(library: Path) -> dict[tuple[int, str], Standing]:
    """Nothing, where the library is gone or damaged: then a restore is what is needed."""
    try:
        return standing(library, in_use=True)
    except sqlite3.Error:
        return {}


def _state(there: Standing, here: Standing | None) -> str:
    if here is None:
        return "comes back"
    return "stays" if (there.document_hash, there.binned) == (here.document_hash, here.binned) else "is changed"


def standing(path: Path, in_use: bool = False) -> dict[tuple[int, str], Standing]:
    """The patterns of a library file by number and the moment they were made, by which one is known in any copy."""
    with opened(path, in_use) as connection:
        return {
            (number, made): Standing(
                title=title,
                changed=changed,
                binned=bool(binned),
                revision=revision,
                sequence=sequence,
                document_hash=sha256(document.encode()).digest(),
            )
            for number, title, changed, binned, revision, sequence, made, document in connection.execute(STANDING_QUERY)
        }
