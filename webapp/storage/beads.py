"""The beads of the cabinet: kept, changed, archived, with their pictures; unpublished patterns follow a change."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, replace
from hashlib import sha256
from uuid import uuid4

from sqlalchemy import func
from sqlmodel import Session, col, select

from engine.cabinet.bead import MOST_MG, Bead
from engine.cabinet.nearness import by_hue
from webapp.records import BeadPicture, KeptBead
from webapp.storage.database import Database
from webapp.storage.errors import NotFound, Rejected
from webapp.storage.following import follow
from webapp.storage.tables import BeadPictureRow, BeadRow, PatternRow, UsedBeadRow

MOST_BEADS = 20_000
FIELDS = tuple(name for name in BeadRow.model_fields if name not in ("archived", "picture"))


def everything(database: Database) -> Mapping[str, KeptBead]:
    """Every bead by its key, the archived among them; kept until the library changes."""
    return database.remembered.get("beads", lambda: _everything(database))


def cabinet(database: Database) -> tuple[Bead, ...]:
    """The beads that are not archived, in the order of their hues."""
    return shelf(database)


def shelf(database: Database, archived: bool = False) -> tuple[Bead, ...]:
    """The beads that are archived, or all others, in the order of their hues."""
    return database.remembered.get(
        f"shelf {archived}",
        lambda: by_hue([kept.bead for kept in everything(database).values() if kept.archived == archived]),
    )


def by_key(database: Database) -> Mapping[str, Bead]:
    """Every bead by its key, the archived among them."""
    return database.remembered.get(
        "beads by key", lambda: {key: kept.bead for key, kept in everything(database).items()}
    )


def load(database: Database, key: str) -> KeptBead:
    """That bead. Raises NotFound."""
    kept = everything(database).get(key)
    if kept is None:
        raise NotFound("such bead in the cabinet")
    return kept


def add(database: Database, bead: Bead) -> str:
    """Keeps a new bead and gives its key. Raises Rejected."""
    with database.writing() as session:
        return put(session, bead)


def put(session: Session, bead: Bead) -> str:
    """Keeps a new bead under its key, or a new one; part of a larger change. Raises Rejected."""
    if session.exec(select(func.count()).select_from(BeadRow)).one() >= MOST_BEADS:
        raise Rejected(f"The cabinet holds {MOST_BEADS:,} beads, the most that are kept; nothing was added.")
    key = bead.key or uuid4().hex[:16]
    session.add(BeadRow(**asdict(replace(bead, key=key))))
    session.flush()
    return key


def save(database: Database, bead: Bead) -> int:
    """Keeps what was changed of the bead of that key; how many patterns followed. Raises NotFound."""
    with database.writing() as session:
        return _change(session, database, bead)


def save_all(database: Database, changed: Iterable[Bead], new: Iterable[Bead]) -> tuple[str, ...]:
    """Keeps all of these or none; the keys of the new ones. Raises NotFound or Rejected."""
    with database.writing() as session:
        for bead in changed:
            _change(session, database, bead)
        return tuple(put(session, bead) for bead in new)


def archive(database: Database, key: str, archived: bool = True) -> None:
    """Puts a bead away, or takes it back; patterns that use it keep it. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, key)
        row.archived = archived
        session.add(row)


def remove(database: Database, key: str) -> None:
    """Removes an archived bead for good that no pattern points at. Raises NotFound, or Rejected where one does."""
    with database.writing() as session:
        row = _row(session, key)
        if not row.archived or session.exec(select(UsedBeadRow).where(UsedBeadRow.bead == key)).first():
            raise Rejected("Only an archived bead that no pattern uses can be removed for good.")
        session.delete(row)


def uses(database: Database) -> Mapping[str, int]:
    """How many patterns that are not in the bin use each bead that some pattern points at."""
    return database.remembered.get("bead uses", lambda: _uses(database))


def patterns_of(database: Database, key: str, most: int = 50) -> tuple[tuple[int, str], ...]:
    """Number and title of patterns that are not in the bin and use that bead, the last changed first."""
    asked = (
        select(PatternRow.id, PatternRow.title)
        .join(UsedBeadRow, col(PatternRow.id) == col(UsedBeadRow.pattern))
        .where(UsedBeadRow.bead == key, ~col(PatternRow.binned))
        .order_by(col(PatternRow.changed).desc())
        .limit(most)
    )
    with database.reading() as session:
        return tuple((number or 0, title) for number, title in session.exec(asked))


