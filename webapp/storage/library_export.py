"""The library read out for an export: patterns with all that belongs to them, and the maker's own numbers."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass, field, fields
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import func
from sqlmodel import Session, col, select

from webapp.exchange.portable import (
    PortableBead,
    PortableBooklet,
    PortableColourway,
    PortableEdition,
    PortablePattern,
    PortablePhotograph,
    PortableWorkshop,
)
from webapp.records import MakerSettings
from webapp.storage import beads
from webapp.storage.database import Database
from webapp.storage.errors import NotFound
from webapp.storage.patterns import number_of
from webapp.storage.tables import (
    ColourwayRow,
    EditionBookletRow,
    EditionRow,
    PatternRow,
    PhotographRow,
    RevisionRow,
    SettingRow,
    WordsRow,
    WorkingRow,
)
from webapp.storage.workshop import own_kinds, own_sizes, swatches


@dataclass(frozen=True)
class InLibrary:
    """A booklet that is read when it is wanted; two of the same sum are the same."""

    sha256: str
    database: Database = field(compare=False, repr=False)
    key: tuple[int, int, str] = field(compare=False)

    def read(self) -> bytes:
        """Raises NotFound where it was removed meanwhile."""
        with self.database.reading() as session:
            row = session.get(EditionBookletRow, self.key)
            if row is None:
                raise NotFound(f"booklet “{self.key[-1]}”")
            return row.pdf


@dataclass(frozen=True)
class PictureInLibrary:
    """The photograph of a bead, read when it is wanted."""

    database: Database = field(compare=False, repr=False)
    bead: str

    def read(self) -> tuple[bytes, int, int]:
        """Raises NotFound where it was removed meanwhile."""
        return beads.picture(self.database, self.bead)


STANDS = func.coalesce(WorkingRow.document, RevisionRow.document)


def export_patterns(database: Database, numbers: Collection[int] | None = None) -> Iterator[PortablePattern]:
    """Every pattern that is not in the bin, or those of these numbers, one after the other, as of one moment."""
    asked = _standing(select(PatternRow, STANDS))
    if numbers is not None:
        asked = asked.where(col(PatternRow.id).in_(numbers))
    with database.reading() as session:
        more = {
            number
            for table in (WordsRow, PhotographRow, EditionRow, ColourwayRow)
            for number in session.exec(select(table.pattern).distinct())
        }
        for row, document in session.exec(asked.execution_options(yield_per=200)):
            yield _portable_pattern(database, session, row, document, number_of(row) in more)


def documents(database: Database) -> Iterator[str]:
    """The text of the pattern file of every pattern that is not in the bin, as it stands."""
    with database.reading() as session:
        yield from session.exec(_standing(select(STANDS).select_from(PatternRow)).execution_options(yield_per=200))


def export_workshop(database: Database) -> PortableWorkshop:
    """Settings, own bead kinds, swatches, finished sizes, and the cabinet."""
    own = [field.name for field in fields(MakerSettings)]  # not where backups lie, nor when the last was made
    with database.reading() as session:
        rows = session.exec(select(SettingRow).where(col(SettingRow.name).in_(own)).order_by(SettingRow.name))
        settings = {row.name: row.value for row in rows}
    return PortableWorkshop(
        settings=settings,
        kinds=own_kinds(database),
        swatches=tuple(kept.swatch for kept in swatches(database)),
        sizes=own_sizes(database),
        beads=tuple(
            PortableBead(kept.bead, kept.archived, PictureInLibrary(database, key) if kept.picture else None)
            for key, kept in beads.everything(database).items()
        ),
    )


def _standing(asked: Any) -> Any:
    """That of every pattern that is not in the bin, in order, with its document as it stands."""
    return (
        asked.join(
            RevisionRow,
            (col(RevisionRow.pattern) == col(PatternRow.id)) & (col(RevisionRow.number) == col(PatternRow.revision)),
        )
        .join(WorkingRow, col(WorkingRow.pattern) == col(PatternRow.id), isouter=True)
        .where(~col(PatternRow.binned))
        .order_by(col(PatternRow.id))
    )


def _portable_pattern(
    database: Database, session: Session, row: PatternRow, document: str, more: bool
) -> PortablePattern:
    number = number_of(row)
    words = session.exec(select(WordsRow).where(WordsRow.pattern == number).order_by(WordsRow.place)) if more else ()
    photographs = (
        session.exec(
            select(PhotographRow)
            .where(PhotographRow.pattern == number, PhotographRow.place > 0)
            .order_by(col(PhotographRow.place), col(PhotographRow.id))
        )
        if more
        else ()
    )
    return PortablePattern(
        document=document,
        made=_utc(row.made),
        changed=_utc(row.changed),
        series=row.series,
        difficulty=row.difficulty,
        beads=row.beads,
        words=tuple((of.place, of.text) for of in words),
        photographs=tuple(
            PortablePhotograph(
                caption=photograph.caption,
                seen=photograph.seen,
                width=photograph.width,
                height=photograph.height,
                jpeg=photograph.jpeg,
            )
            for photograph in photographs
        ),
        editions=_editions(database, session, number) if more else (),
        colourways=_colourways(session, number) if more else (),
    )


def _colourways(session: Session, number: int) -> tuple[PortableColourway, ...]:
    rows = session.exec(
        select(ColourwayRow)
        .where(ColourwayRow.pattern == number, ~col(ColourwayRow.removed))
        .order_by(col(ColourwayRow.id))
    )
    return tuple(PortableColourway(row.name, row.palette) for row in rows)


def _editions(database: Database, session: Session, number: int) -> tuple[PortableEdition, ...]:
    rows = session.exec(select(EditionRow).where(EditionRow.pattern == number).order_by(col(EditionRow.number))).all()
    return tuple(
        PortableEdition(
            number=row.number,
            published=row.published.replace(tzinfo=UTC),
            document=session.get_one(RevisionRow, (number, row.revision)).document,
            note=row.note,
            words=row.words,
            withdrawn=_utc(row.withdrawn),
            why=row.why,
            booklets=_booklets(database, session, row),
        )
        for row in rows
    )


def _booklets(database: Database, session: Session, edition: EditionRow) -> tuple[PortableBooklet, ...]:
    of = EditionBookletRow
    rows = session.exec(
        select(of.name, of.choices, of.pages, of.sha256)
        .where(of.pattern == edition.pattern, of.edition == edition.number)
        .order_by(of.name)
    )
    return tuple(
        PortableBooklet(name, choices, pages, InLibrary(sha256, database, (edition.pattern, edition.number, name)))
        for name, choices, pages, sha256 in rows
    )


def _utc(moment: datetime | None) -> datetime | None:
    return moment.replace(tzinfo=UTC) if moment else None
