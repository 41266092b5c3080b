"""The schema is brought up to date after a copy, and a file from a newer program is left alone."""

import gzip
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from webapp.storage import patterns, upgrade, workshop
from webapp.storage.database import LIBRARY
from webapp.storage.errors import LibraryError
from webapp.storage.library import open_library

SCHEMAS = Path(__file__).parent / "schemas"


def test_a_new_library_has_the_newest_schema_and_needs_no_copy(database):
    assert upgrade.revision_of(database) == upgrade.newest_revision()
    assert not (database.folder / upgrade.COPIES).exists()


def test_the_file_is_copied_before_a_migration(database, monkeypatch, pattern):
    patterns.create(database, pattern)
    present = upgrade.newest_revision()
    monkeypatch.setattr(upgrade, "newest_revision", lambda: "9998")
    upgrade.upgrade(database)
    copy = database.folder / upgrade.COPIES / f"before-9998-from-{present}.sqlite"
    with closing(sqlite3.connect(copy)) as opened:
        assert opened.execute("SELECT title FROM pattern").fetchall() == [("Small harbour",)]


def test_a_file_from_a_newer_program_is_refused_in_words_and_left_alone(database, tmp_path):
    with database.writing() as session:
        session.connection().exec_driver_sql("UPDATE alembic_version SET version_num = '9999'")
    database.close()
    before = (database.folder / LIBRARY).read_bytes()
    with pytest.raises(LibraryError, match=r"was written by a newer Ropewright \(schema 9999\); it is left as it is"):
        open_library(database.folder)
    assert (database.folder / LIBRARY).read_bytes() == before


def test_a_library_of_the_first_schema_keeps_everything_and_gains_sizes(tmp_path):
    folder = tmp_path / "data"
    folder.mkdir()
    (folder / LIBRARY).write_bytes(gzip.decompress((SCHEMAS / "0001.sqlite.gz").read_bytes()))
    before = rows(folder / LIBRARY)
    library = open_library(folder)
    try:
        assert rows(folder / LIBRARY) == before
        assert upgrade.revision_of(library) == upgrade.newest_revision()
        assert rows(folder / upgrade.COPIES / f"before-{upgrade.newest_revision()}-from-0001.sqlite") == before
        assert workshop.settings(library).maker == "Lantern Street Beads"
        assert [kept.swatch.beads for kept in workshop.swatches(library)] == [480]
        assert patterns.load(library, 1).pattern.title == "Meadow Path"
        workshop.pick(library, 1, ("choker",))
        assert [size.name for size in workshop.workshop(library, 1).sizes] == ["Choker"]
    finally:
        library.close()


def rows(path):
    """Every row of the tables of the first schema."""
    with closing(sqlite3.connect(path)) as opened:
        return {table: opened.execute(f"SELECT * FROM {table} ORDER BY 1, 2").fetchall()
                for table in ("pattern", "tag", "revision", "working", "kind", "swatch", "setting")}