def linked_patterns(database: Database, page: int, per_page: int) -> tuple[tuple[int, ...], int]:
    """Numbers of patterns that are not in the bin and point at some bead, the last changed first; and how many."""
    pointing = select(UsedBeadRow.pattern)
    asked = select(PatternRow.id).where(col(PatternRow.id).in_(pointing), ~col(PatternRow.binned))
    ordered = asked.order_by(col(PatternRow.changed).desc(), col(PatternRow.id).desc())
    with database.reading() as session:
        total = session.exec(select(func.count()).select_from(asked.subquery())).one()
        listed = session.exec(ordered.offset((page - 1) * per_page).limit(per_page))
        return tuple(number or 0 for number in listed), total


def picture(database: Database, key: str) -> BeadPicture:
    """The picture of a bead. Raises NotFound."""
    with database.reading() as session:
        row = session.get(BeadPictureRow, key)
        if row is None:
            raise NotFound("picture of this bead")
        return BeadPicture(row.jpeg, row.width, row.height)


def set_picture(database: Database, key: str, made: BeadPicture) -> None:
    """Keeps the picture of a bead in the place of the one before. Raises NotFound."""
    with database.writing() as session:
        put_picture(session, key, made)


def put_picture(session: Session, key: str, made: BeadPicture) -> None:
    """Keeps the picture of a bead; part of a larger change. Raises NotFound."""
    row = _row(session, key)
    row.picture = sha256(made.jpeg).hexdigest()[:16]
    session.add(row)
    session.merge(BeadPictureRow(bead=key, width=made.width, height=made.height, jpeg=made.jpeg))


def remove_picture(database: Database, key: str) -> None:
    """Removes the picture of a bead. Raises NotFound."""
    with database.writing() as session:
        row = _row(session, key)
        row.picture = ""
        session.add(row)
        if kept := session.get(BeadPictureRow, key):
            session.delete(kept)


def restock(database: Database, packs: Mapping[str, int]) -> None:
    """Puts so many packs of each bead into the stock; a negative number takes them out, as far as it goes.

    Raises NotFound, or Rejected for a bead of which no pack is known, and for more than can be in stock; then nothing
    is changed.
    """
    with database.writing() as session:
        for key, number in packs.items():
            row = _row(session, key)
            if not row.pack_mg:
                raise Rejected(f"It is not known what a pack of {row.name} holds; say so first.", "packs")
            row.stock_mg = max(0, row.stock_mg + number * row.pack_mg)
            if row.stock_mg > MOST_MG:
                raise Rejected(f"That would be more of {row.name} than can be in stock; nothing was changed.", "packs")
            session.add(row)


def take_off(session: Session, taken: Mapping[str, int]) -> dict[str, int]:
    """Takes milligrams off the stock, by key, as far as it goes; what was taken. Part of a larger change."""
    off = {}
    for key, mg in taken.items():
        row = _row(session, key)
        off[key] = min(mg, row.stock_mg)
        row.stock_mg -= off[key]
        session.add(row)
    return off


def put_back(session: Session, taken: Mapping[str, int]) -> None:
    """Puts milligrams back that were taken off; beads that are gone are passed over. Part of a larger change."""
    for key, mg in taken.items():
        if row := session.get(BeadRow, key):
            row.stock_mg += mg
            session.add(row)


def _uses(database: Database) -> Mapping[str, int]:
    counted = (
        select(UsedBeadRow.bead, func.count())
        .join(PatternRow, col(PatternRow.id) == col(UsedBeadRow.pattern))
        .where(~col(PatternRow.binned))
        .group_by(col(UsedBeadRow.bead))
    )
    with database.reading() as session:
        return dict(session.exec(counted).all())


def _change(session: Session, database: Database, bead: Bead) -> int:
    row = _row(session, bead.key)
    before = _bead(row)
    for name in FIELDS:
        setattr(row, name, getattr(bead, name))
    session.add(row)
    return follow(session, database, before, bead)


def _everything(database: Database) -> Mapping[str, KeptBead]:
    names: Sequence[str] = (*FIELDS, "archived", "picture")
    with database.reading() as session:
        rows = session.connection().execute(
            select(*(getattr(BeadRow, name) for name in names)).order_by(col(BeadRow.name), col(BeadRow.key))
        )
        return {
            row.key: KeptBead(Bead(**{name: getattr(row, name) for name in FIELDS}), row.archived, row.picture)
            for row in rows
        }


def _bead(row: BeadRow) -> Bead:
    return Bead(**{name: getattr(row, name) for name in FIELDS})


def _row(session: Session, key: str) -> BeadRow:
    row = session.get(BeadRow, key)
    if row is None:
        raise NotFound("such bead in the cabinet")
    return row
