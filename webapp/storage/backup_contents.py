"""What is inside a backup, compared with the present library."""

from __future__ import annotations

from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from webapp.records import BackupContents, PatternInBackup
from webapp.storage.database import Database
from webapp.storage.library_file import check, opened

STATES = ("comes back", "is changed", "goes", "stays")

# told by number and the moment it was made, a pattern is known in any copy of its library; the oldest schema has these
_STANDING = """
SELECT pattern.id, pattern.title, pattern.changed, pattern.binned, min(first.made),
       coalesce((SELECT document FROM working WHERE working.pattern = pattern.id),
                (SELECT document FROM revision WHERE revision.pattern = pattern.id AND number = pattern.revision))
FROM pattern JOIN revision AS first ON first.pattern = pattern.id GROUP BY pattern.id
"""


class _Standing(NamedTuple):
    title: str
    changed: str
    binned: bool
    document_hash: bytes


def compare(database: Database, path: Path) -> BackupContents:
    """What a backup holds, and what would become of the present patterns. Raises LibraryError for one not sound."""
    check(path)
    there, here = _standing(path), _standing(database.path, in_use=True)
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


def _state(there: _Standing, here: _Standing | None) -> str:
    if here is None:
        return "comes back"
    return "stays" if (there.document_hash, there.binned) == (here.document_hash, here.binned) else "is changed"


def _standing(path: Path, in_use: bool = False) -> dict[tuple[int, str], _Standing]:
    with opened(path, in_use) as connection:
        return {
            (number, made): _Standing(title, changed, bool(binned), sha256(document.encode()).digest())
            for number, title, changed, binned, made, document in connection.execute(_STANDING)
        }
