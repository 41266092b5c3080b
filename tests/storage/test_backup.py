"""A backup is a checked copy; restoring one keeps the present library aside."""

import sqlite3
from contextlib import closing
from datetime import datetime

import pytest

from webapp.storage import backup, finding, patterns
from webapp.storage.database import LIBRARY
from webapp.storage.errors import LibraryError
from webapp.storage.library import open_library

NOW = datetime(2026, 3, 1, 12, 30)


def test_a_backup_taken_while_the_library_is_open_holds_everything(database, pattern, tmp_path):
    patterns.create(database, pattern)
    backup.write(database.path, tmp_path / "copy.sqlite")
    with closing(sqlite3.connect(tmp_path / "copy.sqlite")) as copy:
        assert copy.execute("SELECT title FROM pattern").fetchall() == [("Small harbour",)]


def test_restoring_brings_back_the_patterns_and_keeps_the_present_library_aside(database, pattern, tmp_path):
    first = patterns.create(database, pattern)
    backup.write(database.path, tmp_path / "copy.sqlite")
    patterns.put_into_bin(database, first.id)
    patterns.empty_bin(database)
    database.close()
    aside = backup.restore(database.folder, tmp_path / "copy.sqlite", NOW)
    restored = open_library(database.folder)
    assert patterns.load(restored, first.id).pattern == pattern
    restored.close()
    assert aside == database.folder / "copies" / "before-restore-2026-03-01-123000.sqlite"
    with closing(sqlite3.connect(aside)) as copy:
        assert copy.execute("SELECT count(*) FROM pattern").fetchone() == (0,)
    assert sorted(path.name for path in database.folder.iterdir()) == ["copies", LIBRARY]


def test_a_backup_is_restored_into_an_empty_folder(database, pattern, tmp_path):
    patterns.create(database, pattern)
    backup.write(database.path, tmp_path / "copy.sqlite")
    assert backup.restore(tmp_path / "other", tmp_path / "copy.sqlite", NOW) is None
    restored = open_library(tmp_path / "other")
    assert finding.find(restored).total == 1
    restored.close()


def test_what_is_no_library_is_not_restored_and_nothing_is_changed(database, pattern, tmp_path):
    patterns.create(database, pattern)
    database.close()
    (tmp_path / "text.sqlite").write_text("not a database at all " * 99)
    with closing(sqlite3.connect(tmp_path / "other.sqlite")) as other:
        other.execute("CREATE TABLE stamps (id)")
        other.commit()
    for name, sentence in (
        ("text.sqlite", "is not a library"),
        ("other.sqlite", "is not a library"),
        ("none", "There is no file"),
    ):
        with pytest.raises(LibraryError, match=sentence):
            backup.restore(database.folder, tmp_path / name, NOW)
    reopened = open_library(database.folder)
    assert finding.find(reopened).total == 1
    reopened.close()


def test_a_damaged_backup_is_found(database, pattern, tmp_path):
    for _ in range(40):
        patterns.create(database, pattern)
    copy = tmp_path / "copy.sqlite"
    backup.write(database.path, copy)
    data = bytearray(copy.read_bytes())
    data[8192:8300] = bytes(108)
    copy.write_bytes(data)
    with pytest.raises(LibraryError, match=r"is damaged|is not a library"):
        backup.check(copy)


def test_a_backup_from_a_newer_program_is_refused_and_nothing_is_changed(database, pattern, tmp_path):
    patterns.create(database, pattern)
    backup.write(database.path, tmp_path / "copy.sqlite")
    database.close()
    with closing(sqlite3.connect(tmp_path / "copy.sqlite")) as copy:
        copy.execute("UPDATE alembic_version SET version_num = '9999'")
        copy.commit()
    with pytest.raises(LibraryError, match="newer Ropewright"):
        backup.restore(database.folder, tmp_path / "copy.sqlite", NOW)
    assert not (database.folder / "trial").exists()
    reopened = open_library(database.folder)
    assert finding.find(reopened).total == 1
    reopened.close()


def test_a_backup_into_a_folder_that_does_not_exist_is_refused(database, tmp_path):
    with pytest.raises(LibraryError, match=r"The folder .* does not exist; make it first or name another"):
        backup.write(database.path, tmp_path / "none" / "copy.sqlite")
