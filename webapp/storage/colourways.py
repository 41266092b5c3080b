"""The colourways of a pattern: kept, changed, removed and taken back; codes and symbols given out anew."""

from __future__ import annotations

from dataclasses import replace

from sqlmodel import Session, col, select

from engine.cabinet.colourways import MOST_COLOURWAYS, Colourway, check_name_free
from engine.pattern.palette import Palette
from webapp.records import KeptColourway
from webapp.storage.colourway_rows import colourway_of, palette_text
from webapp.storage.database import Database
from webapp.storage.errors import NotFound, Rejected, Stale
from webapp.storage.patterns import row_of
from webapp.storage.revisions import put_revision, standing_in
from webapp.storage.tables import ColourwayRow, PatternRow


def of(database: Database, pattern: int) -> tuple[KeptColourway, ...]:
    """The colourways of a pattern in the order in which they were made, without those that were removed."""
    with database.reading() as session:
        return tuple(kept for kept in _kept(session, pattern) if not kept.removed)


def load(database: Database, pattern: int, number: int) -> KeptColourway:
    """That colourway of a pattern, also one that was removed. Raises NotFound."""
    with database.reading() as session:
        return _of_row(_row(session, pattern, number))


def add(database: Database, pattern: int, colourway: Colourway) -> int:
    """Keeps a new colourway and gives its number. Raises NotFound, Rejected, or PatternError for its name."""
    with database.writing() as session:
        row_of(session, pattern)
        return put(session, pattern, colourway)


def put(session: Session, pattern: int, colourway: Colourway) -> int:
    """Keeps a new colourway; part of a larger change. Raises Rejected, or PatternError for its name."""
    others = [kept.colourway for kept in _kept(session, pattern) if not kept.removed]
    _check_room(len(others))
    check_name_free(colourway.name, others)
    row = ColourwayRow(pattern=pattern, name=colourway.name, palette=palette_text(colourway.palette))
    session.add(row)
    session.flush()
    return row.id or 0


def copy_all(database: Database, original: int, copy: int) -> None:
    """Gives a copy of a pattern the colourways of its original. Raises Rejected where it has too many."""
    kept = of(database, original)
    with database.writing() as session:
        for one in kept:
            put(session, copy, one.colourway)


def save(database: Database, pattern: int, number: int, colourway: Colourway) -> None:
    """Keeps what was changed of a colourway. Raises NotFound, or PatternError for its name."""
    with database.writing() as session:
        row = _row(session, pattern, number)
        check_name_free(
            colourway.name,
            [kept.colourway for kept in _kept(session, pattern) if not kept.removed and kept.id != number],
        )
        row.name, row.palette = colourway.name, palette_text(colourway.palette)
        session.add(row)


def remove(database: Database, pattern: int, number: int) -> None:
    """Removes a colourway, which can be taken back; one removed before goes for good. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, pattern, number)
        for before in _rows(session, pattern):
            if before.removed and before.id != number:
                session.delete(before)
        row.removed = True
        session.add(row)


def take_back(database: Database, pattern: int, number: int) -> None:
    """Takes a colourway back that was removed. Raises NotFound, Rejected, or PatternError for its name."""
    with database.writing() as session:
        row = _row(session, pattern, number)
        others = [kept.colourway for kept in _kept(session, pattern) if not kept.removed and kept.id != number]
        _check_room(len(others))
        check_name_free(row.name, others)
        row.removed = False
        session.add(row)


def recode(database: Database, pattern: int, palette: Palette, made_from: int) -> None:
    """Makes a palette with other codes and symbols a new revision; its colourways go along, code by code.

    Raises NotFound, or Stale when `made_from` is not how often the pattern was written; then nothing is changed.
    """
    with database.writing() as session:
        row = row_of(session, pattern)
        if made_from != row.sequence:
            raise Stale("The pattern has been changed since; nothing was changed now. Look again.", "sequence")
        standing = standing_in(session, row)
        codes = dict(zip(standing.palette.codes, palette.codes, strict=True))
        put_revision(session, row, replace(standing, palette=palette), database, "Codes and symbols given out anew")
        _recode_colourways(session, row, codes)


def _recode_colourways(session: Session, row: PatternRow, codes: dict[str, str]) -> None:
    for kept in _rows(session, row.id or 0):
        own = colourway_of(kept).palette
        entries = tuple(replace(entry, code=codes[entry.code]) for entry in own if entry.code in codes)
        if entries:
            kept.palette = palette_text(Palette(entries))
            session.add(kept)


def _check_room(many: int) -> None:
    if many >= MOST_COLOURWAYS:
        raise Rejected(f"A pattern has at most {MOST_COLOURWAYS} colourways; nothing was added.", "name")


def _kept(session: Session, pattern: int) -> tuple[KeptColourway, ...]:
    return tuple(_of_row(row) for row in _rows(session, pattern))


def _rows(session: Session, pattern: int) -> list[ColourwayRow]:
    return list(
        session.exec(select(ColourwayRow).where(ColourwayRow.pattern == pattern).order_by(col(ColourwayRow.id)))
    )


def _row(session: Session, pattern: int, number: int) -> ColourwayRow:
    row = session.get(ColourwayRow, number) if 0 < number < 2**63 else None
    if row is None or row.pattern != pattern:
        raise NotFound("such colourway of this pattern")
    return row


def _of_row(row: ColourwayRow) -> KeptColourway:
    return KeptColourway(row.id or 0, row.pattern, colourway_of(row), row.removed)
