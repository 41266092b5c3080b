"""The schema is brought up to date after a copy, and a file from a newer program is left alone."""

import sqlite3
from contextlib import closing

import pytest

from webapp.storage import upgrade
from webapp.storage.database import LIBRARY
from webapp.storage.errors import LibraryError
from webapp.storage.library import open_library


def test_a_new_library_has_the_newest_schema_and_needs_no_copy(database):
    assert upgrade.revision_of(database) == upgrade.newest_revision()
    assert not (database.folder / upgrade.COPIES).exists()


def test_the_file_is_copied_before_a_migration(database, monkeypatch, pattern):
    from webapp.storage import patterns

    patterns.create(database, pattern)
    monkeypatch.setattr(upgrade, "newest_revision", lambda: "0002")
    upgrade.upgrade(database)
    copy = database.folder / upgrade.COPIES / "before-0002-from-0001.sqlite"
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
