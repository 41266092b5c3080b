"""A library file is copied while it is in use, and checked."""

import sqlite3
from contextlib import closing

import pytest

from webapp.storage import library_file, patterns
from webapp.storage.errors import LibraryError


def test_a_backup_taken_while_the_library_is_open_holds_everything(database, pattern, tmp_path):
    patterns.create(database, pattern)
    library_file.write_backup(database.path, tmp_path / "copy.sqlite")
    with closing(sqlite3.connect(tmp_path / "copy.sqlite")) as copy:
        assert copy.execute("SELECT title FROM pattern").fetchall() == [("Small harbour",)]


def test_a_damaged_backup_is_found(database, pattern, tmp_path):
    for _ in range(40):
        patterns.create(database, pattern)
    copy = tmp_path / "copy.sqlite"
    library_file.write_backup(database.path, copy)
    data = bytearray(copy.read_bytes())
    data[8192:8300] = bytes(108)
    copy.write_bytes(data)
    with pytest.raises(LibraryError, match=r"is damaged|is not a library"):
        library_file.check(copy)


def test_a_backup_into_a_folder_that_does_not_exist_is_refused(database, tmp_path):
    with pytest.raises(LibraryError, match=r"The folder .* does not exist; make it first or name another"):
        library_file.write_backup(database.path, tmp_path / "none" / "copy.sqlite")
