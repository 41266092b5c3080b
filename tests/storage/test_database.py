"""The app's own connections keep what is acknowledged, and a change is whole or not at all."""

import pytest
from sqlmodel import select

from webapp.storage import patterns
from webapp.storage.database import Database
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
