"""The app's own connections keep what is acknowledged, and a change is whole or not at all."""

import sqlite3
import threading
from contextlib import closing
from shutil import copyfile

import pytest
from sqlmodel import select

from webapp.storage import patterns
from webapp.storage.database import Database
from webapp.storage.errors import DiskFull, LibraryBusy, LibraryError
from webapp.storage.tables import SettingRow


@pytest.mark.parametrize("session", ["reading", "writing"])
def test_every_connection_writes_ahead_fully_synchronous_with_foreign_keys(database, session):
    with getattr(database, session)() as opened:
        found = {
            name: opened.connection().exec_driver_sql(f"PRAGMA {name}").scalar()
            for name in ("journal_mode", "synchronous", "foreign_keys", "busy_timeout")
        }
    assert found == {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1, "busy_timeout": 20_000}


def test_a_change_that_fails_half_way_leaves_nothing(database):
    with pytest.raises(RuntimeError), database.writing() as session:
        session.add(SettingRow(name="maker", value="Lantern Street Beads"))
        session.flush()
        raise RuntimeError("power cut")
    with database.reading() as session:
        assert session.exec(select(SettingRow)).all() == []


def test_a_reader_sees_one_state_while_another_writes(database):
    with database.reading() as reading:
        assert reading.exec(select(SettingRow)).all() == []
        with database.writing() as writing:
            writing.add(SettingRow(name="maker", value="Lantern Street Beads"))
        assert reading.exec(select(SettingRow)).all() == []
    with database.reading() as reading:
        assert len(reading.exec(select(SettingRow)).all()) == 1


def test_what_was_worked_out_is_kept_until_anybody_changes_the_library(database, pattern):
    asked = []

    def worked_out():
        asked.append(len(asked))
        return asked[-1]

    assert [database.remembered.get("one", worked_out) for _ in range(3)] == [0, 0, 0]
    patterns.create(database, pattern)
    assert [database.remembered.get("one", worked_out) for _ in range(2)] == [1, 1]
    other = Database(database.folder)
    patterns.create(other, pattern)
    other.close()
    assert database.remembered.get("one", worked_out) == 2
    with database.at_rest():
        pass
    assert database.remembered.get("one", worked_out) == 3


def test_what_is_remembered_is_looked_up_inside_the_gate(database):
    answers = []
    with database.at_rest():
        thread = threading.Thread(target=lambda: answers.append(database.remembered.get("one", lambda: 1)))
        thread.start()
        thread.join(0.1)
        assert answers == []
    thread.join()
    assert answers == [1]


def test_when_nobody_writes_the_one_file_is_the_whole_library(database, pattern, tmp_path):
    patterns.create(database, pattern)
    assert database.fold()
    copyfile(database.path, tmp_path / "copied.sqlite")
    with closing(sqlite3.connect(tmp_path / "copied.sqlite")) as copy:
        assert copy.execute("SELECT count(*) FROM pattern").fetchone() == (1,)
    patterns.create(database, pattern)
    database.close()
    assert [path.name for path in database.folder.iterdir()] == ["library.sqlite"]


SENTENCES = {
    "PRAGMA query_only = 1": (LibraryError, "may only be read"),
    "PRAGMA max_page_count = 1": (DiskFull, "no room left on the disk"),
}


@pytest.mark.parametrize(("pragma", "expected"), SENTENCES.items())
def test_what_the_disk_refuses_is_said_in_a_sentence_of_its_own(database, pattern, pragma, expected):
    kind, sentence = expected
    with database.reading() as session:
        session.connection().exec_driver_sql(pragma)
    with pytest.raises(kind, match=sentence):
        for _ in range(50):
            patterns.create(database, pattern)
    assert database.health.problems[0].sentence.startswith(("There is no room", "The library may only"))
    assert database.health.troubles == ()


def test_a_lock_that_another_program_holds_is_said_in_a_sentence(database, pattern):
    with database.reading() as session:
        session.connection().exec_driver_sql("PRAGMA busy_timeout = 1")
    with closing(sqlite3.connect(database.path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(LibraryBusy, match="Another program is writing to the library and does not end"):
            patterns.create(database, pattern)
    patterns.create(database, pattern)
