"""Looks into a backup as strictly as into a zip: what every row holds, before anything of it stands in a library."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import fields
from datetime import datetime
from functools import partial
from math import isfinite
from pathlib import Path

from sqlalchemy import Boolean, Column, DateTime, Float, Integer, LargeBinary, Table

from engine.booklet.own import OwnWords
from engine.cabinet.bead import Bead
from engine.cabinet.colourways import Colourway
from engine.cabinet.earnings import Earning
from engine.errors import EngineError, shortened
from webapp.exchange import pattern_file
from webapp.storage.colourway_rows import palette_of
from webapp.storage.errors import Damaged
from webapp.storage.library_file import opened
from webapp.storage.tables import SQLModel
from webapp.storage.workshop import read_settings

YEARS = range(1900, 3000)  # beyond these the days of a time zone run out of the calendar
DOCUMENTS = ("revision", "working", "piece", "kept_answer")
LEAST_MEASURE, LARGEST_MEASURE = 0.01, 10_000


def check_contents(path: Path) -> None:
    """Raises Damaged, naming the place, for a value that no library of this program can hold."""
    try:
        with opened(path) as connection:
            for place in _wrong_places(connection):
                raise Damaged(f"{path} cannot be put in the place of the library: {place}.")
    except sqlite3.Error as error:
        raise Damaged(f"{path} cannot be read through: {shortened(error, 120)}.") from None


def _wrong_places(connection: sqlite3.Connection) -> Iterator[str]:
    yield from _wrong_values(connection)
    yield from _wrong_documents(connection)
    yield from _wrong_settings(connection)
    yield from _wrong_words(connection)
    yield from _wrong_measures(connection)
    yield from _wrong_cabinet(connection)


def _wrong_values(connection: sqlite3.Connection) -> Iterator[str]:
    for table in SQLModel.metadata.sorted_tables:
        columns = _columns(connection, table)
        if columns:
            yield from _wrong_rows(connection, table.name, columns)


def _columns(connection: sqlite3.Connection, table: Table) -> list[Column[object]]:
    """Those of the table that the file has; an earlier schema has fewer."""
    present = {row[1] for row in connection.execute(f'PRAGMA table_info("{table.name}")')}
    return [column for column in table.columns if column.name in present]


def _wrong_rows(connection: sqlite3.Connection, table: str, columns: list[Column[object]]) -> Iterator[str]:
    wanted = ", ".join(_wanted(column) for column in columns)
    checks = [_check_of(column) for column in columns]
    for row in connection.execute(f'SELECT rowid, {wanted} FROM "{table}"'):
        for column, check, value in zip(columns, checks, row[1:], strict=True):
            empty = value is None and column.nullable
            if not empty and not check(value):
                yield f"row {row[0]} of “{table}” has no sound “{column.name}”"


def _wanted(column: Column[object]) -> str:
    """Of bytes only that they are bytes: booklets are large."""
    return f'typeof("{column.name}")' if isinstance(column.type, LargeBinary) else f'"{column.name}"'


def _check_of(column: Column[object]) -> Callable[[object], bool]:
    kind = getattr(column.type, "impl", column.type)
    if isinstance(kind, LargeBinary):
        return lambda value: value == "blob"
    if isinstance(kind, DateTime):
        return _is_date
    if isinstance(kind, Boolean):
        return lambda value: value in (0, 1)
    if isinstance(kind, Float):
        return lambda value: isinstance(value, int | float) and isfinite(value)
    if isinstance(kind, Integer):
        return lambda value: isinstance(value, int)
    return lambda value: isinstance(value, str)


def _is_date(value: object) -> bool:
    with suppress(TypeError, ValueError):
        return isinstance(value, str) and datetime.fromisoformat(value).year in YEARS
    return False


def _wrong_documents(connection: sqlite3.Connection) -> Iterator[str]:
    for table in filter(partial(_has, connection), DOCUMENTS):
        for pattern, document in connection.execute(f"SELECT pattern, document FROM {table}"):
            try:
                pattern_file.read(document)
            except EngineError as error:
                yield f"a state of pattern {pattern} is no pattern file ({error.message})"


def _wrong_settings(connection: sqlite3.Connection) -> Iterator[str]:
    kept = dict(connection.execute("SELECT name, value FROM setting").fetchall())
    try:
        read_settings(kept)
    except ValueError:
        yield "a setting that should be a measure is none"


def _wrong_words(connection: sqlite3.Connection) -> Iterator[str]:
    """Own words that no page could show again, and those of editions that are no object."""
    if _has(connection, "words"):
        for pattern, place, text in connection.execute("SELECT pattern, place, text FROM words"):
            try:
                OwnWords(((place, text),))
            except EngineError as error:
                yield f"the words beside pattern {pattern} cannot be kept ({error.message})"
    if _has(connection, "edition"):
        for pattern, number, words in connection.execute("SELECT pattern, number, words FROM edition"):
            if not _is_object(words):
                yield f"the words of edition {number} of pattern {pattern} are not as this program keeps them"


def _wrong_measures(connection: sqlite3.Connection) -> Iterator[str]:
    for name, *measures in connection.execute(
        "SELECT name, diameter_mm, length_mm, hole_mm, per_gram, working_mm FROM kind"
    ):
        if not all(LEAST_MEASURE <= measure < LARGEST_MEASURE for measure in measures):
            yield f"the bead kind “{shortened(name)}” has no sound measures"
    for kind, measure in connection.execute("SELECT kind, length_mm FROM swatch"):
        if not LEAST_MEASURE <= measure < LARGEST_MEASURE * 10:
            yield f"a swatch of “{shortened(kind)}” has no sound measures"


def _wrong_cabinet(connection: sqlite3.Connection) -> Iterator[str]:
    """Beads, colourways, pieces made and earnings that no page could show."""
    if not _has(connection, "bead"):
        return
    names = tuple(field.name for field in fields(Bead))
    for row in connection.execute(f"SELECT {', '.join(names)} FROM bead"):
        if error := _objection(lambda row=row: Bead(**dict(zip(names, row, strict=True)))):  # type: ignore[misc]
            yield f"the bead “{shortened(row[0])}” cannot be kept ({error})"
    for number, name, palette in connection.execute("SELECT id, name, palette FROM colourway"):
        if error := _objection(lambda name=name, palette=palette: Colourway(name, palette_of(palette))):  # type: ignore[misc]
            yield f"colourway {number} is none ({error})"
    for number, taken in connection.execute("SELECT id, taken FROM made"):
        if not _is_object(taken):
            yield f"what piece {number} took off the stock is not as this program keeps it"
    of_earning = tuple(field.name for field in fields(Earning))
    for row in connection.execute(f"SELECT {', '.join(of_earning)} FROM earning"):
        if error := _objection(lambda row=row: Earning(**dict(zip(of_earning, row, strict=True)))):  # type: ignore[misc]
            yield f"a note of what was earned cannot be kept ({error})"


def _objection(make: Callable[[], object]) -> str:
    """What the engine says against a value; empty where it says nothing."""
    try:
        make()
    except EngineError as error:
        return error.message
    return ""


def _has(connection: sqlite3.Connection, table: str) -> bool:
    """An earlier schema has fewer tables."""
    return bool(connection.execute("SELECT 1 FROM sqlite_master WHERE name = ?", (table,)).fetchone())


def _is_object(text: str) -> bool:
    with suppress(ValueError, RecursionError):
        return not text or isinstance(json.loads(text), dict)
    return False
