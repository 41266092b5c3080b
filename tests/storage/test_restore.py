"""A backup put in the place of the library, also while the program runs, and undone."""

import sqlite3
import threading
from contextlib import closing, suppress
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from tests.storage.damaged import damage
from tests.storage.test_upgrade import earlier
from webapp.storage import backup_contents, backup_folder, finding, history, library_file, patterns, restore, revisions
from webapp.storage.database import LIBRARY, Database
from webapp.storage.errors import Damaged, LibraryBusy, LibraryError, LibraryGone, Stale
from webapp.storage.library import open_library

NOW = datetime(2026, 3, 1, 12, 30, tzinfo=UTC)


@pytest.fixture
def kept(database, pattern):
    """A library of three patterns, and its backup."""
    database.now = lambda: datetime(2026, 3, 2, 9, tzinfo=UTC)
    for title in ("Alpha", "Beta", "Gamma"):
        patterns.create(database, replace(pattern, title=title))
    return backup_folder.make(database)


def titles(database):
    return [one.title for one in finding.find(database, sort="title").patterns]


def change(database, pattern):
    revisions.save(database, 1, replace(pattern, title="Alpha, wider"), 1)
    patterns.put_into_bin(database, 2)
    patterns.empty_bin(database)
    patterns.create(database, replace(pattern, title="Delta"))


def test_a_backup_takes_the_place_of_the_open_library_and_that_is_undone(database, pattern, kept):
    change(database, pattern)
    aside = restore.put_back(database, kept)
    assert titles(database) == ["Alpha", "Beta", "Gamma"]
    patterns.create(database, replace(pattern, title="Epsilon"))
    restore.put_back(database, aside)
    assert titles(database) == ["Alpha, wider", "Delta", "Gamma"]
    assert sorted(path.name for path in database.folder.iterdir() if not path.name.startswith(LIBRARY)) == [
        "backups",
        "copies",
    ]


@pytest.mark.parametrize("schema", ["0001", "0002", "0003", "0004", "0005"])
def test_a_backup_of_an_earlier_schema_is_shown_and_put_back(database, kept, schema, tmp_path):
    old = earlier(schema, tmp_path / "old") / LIBRARY
    assert backup_contents.compare(database, old).patterns >= 1
    restore.put_back(database, old)
    assert any(title.startswith("Meadow Path") for title in titles(database))
    assert finding.find(database, "meadow").total == 1


def test_a_backup_that_is_damaged_changes_nothing(database, kept):
    kept.write_bytes(b"knots" * 5000)
    for asked in (backup_contents.compare, restore.put_back):
        with pytest.raises(LibraryError, match="is not a library of this program"):
            asked(database, kept)
    assert titles(database) == ["Alpha", "Beta", "Gamma"]


@pytest.mark.parametrize("step", range(3))
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
        restore.put_back(database, kept)
    monkeypatch.undo()
    database.close()
    reopened = open_library(database.folder)
    try:
        assert titles(reopened) == (before if step < 2 else ["Alpha", "Beta", "Gamma"])
        library_file.check(reopened.path, in_use=True)
        restore.put_back(reopened, kept)
        assert titles(reopened) == ["Alpha", "Beta", "Gamma"]
    finally:
        reopened.close()


