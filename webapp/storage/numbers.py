"""Numbers that never go back: a page opened before a restore, or before a pattern was removed, must not match again."""

from __future__ import annotations

import json
import sqlite3
from contextlib import suppress
from typing import NamedTuple

from sqlalchemy import func
from sqlmodel import Session, col, select

from webapp.storage.tables import PatternRow, SettingRow

HIGHEST = "highest numbers"


class Numbers(NamedTuple):
    """The highest number of a pattern, of a revision and of a sequence that anybody may have seen."""

    pattern: int = 0
    revision: int = 0
    sequence: int = 0

    def joined(self, other: Numbers) -> Numbers:
        return Numbers(*map(max, zip(self, other, strict=True)))

    def beyond(self, step: Numbers) -> Numbers:
        return Numbers(*map(sum, zip(self, step, strict=True)))


# more than anybody makes between two backups; sequences go up with every bead that is drawn
UNREAD = Numbers(pattern=10_000, revision=10_000, sequence=1_000_000)


def note_highest(session: Session) -> None:
    """Keeps the highest numbers of all patterns, before some are removed for good; part of a larger change."""
    row = session.exec(
        select(func.max(PatternRow.id), func.max(PatternRow.revision), func.max(PatternRow.sequence))
    ).one()
    session.merge(_row(_kept(session).joined(Numbers(*(number or 0 for number in row)))))


def next_pattern(session: Session) -> int:
    """The number of a new pattern."""
    highest = session.exec(select(func.max(col(PatternRow.id)))).one() or 0
    return max(highest, _kept(session).pattern) + 1


def highest_in(connection: sqlite3.Connection) -> Numbers:
    """The highest numbers of a library file."""
    row = connection.execute("SELECT max(id), max(revision), max(sequence) FROM pattern").fetchone()
    kept = connection.execute("SELECT value FROM setting WHERE name = ?", (HIGHEST,)).fetchone()
    return Numbers(*(number or 0 for number in row)).joined(_read(kept[0] if kept else ""))


def readable_in(connection: sqlite3.Connection) -> Numbers:
    """The highest numbers of a damaged library file, as far as they can be read: the last rows before a gap count."""
    highest = Numbers()
    with suppress(sqlite3.DatabaseError):
        for row in connection.execute("SELECT id, revision, sequence FROM pattern NOT INDEXED"):
            highest = highest.joined(_read(json.dumps(row)))
    with suppress(sqlite3.DatabaseError):
        for (value,) in connection.execute("SELECT value FROM setting WHERE name = ?", (HIGHEST,)):
            highest = highest.joined(_read(value))
    return highest


def raise_numbers(connection: sqlite3.Connection, before: Numbers, standing: frozenset[int], now: str) -> None:
    """Lets what comes out of a backup begin above every number that was seen before.

    `standing` are the patterns that are the same in both; their numbers stay. Of the others what stands becomes a new
    revision, so that a save made from one of the library before is refused.
    """
    highest = highest_in(connection).joined(before)
    for number, revision in connection.execute("SELECT id, revision FROM pattern").fetchall():
        if number not in standing:
            connection.execute(
                "INSERT INTO revision (pattern, number, made, automatic, note, document, mark) "
                "SELECT pattern, ?, ?, 0, 'As in the backup', document, '' FROM revision "
                "WHERE pattern = ? AND number = ?",
                (highest.revision + 1, now, number, revision),
            )
            connection.execute(
                "UPDATE pattern SET revision = ?, sequence = ? WHERE id = ?",
                (highest.revision + 1, highest.sequence + 1, number),
            )
            connection.execute("UPDATE working SET made_from = ? WHERE pattern = ?", (highest.revision + 1, number))
    row = _row(highest.joined(highest_in(connection)))
    connection.execute("INSERT OR REPLACE INTO setting (name, value) VALUES (?, ?)", (row.name, row.value))


def _kept(session: Session) -> Numbers:
    row = session.get(SettingRow, HIGHEST)
    return _read(row.value if row else "")


def _row(numbers: Numbers) -> SettingRow:
    return SettingRow(name=HIGHEST, value=json.dumps(numbers))


def _read(text: str) -> Numbers:
    """What was kept; a backup that somebody wrote by hand may say anything."""
    try:
        numbers = json.loads(text or "[]")
        return Numbers(*(max(0, min(int(number), 2**53)) for number in numbers))
    except (TypeError, ValueError):
        return Numbers()
