"""Patterns in the library: make, find, load as they stand, bin and take back."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC
from functools import lru_cache
from hashlib import sha256

from sqlalchemy import ColumnElement, delete, func
from sqlmodel import Session, col, select

from engine.pattern.pattern import Pattern
from webapp.exchange import pattern_file
from webapp.records import PatternSummary, StoredPattern, SummaryPage
from webapp.storage.database import Database
from webapp.storage.errors import NotFound
from webapp.storage.tables import PatternRow, RevisionRow, TagRow, WorkingRow

PER_PAGE = 24
MOST_WORDS = 20
SORTS = {
    "changed": (col(PatternRow.changed).desc(), col(PatternRow.id).desc()),
    "title": (func.lower(PatternRow.title), col(PatternRow.id)),
    "around": (col(PatternRow.around), func.lower(PatternRow.title), col(PatternRow.id)),
}


def create(database: Database, pattern: Pattern, example: bool = False, note: str = "") -> StoredPattern:
    """Puts a pattern into the library as its revision 1."""
    now = database.now()
    with database.writing() as session:
        row = PatternRow.model_validate({**_shown(pattern), "changed": now, "revision": 1, "example": example})
        session.add(row)
        session.flush()
        number = number_of(row)
        session.add(RevisionRow(pattern=number, number=1, made=now, note=note, document=text_of(pattern)))
        _set_tags(session, number, pattern.tags)
    return load(database, number)


def load(database: Database, number: int) -> StoredPattern:
    """The pattern as it stands: its working copy if there is one, else its newest revision. Raises NotFound."""
    with database.reading() as session:
        row = row_of(session, number)
        working = session.get(WorkingRow, number)
        newest = session.get_one(RevisionRow, (number, row.revision))
        pattern, made = pattern_of((working or newest).document), newest.made.replace(tzinfo=UTC)
        return StoredPattern(number, pattern, row.revision, made, working is not None, row.sequence, row.example,
                             row.binned)


def find(database: Database, search: str = "", tag: str = "", sort: str = "changed", page: int = 1,
         binned: bool = False, per_page: int = PER_PAGE) -> SummaryPage:
    """One page of the patterns whose words hold every word of `search` and that carry `tag`; pages count from one."""
    wanted = [col(PatternRow.binned) == binned, *(_holds(word) for word in search.casefold().split()[:MOST_WORDS])]
    if tag:
        wanted.append(col(PatternRow.id).in_(select(TagRow.pattern).where(TagRow.name == tag)))
    with database.reading() as session:
        total = session.exec(select(func.count()).select_from(PatternRow).where(*wanted)).one()
        pages = max(1, -(-total // per_page))
        page = min(max(page, 1), pages)
        order = SORTS.get(sort, SORTS["changed"])
        # sorted by number alone, so that the words of all other patterns are not carried along
        shown = select(PatternRow.id).where(*wanted).order_by(*order).offset((page - 1) * per_page).limit(per_page)
        rows = session.exec(select(PatternRow).where(col(PatternRow.id).in_(shown)).order_by(*order)).all()
        tags = _tags_of(session, [number_of(row) for row in rows])
        return SummaryPage(tuple(_summary(row, tags.get(number_of(row), ())) for row in rows), page, pages, total,
                           _counted_tags(session, wanted))


def all_numbers(database: Database) -> list[int]:
    """Numbers of all patterns that are not in the bin."""
    with database.reading() as session:
        rows = session.exec(select(PatternRow.id).where(~col(PatternRow.binned)).order_by(col(PatternRow.id)))
        return [number for number in rows if number is not None]


def counts(database: Database) -> tuple[int, int]:
    """How many examples are in the library, and how many patterns in the bin."""
    total = select(func.count()).select_from(PatternRow)
    with database.reading() as session:
        examples = session.exec(total.where(PatternRow.example, ~col(PatternRow.binned))).one()
        return examples, session.exec(total.where(PatternRow.binned)).one()


def put_into_bin(database: Database, number: int) -> None:
    """Puts a pattern into the bin, from which it can be taken back. Raises NotFound."""
    _set_binned(database, number, True)


def take_back(database: Database, number: int) -> None:
    """Takes a pattern back out of the bin. Raises NotFound."""
    _set_binned(database, number, False)


def empty_bin(database: Database) -> int:
    """Removes for good what is in the bin; how many patterns that were."""
    with database.writing() as session:
        return session.exec(delete(PatternRow).where(col(PatternRow.binned))).rowcount


def remove_examples(database: Database) -> int:
    """Puts the examples into the bin; how many that were."""
    with database.writing() as session:
        rows = session.exec(select(PatternRow).where(col(PatternRow.example), ~col(PatternRow.binned))).all()
        for row in rows:
            row.binned = True
            session.add(row)
        return len(rows)


def store_state(session: Session, row: PatternRow, pattern: Pattern) -> None:
    """Makes lists and search show that state of the pattern; part of a save."""
    for name, value in _shown(pattern).items():
        setattr(row, name, value)
    row.sequence += 1
    session.add(row)
    _set_tags(session, number_of(row), pattern.tags)


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


def _shown(pattern: Pattern) -> dict[str, str | int]:
    kinds = dict.fromkeys(entry.kind for entry in pattern.palette)
    names = (entry.name for entry in pattern.palette)
    around = f"{pattern.around} around"
    words = " ".join((pattern.title, pattern.notes, pattern.designer, around, *pattern.tags, *kinds, *names))
    return {"title": pattern.title, "around": pattern.around, "beads": len(pattern.chart), "repeat": pattern.repeat,
            "kinds": "\n".join(kinds), "colours": " ".join(entry.colour for entry in pattern.palette),
            "words": words.casefold(), "picture": picture_version(pattern)}


def picture_version(pattern: Pattern) -> str:
    """Sixteen letters that change whenever a picture of the pattern would."""
    seen = (pattern.around, pattern.hand, pattern.start, pattern.chart, pattern.end,
            tuple((entry.colour, entry.finish) for entry in pattern.palette))
    return sha256(repr(seen).encode()).hexdigest()[:16]


def _summary(row: PatternRow, tags: tuple[str, ...]) -> PatternSummary:
    return PatternSummary(
        number_of(row), row.title, row.around, row.beads, row.repeat, tuple(row.kinds.split("\n")),
        tuple(row.colours.split()), tags, row.changed.replace(tzinfo=UTC), row.revision, row.example, row.picture,
        row.binned)


def _holds(word: str) -> ColumnElement[bool]:
    return col(PatternRow.words).contains(word, autoescape=True)


def _tags_of(session: Session, numbers: list[int]) -> dict[int, tuple[str, ...]]:
    found: dict[int, tuple[str, ...]] = {}
    for row in session.exec(select(TagRow).where(col(TagRow.pattern).in_(numbers)).order_by(TagRow.name)):
        found[row.pattern] = (*found.get(row.pattern, ()), row.name)
    return found


def _counted_tags(session: Session, wanted: list[ColumnElement[bool]]) -> tuple[tuple[str, int], ...]:
    counted = func.count(col(TagRow.pattern))
    rows = session.exec(select(TagRow.name, counted).join(PatternRow, col(PatternRow.id) == col(TagRow.pattern))
                        .where(*wanted).group_by(TagRow.name).order_by(counted.desc(), TagRow.name).limit(40))
    return tuple((name, number) for name, number in rows)


def _set_tags(session: Session, number: int, tags: Iterable[str]) -> None:
    session.exec(delete(TagRow).where(col(TagRow.pattern) == number))
    for tag in tags:
        session.add(TagRow(pattern=number, name=tag))


def _set_binned(database: Database, number: int, binned: bool) -> None:
    with database.writing() as session:
        row = row_of(session, number)
        row.binned = binned
        session.add(row)