def test_a_restore_that_fails_leaves_no_copy_of_the_library_behind(database, kept, monkeypatch):
    monkeypatch.setattr(restore, "raise_numbers", lambda *given: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        restore.put_back(database, kept)
    assert list((database.folder / "copies").iterdir()) == []
    assert titles(database) == ["Alpha", "Beta", "Gamma"]


def test_what_another_process_writes_meanwhile_is_not_lost(database, kept, monkeypatch):
    raising = restore._raise_numbers

    def written_meanwhile(fresh, present, now):
        with closing(sqlite3.connect(database.path)) as other, other:
            other.execute("UPDATE pattern SET title = 'Written meanwhile' WHERE id = 1")
        raising(fresh, present, now)

    monkeypatch.setattr(restore, "_raise_numbers", written_meanwhile)
    with pytest.raises(LibraryBusy, match="wrote to the library meanwhile"):
        restore.put_back(database, kept)
    assert titles(database) == ["Beta", "Gamma", "Written meanwhile"]
    assert list((database.folder / "copies").iterdir()) == []


def test_after_a_restore_the_numbers_that_open_pages_know_are_refused(database, pattern, kept):
    revisions.write_working(database, 1, replace(pattern, title="Alpha at work"), 0)
    known = patterns.load(database, 1)
    unchanged = patterns.load(database, 3)
    restore.put_back(database, kept)
    with pytest.raises(Stale):
        revisions.write_working(database, 1, pattern, known.sequence)
    with pytest.raises(Stale):
        revisions.save(database, 1, pattern, known.revision)
    stands = patterns.load(database, 1)
    assert (stands.pattern.title, stands.revision > known.revision, stands.sequence > known.sequence) == (
        "Alpha",
        True,
        True,
    )
    assert history.kept_revision(database, 1, stands.revision).note == "As in the backup"
    assert revisions.save(database, 1, pattern, stands.revision) == stands.revision + 1
    assert patterns.load(database, 3) == unchanged


def test_a_number_of_a_pattern_is_never_given_twice(database, pattern, kept):
    gone = patterns.create(database, pattern).id
    restore.put_back(database, kept)
    assert patterns.create(database, pattern).id > gone
    last = patterns.create(database, pattern).id
    patterns.put_into_bin(database, last)
    patterns.empty_bin(database)
    assert patterns.create(database, pattern).id > last


def test_a_library_that_was_deleted_takes_nothing_in_and_comes_back_from_a_backup(database, pattern, kept):
    database.close()
    for path in database.folder.glob(f"{LIBRARY}*"):
        path.unlink()
    with pytest.raises(LibraryGone, match="Nothing was changed"):
        patterns.create(database, pattern)
    assert database.health.troubles
    assert restore.put_back(database, kept) is None
    assert (titles(database), database.health.troubles) == (["Alpha", "Beta", "Gamma"], ())


def test_a_library_that_was_exchanged_while_it_was_open_takes_nothing_in(database, pattern, kept):
    titles(database)
    library_file.copy_library(kept, database.folder / "other.sqlite")
    (database.folder / "other.sqlite").replace(database.path)
    with pytest.raises(LibraryGone, match=r"library\.sqlite was removed or exchanged"):
        patterns.create(database, pattern)
    with closing(sqlite3.connect(database.path)) as other:
        assert other.execute("SELECT count(*) FROM pattern").fetchone() == (3,)


def test_a_damaged_library_is_kept_aside_as_it_is_and_replaced(database, pattern, kept):
    for _ in range(40):
        patterns.create(database, pattern)
    database.close()
    damage(database.path)
    aside = restore.put_back(database, kept)
    assert titles(database) == ["Alpha", "Beta", "Gamma"]
    assert aside.stat().st_size > kept.stat().st_size


@pytest.mark.parametrize("harm", ["damaged", "no library any more", "gone", "empty"])
def test_pages_of_a_library_that_cannot_be_read_any_more_are_refused_too(database, pattern, kept, harm):
    for sequence in range(60):
        revisions.write_working(database, 1, replace(pattern, notes="x" * 999), sequence)
        revisions.keep_working(database, 1)
    known, others = patterns.load(database, 1), [patterns.create(database, pattern).id for _ in range(40)]
    database.close()
    if harm == "damaged":
        damage(database.path)
    elif harm == "gone":
        database.path.unlink()
    else:
        database.path.write_bytes(b"" if harm == "empty" else b"knots" * 5000)
    restore.put_back(database, kept)
    stands = patterns.load(database, 1)
    assert (stands.pattern.title, stands.revision > known.revision, stands.sequence > known.sequence) == (
        "Alpha",
        True,
        True,
    )
    with pytest.raises(Stale):
        revisions.write_working(database, 1, pattern, known.sequence)
    with pytest.raises(Stale):
        revisions.save(database, 1, pattern, known.revision)
    assert patterns.create(database, pattern).id > max(others)
    assert titles(database)[:3] == ["Alpha", "Beta", "Gamma"]


def test_what_a_damaged_library_still_says_of_its_numbers_counts(database, pattern, kept):
    with database.writing() as session:
        session.connection().exec_driver_sql("UPDATE pattern SET revision = 50000, sequence = 7000000 WHERE id = 1")
    database.close()
    with closing(sqlite3.connect(database.path)) as connection, connection:
        connection.execute("PRAGMA foreign_keys = OFF")
        connection.execute("INSERT INTO revision VALUES (999, 1, '2026-03-02 09:00:00.000000', 0, '', '{}', '')")
    restore.put_back(database, kept)
    stands = patterns.load(database, 1)
    assert (stands.revision, stands.sequence) == (60_001, 8_000_001)


WRONG = {
    "UPDATE pattern SET title = x'ff00'": "row 1 of “pattern” has no sound “title”",
    "UPDATE pattern SET title = CAST(x'ff4142' AS TEXT)": "cannot be read through",
    "UPDATE pattern SET changed = 'yesterday'": "row 1 of “pattern” has no sound “changed”",
    "UPDATE pattern SET made = '9999-12-31 23:59:59.000000'": "row 1 of “pattern” has no sound “made”",
    "UPDATE pattern SET around = 'twelve'": "row 1 of “pattern” has no sound “around”",
    "UPDATE revision SET document = '{}'": "a state of pattern 1 is no pattern file",
    "INSERT INTO kind VALUES ('Dust', 5e-324, 1, 1, 1, 1, 0)": "the bead kind “Dust” has no sound measures",
    "INSERT INTO words VALUES (1, 'tips', '" + "x" * 30_000 + "')": "the words beside pattern 1 cannot be kept",
    "INSERT INTO edition VALUES (1, 1, 1, '2026-03-02 09:00:00', '', '[1]', NULL, '')": "the words of edition 1 of",
    "INSERT INTO bead VALUES ('k', 'Sea', 'red', '11/0 round', 'matte', '', '', 0, 0, '', 0, '', 0, '')": (
        "the bead “Sea” cannot be kept"
    ),
    "INSERT INTO colourway VALUES (1, 1, 'Dusk', '[]', 0)": "colourway 1 is none",
    "INSERT INTO made VALUES (1, 1, 'Sea', '2026-03-02 09:00:00', 1, '', '[1]', 0)": "what piece 1 took off the stock",
    "INSERT INTO earning VALUES (1, 1, 'Sea', 1, 'May', 1, 1, 0, 'EUR', '')": "a note of what was earned cannot be kept",
    "INSERT INTO setting VALUES ('spare', 'lots')": "a setting that should be a measure is none",
}


@pytest.mark.parametrize(("change", "sentence"), WRONG.items())
def test_a_backup_with_values_that_no_library_holds_is_refused(database, kept, change, sentence):
    with closing(sqlite3.connect(kept)) as backup, backup:
        backup.execute(change)
    for asked in (backup_contents.compare, restore.put_back):
        with pytest.raises(Damaged, match=sentence):
            asked(database, kept)
    assert titles(database) == ["Alpha", "Beta", "Gamma"]


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
        restore.put_back(database, kept)
    assert titles(database) == ["Alpha", "Beta", "Gamma"]


def test_another_program_that_reads_the_library_keeps_what_it_sees(database, kept):
    patterns.put_into_bin(database, 1)
    with closing(Database(database.folder)) as another, another.reading() as other:
        seen = other.connection().exec_driver_sql("SELECT count(*) FROM pattern WHERE binned").scalar()
        restore.put_back(database, kept)
        assert other.connection().exec_driver_sql("SELECT count(*) FROM pattern WHERE binned").scalar() == seen == 1
    assert titles(database) == ["Alpha", "Beta", "Gamma"]


def test_restoring_brings_back_the_patterns_and_keeps_the_present_library_aside(database, pattern, tmp_path):
    first = patterns.create(database, pattern)
    library_file.write_backup(database.path, tmp_path / "copy.sqlite")
    patterns.put_into_bin(database, first.id)
    patterns.empty_bin(database)
    database.close()
    aside = restore.restore(database.folder, tmp_path / "copy.sqlite", NOW)
    restored = open_library(database.folder)
    assert patterns.load(restored, first.id).pattern == pattern
    restored.close()
    assert aside == database.folder / "copies" / "before-restore-2026-03-01-123000.sqlite"
    with closing(sqlite3.connect(aside)) as copy:
        assert copy.execute("SELECT count(*) FROM pattern").fetchone() == (0,)
    assert sorted(path.name for path in database.folder.iterdir()) == ["copies", LIBRARY]


def test_a_backup_is_restored_into_an_empty_folder(database, pattern, tmp_path):
    patterns.create(database, pattern)
    library_file.write_backup(database.path, tmp_path / "copy.sqlite")
    (tmp_path / "other").mkdir()
    (tmp_path / "other" / "running.lock").touch()
    assert restore.restore(tmp_path / "other", tmp_path / "copy.sqlite", NOW) is None
    restored = open_library(tmp_path / "other")
    assert (finding.find(restored).total, patterns.load(restored, 1).revision) == (1, 1)
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
            restore.restore(database.folder, tmp_path / name, NOW)
    reopened = open_library(database.folder)
    assert finding.find(reopened).total == 1
    reopened.close()


def test_a_backup_from_a_newer_program_is_refused_and_nothing_is_changed(database, pattern, tmp_path):
    patterns.create(database, pattern)
    library_file.write_backup(database.path, tmp_path / "copy.sqlite")
    database.close()
    with closing(sqlite3.connect(tmp_path / "copy.sqlite")) as copy:
        copy.execute("UPDATE alembic_version SET version_num = '9999'")
        copy.commit()
    with pytest.raises(LibraryError, match="newer Ropewright"):
        restore.restore(database.folder, tmp_path / "copy.sqlite", NOW)
    assert not (database.folder / "trial").exists()
    reopened = open_library(database.folder)
    assert finding.find(reopened).total == 1
    reopened.close()
