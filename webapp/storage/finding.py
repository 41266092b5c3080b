"""Finds patterns: by the beginnings of words, by what they are and carry, by a colour that some bead comes near."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from datetime import UTC
from itertools import chain
from typing import Any

from sqlalchemy import ColumnElement, func, literal_column, text
from sqlmodel import Session, col, select
from sqlmodel.sql.expression import SelectOfScalar

from engine.pattern.colour import lab
from webapp.records import PatternSummary, Shelves, SummaryPage, Wanted
from webapp.storage.database import Database
from webapp.storage.patterns import number_of
from webapp.storage.tables import ColourRow, EditionRow, PatternRow, TagRow

PER_PAGE = 24
MOST_WORDS = 20
MOST_TAGS = 40
NEAR = 18.0  # in CIELAB: two beads this far apart would still be called by one name (our judgement)
SORTS = {
    "changed": (col(PatternRow.changed).desc(), col(PatternRow.id).desc()),
    "made": (col(PatternRow.made).desc(), col(PatternRow.id).desc()),
    "title": (func.lower(PatternRow.title), col(PatternRow.id)),
    "around": (col(PatternRow.around), func.lower(PatternRow.title), col(PatternRow.id)),
    "beads": (col(PatternRow.beads), col(PatternRow.id)),
    "difficulty": (col(PatternRow.difficulty) == 0, col(PatternRow.difficulty), col(PatternRow.id)),
}


def find(
    database: Database,
    wanted: Wanted | str = "",
    sort: str = "changed",
    page: int = 1,
    binned: bool = False,
    per_page: int = PER_PAGE,
) -> SummaryPage:
    """One page of the patterns that are wanted; a text alone is a search. Pages count from one."""
    wanted = wanted if isinstance(wanted, Wanted) else Wanted(wanted)
    sort = sort if sort in SORTS else "changed"
    order, everything = SORTS[sort], wanted == Wanted()
    matching = _kept_order(database, sort, binned) if everything else None
    asked = select(PatternRow.id).where(*_narrowed(wanted, binned)).order_by(*order)
    with database.reading() as session:
        # looked for once, by number alone, so that the words of all other patterns are not carried along
        matching = matching if everything else _in_order(session, asked)
        total = len(matching) if matching is not None else _count(session, binned)
        pages = max(1, -(-total // per_page))
        page = min(max(page, 1), pages)
        first = (page - 1) * per_page
        listed = (
            session.exec(asked.offset(first).limit(per_page)).all() if matching is None else matching[first:][:per_page]
        )
        rows = session.exec(select(PatternRow).where(col(PatternRow.id).in_(listed)).order_by(*order)).all()
        summaries = _summaries(session, rows)
    tags = _counted_tags(database, None if everything else matching, binned)
    return SummaryPage(patterns=summaries, page=page, pages=pages, total=total, tags=tags)


def _kept_order(database: Database, sort: str, binned: bool) -> list[int] | None:
    """All that are in the bin, or are not, in that order; None for the one that an index gives, a page at once."""
    if sort == "changed":
        return None

    def ordered() -> list[int]:
        asked = select(PatternRow.id).where(col(PatternRow.binned) == binned).order_by(*SORTS[sort])
        with database.reading() as session:
            return _in_order(session, asked)

    return database.remembered.get(f"{sort} {binned}", ordered)


def numbers(database: Database, wanted: Wanted | None = None) -> list[int]:
    """Numbers of all patterns that are wanted and not in the bin."""
    with database.reading() as session:
        rows = session.exec(
            select(PatternRow.id).where(*_narrowed(wanted or Wanted(), False)).order_by(col(PatternRow.id))
        )
        return [number for number in rows if number is not None]


def counts(database: Database) -> tuple[int, int]:
    """How many examples are in the library, and how many patterns in the bin."""
    return database.remembered.get("counts", lambda: _counts(database))


def _counts(database: Database) -> tuple[int, int]:
    total = select(func.count()).select_from(PatternRow)
    with database.reading() as session:
        examples = session.exec(total.where(PatternRow.example, ~col(PatternRow.binned))).one()
        return examples, session.exec(total.where(PatternRow.binned)).one()


def shelves(database: Database) -> Shelves:
    """The series, bead kinds and numbers around that patterns of the library have."""
    return database.remembered.get("shelves", lambda: _shelves(database))


def _shelves(database: Database) -> Shelves:
    kept = ~col(PatternRow.binned)
    with database.reading() as session:
        facts = select(PatternRow.series, PatternRow.kinds, PatternRow.around)
        rows = session.exec(facts.where(kept).distinct()).all()
    series = {series for series, _, _ in rows if series}
    kinds = {kind for _, together, _ in rows for kind in together.split("\n")}
    arounds = {around for *_, around in rows}
    return Shelves(tuple(sorted(series, key=str.casefold)), tuple(sorted(kinds)), tuple(sorted(arounds)))


def _narrowed(wanted: Wanted, binned: bool) -> list[ColumnElement[bool]]:
    number = col(PatternRow.id)
    clauses = [col(PatternRow.binned) == binned, *_searched(wanted.search)]
    if wanted.tag:
        clauses.append(number.in_(select(TagRow.pattern).where(TagRow.name == wanted.tag)))
    if wanted.series:
        clauses.append(col(PatternRow.series) == wanted.series)
    if wanted.around:
        clauses.append(col(PatternRow.around) == wanted.around)
    if wanted.difficulty:
        clauses.append(col(PatternRow.difficulty) == wanted.difficulty)
    if wanted.kind:
        clauses.append(("\n" + col(PatternRow.kinds) + "\n").contains(f"\n{wanted.kind}\n", autoescape=True))
    if wanted.published:
        standing = number.in_(select(EditionRow.pattern).where(col(EditionRow.withdrawn).is_(None)))
        clauses.append(standing if wanted.published == "yes" else ~standing)
    colours = (func.length(PatternRow.colours) + 1) / 8  # each is seven letters, with a space between
    clauses += [*_between(col(PatternRow.beads), wanted.beads), *_between(colours, wanted.colours)]
    return clauses + ([number.in_(_near(wanted.near))] if wanted.near else [])


def _searched(search: str) -> Iterable[ColumnElement[bool]]:
    """Every word of the search begins a word of the pattern; accents and capitals do not count."""
    plain = search.casefold().replace("\0", " ")  # the index would take it for the end of what is asked
    words = [word for word in plain.split()[:MOST_WORDS] if any(map(str.isalnum, word))]
    if not words:
        return []
    asked = " ".join('"{}"*'.format(word.replace('"', '""')) for word in words)
    matching = text("found MATCH :words").bindparams(words=asked)
    return [col(PatternRow.id).in_(select(literal_column("rowid")).select_from(text("found")).where(matching))]


def _between(column: Any, bounds: tuple[int, int]) -> list[ColumnElement[bool]]:
    least, most = bounds
    return ([column >= least] if least else []) + ([column <= most] if most else [])


def _near(colour: str) -> SelectOfScalar[int]:
    """Patterns with a colour near in CIELAB, by the straight distance: that can be looked up by lightness."""
    ((light, a, b),) = lab([colour])
    by = (col(ColourRow.light) - light, col(ColourRow.a) - a, col(ColourRow.b) - b)
    return select(ColourRow.pattern).where(
        col(ColourRow.light).between(light - NEAR, light + NEAR),
        # told by the index alone, and sooner than the distance
        col(ColourRow.a).between(a - NEAR, a + NEAR),
        col(ColourRow.b).between(b - NEAR, b + NEAR),
        by[0] * by[0] + by[1] * by[1] + by[2] * by[2] <= NEAR * NEAR,
    )


def _summaries(session: Session, rows: Iterable[PatternRow]) -> tuple[PatternSummary, ...]:
    listed = list(rows)
    numbers = [number_of(row) for row in listed]
    tags = _tags_of(session, numbers)
    published = set(
        session.exec(
            select(EditionRow.pattern).where(col(EditionRow.pattern).in_(numbers), col(EditionRow.withdrawn).is_(None))
        )
    )
    return tuple(_summary(row, tags.get(number_of(row), ()), number_of(row) in published) for row in listed)


def _summary(row: PatternRow, tags: tuple[str, ...], published: bool) -> PatternSummary:
    return PatternSummary(
        id=number_of(row),
        title=row.title,
        around=row.around,
        beads=row.beads,
        repeat=row.repeat,
        kinds=tuple(row.kinds.split("\n")),
        colours=tuple(row.colours.split()),
        tags=tags,
        changed=row.changed.replace(tzinfo=UTC),
        revision=row.revision,
        example=row.example,
        picture=row.picture,
        binned=row.binned,
        series=row.series,
        difficulty=row.difficulty,
        parts=row.parts,
        made=row.made.replace(tzinfo=UTC),
        published=published,
    )


def _tags_of(session: Session, numbers: list[int]) -> dict[int, tuple[str, ...]]:
    tags: dict[int, tuple[str, ...]] = {}
    for row in session.exec(select(TagRow).where(col(TagRow.pattern).in_(numbers)).order_by(TagRow.name)):
        tags[row.pattern] = (*tags.get(row.pattern, ()), row.name)
    return tags


def _count(session: Session, binned: bool) -> int:
    return session.exec(select(func.count()).select_from(PatternRow).where(col(PatternRow.binned) == binned)).one()


def _counted_tags(database: Database, matching: list[int] | None, binned: bool) -> tuple[tuple[str, int], ...]:
    """The tags of the patterns found, or of all that are in the bin or are not; the most frequent first."""
    if matching is None:
        return database.remembered.get(f"tags {binned}", lambda: _most(database, _numbers(database, binned)))
    return _most(database, matching)


def _most(database: Database, numbers: Iterable[int]) -> tuple[tuple[str, int], ...]:
    carried = database.remembered.get("tags", lambda: _all_tags(database))
    counted = Counter(chain.from_iterable(filter(None, map(carried.get, numbers))))
    return tuple(sorted(counted.items(), key=lambda tag: (-tag[1], tag[0]))[:MOST_TAGS])


def _all_tags(database: Database) -> dict[int, tuple[str, ...]]:
    """The tags of every pattern that has some."""
    tags: dict[int, tuple[str, ...]] = {}
    with database.reading() as session:
        for number, name in session.connection().execute(select(TagRow.pattern, TagRow.name)):
            tags[number] = (*tags.get(number, ()), name)
    return tags


def _numbers(database: Database, binned: bool) -> list[int]:
    with database.reading() as session:
        return _in_order(session, select(PatternRow.id).where(col(PatternRow.binned) == binned))


def _in_order(session: Session, asked: Any) -> list[int]:
    """Numbers of patterns, fetched all at once: a row at a time takes longer."""
    return list(session.connection().execute(asked).scalars().all())
