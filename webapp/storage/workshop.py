"""The maker's own numbers: swatches, bead kinds and settings."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import Field, asdict, fields
from datetime import datetime
from typing import Any

from sqlalchemy import delete, func
from sqlmodel import col, select

from engine.counting.closures import usual_allowances
from engine.counting.finished import USUAL, named, ring_question
from engine.counting.kinds import KINDS, Kind
from engine.counting.questions import NamedSize, Question
from engine.counting.rope import Swatch
from engine.counting.workshop import Workshop
from webapp.records import KeptSwatch, MakerSettings
from webapp.storage.database import Database
from webapp.storage.errors import NotFound
from webapp.storage.library_file import BACKUP_NOTE
from webapp.storage.tables import FinishedRow, KindRow, PatternRow, PickedRow, SettingRow, SwatchRow

OVER_HAND = "hand"  # the closure of a ring that goes over a hand of its girth


def workshop(database: Database, pattern: int | None = None) -> Workshop:
    """Everything of the maker's own that a sum may use; with a pattern, the finished sizes picked for its tables."""
    kept = settings(database)
    return Workshop(
        kinds=kinds(database),
        swatches=tuple(kept.swatch for kept in swatches(database)),
        allowances=kept.allowances,
        longest_mm=kept.longest_m * 1000 or None,
        heaviest_g=kept.heaviest_g or None,
        sizes=named(picked(database, pattern), own=own_sizes(database)) if pattern is not None else (),
    )


def settings(database: Database) -> MakerSettings:
    """The maker's settings; what was never set is at its default."""
    with database.reading() as session:
        return read_settings({row.name: row.value for row in session.exec(select(SettingRow))})


def read_settings(kept: Mapping[str, str]) -> MakerSettings:
    """The settings from the texts under which they are kept. Raises ValueError for a measure that is none."""
    known: dict[str, Any] = {
        field.name: _read_setting(field, kept[field.name]) for field in fields(MakerSettings) if field.name in kept
    }
    allowances = {key: float(kept.get(f"{key}_mm", mm)) for key, mm in usual_allowances().items()}
    return MakerSettings(**known, allowances=allowances)


def save_settings(database: Database, given: MakerSettings) -> None:
    """Keeps all of the maker's settings."""
    values = asdict(given)
    allowances = {f"{key}_mm": mm for key, mm in values.pop("allowances").items()}
    with database.writing() as session:
        for name, value in {**values, **allowances}.items():
            session.merge(SettingRow(name=name, value=str(value)))


def last_backup(database: Database) -> datetime | None:
    """When the last backup was made, in UTC."""
    with database.reading() as session:
        row = session.get(SettingRow, BACKUP_NOTE)
    return datetime.fromisoformat(row.value) if row else None


def note_backup(database: Database, made: datetime) -> None:
    """Notes that a backup was made and checked."""
    with database.writing() as session:
        session.merge(SettingRow(name=BACKUP_NOTE, value=made.isoformat()))


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


def remove_swatch(database: Database, number: int) -> Swatch:
    """Removes a swatch and gives it. Raises NotFound."""
    with database.writing() as session:
        row = session.get(SwatchRow, number) if 0 < number < 2**63 else None
        if row is None:
            raise NotFound("such swatch")
        session.delete(row)
        return Swatch(**row.model_dump(exclude={"id"}))


def add_kind(database: Database, kind: Kind) -> None:
    """Keeps a bead kind of the maker's own; one of the same name takes its place."""
    with database.writing() as session:
        session.merge(KindRow(**asdict(kind)))


def own_kinds(database: Database) -> tuple[Kind, ...]:
    """The maker's own bead kinds by name."""
    with database.reading() as session:
        return tuple(Kind(**row.model_dump()) for row in session.exec(select(KindRow).order_by(KindRow.name)))


def kind_uses(database: Database, names: Iterable[str]) -> dict[str, int]:
    """How many patterns that are not in the bin use the bead kinds of those names; a kind may be gone."""
    kinds = "\n" + col(PatternRow.kinds) + "\n"
    with database.reading() as session:
        return {
            name: session.exec(
                select(func.count()).where(func.instr(kinds, f"\n{name}\n") > 0, ~col(PatternRow.binned))
            ).one()
            for name in names
        }


def remove_kind(database: Database, name: str) -> Kind:
    """Removes a kind of the maker's own and gives it. Raises NotFound."""
    with database.writing() as session:
        row = session.get(KindRow, name)
        if row is None:
            raise NotFound("such bead kind")
        session.delete(row)
        return Kind(**row.model_dump())


def own_sizes(database: Database) -> tuple[NamedSize, ...]:
    """The maker's own finished sizes by name."""
    with database.reading() as session:
        return tuple(_own_size(row) for row in session.exec(select(FinishedRow).order_by(FinishedRow.name)))


def add_size(database: Database, size: NamedSize) -> None:
    """Keeps a finished size of the maker's own; one of the same name takes its place."""
    with database.writing() as session:
        session.merge(size_row(size))


def remove_size(database: Database, name: str) -> NamedSize:
    """Removes a finished size of the maker's own and gives it. Raises NotFound."""
    with database.writing() as session:
        row = session.get(FinishedRow, name)
        if row is None:
            raise NotFound("such size")
        session.delete(row)
        return _own_size(row)


def picked(database: Database, pattern: int) -> tuple[str, ...]:
    """Keys of the finished sizes picked for a pattern's tables, in their order; the usual ones where none are."""
    with database.reading() as session:
        rows = session.exec(select(PickedRow).where(PickedRow.pattern == pattern).order_by(col(PickedRow.place)))
        return tuple(row.key for row in rows) or USUAL


def pick(database: Database, pattern: int, keys: Iterable[str]) -> None:
    """Picks the finished sizes for a pattern's tables; none means the usual ones."""
    with database.writing() as session:
        session.exec(delete(PickedRow).where(col(PickedRow.pattern) == pattern))
        for place, key in enumerate(dict.fromkeys(keys)):
            session.add(PickedRow(pattern=pattern, key=key, place=place))


def size_row(size: NamedSize) -> FinishedRow:
    """The row of a finished size; part of a larger change."""
    asked = size.question
    return FinishedRow(
        name=size.name,
        closure=OVER_HAND if asked.over_hand else asked.closure,
        length_mm=asked.length_mm or 0.0,
        wrist_mm=asked.wrist_mm or 0.0,
        ease_mm=asked.ease_mm or 0.0,
    )


def _read_setting(field: Field[Any], text: str) -> str | float:
    """A setting as it was kept: the measures are numbers, everything else is text."""
    return float(text) if isinstance(field.default, float) else text


def _own_size(row: FinishedRow) -> NamedSize:
    if row.closure == OVER_HAND:
        return NamedSize("Own", row.name, ring_question(Question(), row.length_mm, None))
    question = Question(
        row.length_mm or None, row.closure, wrist_mm=row.wrist_mm or None, ease_mm=row.ease_mm if row.wrist_mm else None
    )
    return NamedSize("Own", row.name, question)
