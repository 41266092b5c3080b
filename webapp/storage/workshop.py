"""The maker's own numbers: swatches, bead kinds and settings."""

from __future__ import annotations

from dataclasses import asdict, fields, replace
from datetime import datetime

from sqlalchemy import delete
from sqlmodel import col, select

from engine.counting.kinds import KINDS, Kind
from engine.counting.rope import Swatch
from engine.counting.sizes import Workshop
from webapp.records import KeptSwatch, MakerSettings
from webapp.storage.database import Database
from webapp.storage.errors import NotFound
from webapp.storage.tables import KindRow, SettingRow, SwatchRow

BACKUP = "last backup"


def workshop(database: Database) -> Workshop:
    """Everything of the maker's own that a sum may use."""
    kept = settings(database)
    return Workshop(kinds(database), tuple(kept.swatch for kept in swatches(database)), kept.clasp_mm, kept.glued_mm)


def settings(database: Database) -> MakerSettings:
    """The maker's settings; what was never set is at its default."""
    with database.reading() as session:
        kept = {row.name: row.value for row in session.exec(select(SettingRow))}
    default = MakerSettings()
    known = {field.name: type(getattr(default, field.name))(kept[field.name])
             for field in fields(default) if field.name in kept}
    return replace(default, **known)


def save_settings(database: Database, given: MakerSettings) -> None:
    """Keeps all of the maker's settings."""
    with database.writing() as session:
        for name, value in asdict(given).items():
            session.merge(SettingRow(name=name, value=str(value)))


def last_backup(database: Database) -> datetime | None:
    """When the last backup was made, in UTC."""
    with database.reading() as session:
        row = session.get(SettingRow, BACKUP)
    return datetime.fromisoformat(row.value) if row else None


def note_backup(database: Database) -> None:
    """Notes that a backup was made now."""
    with database.writing() as session:
        session.merge(SettingRow(name=BACKUP, value=database.now().isoformat()))


def kinds(database: Database) -> dict[str, Kind]:
    """Built-in bead kinds and those of the maker's own, which come last and win."""
    with database.reading() as session:
        own = {row.name: Kind(**row.model_dump()) for row in session.exec(select(KindRow).order_by(KindRow.name))}
    return {**KINDS, **own}


def swatches(database: Database) -> tuple[KeptSwatch, ...]:
    """The kept swatches, the newest first."""
    with database.reading() as session:
        rows = session.exec(select(SwatchRow).order_by(col(SwatchRow.date).desc(), col(SwatchRow.id).desc()))
        return tuple(KeptSwatch(row.id or 0, Swatch(**row.model_dump(exclude={"id"}))) for row in rows)


def add_swatch(database: Database, swatch: Swatch) -> None:
    """Keeps a swatch."""
    with database.writing() as session:
        session.add(SwatchRow(**asdict(swatch)))


def remove_swatch(database: Database, number: int) -> None:
    """Removes a swatch. Raises NotFound."""
    with database.writing() as session:
        if not session.exec(delete(SwatchRow).where(col(SwatchRow.id) == number)).rowcount:
            raise NotFound("such swatch")
