"""What is inside a backup beside the present library, and putting it in its place while the program runs."""

from __future__ import annotations

from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from webapp.records import BackupInside, PatternInside
from webapp.storage import backup
from webapp.storage.database import Database

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
    stands: bytes


def inside(database: Database, path: Path) -> BackupInside:
    """What a backup holds, and what would become of the present patterns. Raises LibraryError for one not sound."""
    backup.check(path)
    there, here = _standing(path), _standing(database.path, in_use=True)
    lines = [
        *(PatternInside(one.title, _state(one, here.get(key))) for key, one in there.items()),
        *(PatternInside(one.title, "goes") for key, one in here.items() if key not in there),
    ]
    newest = max((one.changed for one in there.values()), default="")
    return BackupInside(
        path,
        sum(not one.binned for one in there.values()),
        sum(one.binned for one in there.values()),
        datetime.fromisoformat(newest).replace(tzinfo=UTC) if newest else None,
        tuple(sorted(lines, key=lambda line: (STATES.index(line.state), line.title.casefold()))),
    )


def put_back(database: Database, path: Path) -> Path:
    """Puts a backup in the place of the library while it is open; gives where the present one is kept aside.

    Raises LibraryError and changes nothing where the backup is not sound or the library is being written to.
    """
    with database.at_rest():
        aside = backup.restore(database.folder, path, database.now())
    assert aside is not None
    return aside


def _state(there: _Standing, here: _Standing | None) -> str:
    if here is None:
        return "comes back"
    return "stays" if (there.stands, there.binned) == (here.stands, here.binned) else "is changed"


def _standing(path: Path, in_use: bool = False) -> dict[tuple[int, str], _Standing]:
    with backup.opened(path, in_use) as connection:
        return {
            (number, made): _Standing(title, changed, bool(binned), sha256(document.encode()).digest())
            for number, title, changed, binned, made, document in connection.execute(_STANDING)
        }
