"""Patterns in the library: make, load as they stand, put on a shelf, bin and take back."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime
from functools import lru_cache
from hashlib import sha256

from sqlalchemy import delete, insert
from sqlmodel import Session, col, select

from engine.pattern.colour import lab
from engine.pattern.pattern import Pattern
from webapp.exchange import pattern_file
from webapp.records import StoredPattern
from webapp.storage.database import Database
from webapp.storage.errors import NotFound
from webapp.storage.numbers import next_pattern, note_highest
from webapp.storage.tables import ColourRow, EditionRow, PatternRow, RevisionRow, TagRow, UsedBeadRow, WorkingRow


def create(database: Database, pattern: Pattern, example: bool = False, note: str = "") -> StoredPattern:
    """Puts a pattern into the library as its revision 1."""
    with database.writing() as session:
        number = number_of(put(session, pattern, database.now(), example, note))
    return load(database, number)


def put(session: Session, pattern: Pattern, now: datetime, example: bool = False, note: str = "") -> PatternRow:
    """Puts a pattern in as its revision 1; part of a larger change."""
    number = next_pattern(session)
    stamps = {"made": now, "changed": now, "revision": 1, "example": example}
    row = PatternRow.model_validate({"id": number, **_listed_facts(pattern), **stamps})
    session.add(row)
    session.flush()
    session.add(RevisionRow(pattern=number, number=1, made=now, note=note, document=text_of(pattern)))
    _add_tags(session, number, pattern.tags)
    _add_colours(session, row)
    _add_used_beads(session, number, pattern)
    return row


def load(database: Database, number: int) -> StoredPattern:
    """The pattern as it stands: its working copy if there is one, else its newest revision. Raises NotFound."""
    with database.reading() as session:
        row = row_of(session, number)
        working = session.get(WorkingRow, number)
        newest = session.get_one(RevisionRow, (number, row.revision))
        return StoredPattern(
            id=number,
            pattern=pattern_of((working or newest).document),
            revision=row.revision,
            revision_date=newest.made.replace(tzinfo=UTC),
            working=working is not None,
            sequence=row.sequence,
            example=row.example,
            binned=row.binned,
            series=row.series,
            difficulty=row.difficulty,
        )


def shelve(database: Database, number: int, series: str, difficulty: int) -> None:
    """Says which series a pattern belongs to and how hard it is, 1 to 5; empty and nought leave it unsaid."""
    with database.writing() as session:
        row = row_of(session, number)
        row.series, row.difficulty = series, difficulty
        session.add(row)


def put_into_bin(database: Database, number: int) -> None:
    """Puts a pattern into the bin, from which it can be taken back. Raises NotFound."""
    _set_binned(database, number, True)


def take_back(database: Database, number: int) -> None:
    """Takes a pattern back out of the bin. Raises NotFound."""
    _set_binned(database, number, False)


def empty_bin(database: Database) -> int:
    """Removes for good what is in the bin, published patterns excepted; how many patterns that were."""
    published = select(EditionRow.pattern)
    with database.writing() as session:
        note_highest(session)
        return session.exec(
            delete(PatternRow).where(col(PatternRow.binned), col(PatternRow.id).not_in(published))
        ).rowcount


def remove_examples(database: Database) -> tuple[int, ...]:
    """Puts the examples into the bin; their numbers."""
    with database.writing() as session:
        rows = session.exec(select(PatternRow).where(col(PatternRow.example), ~col(PatternRow.binned))).all()
        for row in rows:
            row.binned = True
            session.add(row)
        return tuple(number_of(row) for row in rows)


def store_state(session: Session, row: PatternRow, pattern: Pattern) -> None:
    """Makes lists and search show that state of the pattern; part of a save."""
    before = row.colours
    for name, value in _listed_facts(pattern).items():
        setattr(row, name, value)
    row.sequence += 1
    session.add(row)
    session.exec(delete(TagRow).where(col(TagRow.pattern) == number_of(row)))
    _add_tags(session, number_of(row), pattern.tags)
    if row.colours != before:
        session.exec(delete(ColourRow).where(col(ColourRow.pattern) == number_of(row)))
        _add_colours(session, row)
    session.exec(delete(UsedBeadRow).where(col(UsedBeadRow.pattern) == number_of(row)))
    _add_used_beads(session, number_of(row), pattern)


def row_of(session: Session, number: int) -> PatternRow:
    """Raises NotFound for a pattern that is not in the library."""
    row = session.get(PatternRow, number) if 0 < number < 2**63 else None
    if row is None:
        raise NotFound("pattern at this address")
    return row


def number_of(row: PatternRow) -> int:
    """The number of a row that the database has seen."""
    assert row.id is not None
    return row.id


@lru_cache(64)
def pattern_of(document: str) -> Pattern:
    """The pattern of a kept document, which was checked when it was kept."""
    return pattern_file.read(document)


def text_of(pattern: Pattern) -> str:
    """The document under which a pattern is kept."""
    return pattern_file.write_file(pattern)


def _listed_facts(pattern: Pattern) -> dict[str, str | int]:
    kinds = dict.fromkeys(entry.kind for entry in pattern.palette)
    names = (name for entry in pattern.palette for name in (entry.name, entry.maker_code))
    around = f"{pattern.around} around"
    parts = (part.name for part in pattern.in_parts)
    words = " ".join((pattern.title, pattern.notes, pattern.designer, around, *pattern.tags, *kinds, *names, *parts))
    return {
        "title": pattern.title,
        "around": pattern.around,
        "beads": pattern.beads if pattern.in_parts else len(pattern.chart),
        "parts": len(pattern.in_parts) or 1,
        "repeat": pattern.repeat,
        "kinds": "\n".join(kinds),
        "colours": " ".join(entry.colour for entry in pattern.palette),
        "words": words.casefold(),
        "picture": picture_version(pattern),
    }


def picture_version(pattern: Pattern) -> str:
    """Sixteen letters that change whenever a picture of the pattern would."""
    seen = (
        pattern.around,
        pattern.hand,
        tuple((part.beads, part.times) for part in pattern.parts),
        tuple((entry.colour, entry.finish, entry.kind) for entry in pattern.palette),
    )
    return sha256(repr(seen).encode()).hexdigest()[:16]


def _add_tags(session: Session, number: int, tags: Iterable[str]) -> None:
    if rows := [{"pattern": number, "name": tag} for tag in tags]:
        session.connection().execute(insert(TagRow), rows)


def _add_colours(session: Session, row: PatternRow) -> None:
    session.connection().execute(
        insert(ColourRow),
        [
            {"pattern": number_of(row), "place": place, "light": light, "a": a, "b": b}
            for place, (light, a, b) in enumerate(lab(row.colours.split()))
        ],
    )


def _add_used_beads(session: Session, number: int, pattern: Pattern) -> None:
    keys = sorted({entry.bead for entry in pattern.palette if entry.bead})
    if keys:
        session.connection().execute(insert(UsedBeadRow), [{"pattern": number, "bead": key} for key in keys])


def _set_binned(database: Database, number: int, binned: bool) -> None:
    with database.writing() as session:
        row = row_of(session, number)
        row.binned = binned
        session.add(row)
