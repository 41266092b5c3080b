"""A backup put in the place of the library while the program runs, and undone; what is inside is shown first."""

import threading
from contextlib import closing, suppress
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tests.storage.test_upgrade import earlier
from webapp.storage import backup, backups, finding, patterns, restoring, revisions
from webapp.storage.database import LIBRARY, Database
from webapp.storage.errors import LibraryError
from webapp.storage.library import open_library


@pytest.fixture
def kept(database, pattern):
    """A library of three patterns, and its backup."""
    database.now = lambda: datetime(2026, 3, 2, 9, tzinfo=UTC)
    for title in ("Alpha", "Beta", "Gamma"):
        patterns.create(database, replace(pattern, title=title))
    return backups.make(database)


def titles(database):
    return [one.title for one in finding.find(database, sort="title").patterns]


def change(database, pattern):
    revisions.save(database, 1, replace(pattern, title="Alpha, wider"), 1)
    patterns.put_into_bin(database, 2)
    patterns.empty_bin(database)
    patterns.create(database, replace(pattern, title="Delta"))


def test_what_is_inside_is_shown_beside_the_present_library(database, pattern, kept):
    change(database, pattern)
    found = restoring.inside(database, kept)
    assert (found.path, found.patterns, found.binned, found.newest) == (kept, 3, 0, datetime(2026, 3, 2, 9, tzinfo=UTC))
    assert found.lines == (("Beta", "comes back"), ("Alpha", "is changed"), ("Delta", "goes"), ("Gamma", "stays"))


def test_a_pattern_in_the_bin_is_not_the_same(database, kept):
    patterns.put_into_bin(database, 3)
    assert dict(restoring.inside(database, kept).lines) == {"Alpha": "stays", "Beta": "stays", "Gamma": "is changed"}


def test_a_backup_takes_the_place_of_the_open_library_and_that_is_undone(database, pattern, kept):
    change(database, pattern)
    aside = restoring.put_back(database, kept)
    assert titles(database) == ["Alpha", "Beta", "Gamma"]
    patterns.create(database, replace(pattern, title="Epsilon"))
    restoring.put_back(database, aside)
    assert titles(database) == ["Alpha, wider", "Delta", "Gamma"]
    assert sorted(path.name for path in database.folder.iterdir() if not path.name.startswith(LIBRARY)) == [
        "backups",
        "copies",
    ]


@pytest.mark.parametrize("schema", ["0001", "0002", "0003"])
def test_a_backup_of_an_earlier_schema_is_shown_and_put_back(database, kept, schema, tmp_path):
    old = earlier(schema, tmp_path / "old") / LIBRARY
    assert restoring.inside(database, old).patterns >= 1
    restoring.put_back(database, old)
    assert any(title.startswith("Meadow Path") for title in titles(database))
    assert finding.find(database, "meadow").total == 1


def test_a_backup_that_is_damaged_changes_nothing(database, kept):
    kept.write_bytes(b"knots" * 5000)
    for asked in (restoring.inside, restoring.put_back):
        with pytest.raises(LibraryError, match="is not a library of this program"):
            asked(database, kept)
    assert titles(database) == ["Alpha", "Beta", "Gamma"]


@pytest.mark.parametrize("step", range(4))
def test_killed_at_any_step_the_library_is_as_it_was_or_as_the_backup_is(database, pattern, kept, monkeypatch, step):
    change(database, pattern)
    before, taken = titles(database), []
    replaced = Path.replace

    def killed(path, target):
        taken.append(target)
        if len(taken) > step:
            raise KeyboardInterrupt
        return replaced(path, target)

    monkeypatch.setattr(Path, "replace", killed)
    with suppress(KeyboardInterrupt):
        restoring.put_back(database, kept)
    monkeypatch.undo()
    database.close()
    reopened = open_library(database.folder)
    try:
        assert titles(reopened) == (before if step < 3 else ["Alpha", "Beta", "Gamma"])
        backup.check(reopened.path)
        restoring.put_back(reopened, kept)
        assert titles(reopened) == ["Alpha", "Beta", "Gamma"]
    finally:
        reopened.close()


def test_sessions_wait_while_the_file_is_exchanged(database):
    begun, done = threading.Event(), []

    def look():
        begun.set()
        done.append(titles(database))

    with database.at_rest():
        thread = threading.Thread(target=look)
        thread.start()
        begun.wait()
        assert done == []
    thread.join()
    assert done == [[]]


def test_a_library_that_is_being_written_to_is_not_exchanged(database, kept, monkeypatch):
    monkeypatch.setattr("webapp.storage.database.Gate.shut.__wrapped__.__defaults__", (0.01,))
    with database.writing(), pytest.raises(LibraryError, match="is being written to just now"):
        restoring.put_back(database, kept)
    assert titles(database) == ["Alpha", "Beta", "Gamma"]


def test_another_program_that_reads_the_library_is_waited_for_no_longer_than_need_be(database, kept):
    with (
        closing(Database(database.folder)) as another,
        another.reading() as other,
        pytest.raises(LibraryError, match="Another program has the library open"),
    ):
        other.connection().exec_driver_sql("SELECT count(*) FROM pattern").all()
        patterns.put_into_bin(database, 1)
        restoring.put_back(database, kept)
    assert titles(database) == ["Beta", "Gamma"]
