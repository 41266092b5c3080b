"""Backups are made into a folder of one's choice, checked, listed and thinned."""

import os
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from webapp.storage import backup_folder, library_file, patterns, workshop
from webapp.storage.errors import LibraryError, NotFound

START = datetime(2026, 3, 2, 9, tzinfo=UTC)


@pytest.fixture
def dated(database, pattern):
    database.now = lambda: START
    patterns.create(database, pattern)
    return database


def names(database):
    return [one.path.name for one in backup_folder.all_kept(database)]


def test_a_backup_is_named_by_its_moment_checked_and_noted(dated):
    made = backup_folder.make(dated)
    assert made == dated.folder / "backups" / "ropewright-2026-03-02-090000.sqlite"
    library_file.check(made)
    assert workshop.last_backup(dated) == START
    (kept,) = backup_folder.all_kept(dated)
    assert (kept.path, kept.made, kept.size, kept.patterns, kept.aside) == (made, START, made.stat().st_size, 1, False)


def test_one_backup_a_day_is_made_by_itself(dated):
    assert backup_folder.make_daily(dated) is not None
    dated.now = lambda: START + timedelta(hours=6)
    assert backup_folder.make_daily(dated) is None
    dated.now = lambda: START + timedelta(days=1)
    assert backup_folder.make_daily(dated) is not None
    assert names(dated) == ["ropewright-2026-03-03-090000.sqlite", "ropewright-2026-03-02-090000.sqlite"]


def test_the_rule_takes_older_backups_away_and_nothing_else_of_the_folder(dated, tmp_path):
    folder = dated.folder / "backups"
    folder.mkdir()
    for days in range(40):
        (folder / f"ropewright-{START - timedelta(days=days):%Y-%m-%d-%H%M%S}.sqlite").write_bytes(b"old")
    others = ["ropewright-mine.sqlite", "ropewright-2026-01-01.sqlite", "notes.txt"]
    for name in others:
        (folder / name).write_bytes(b"mine")
    dated.now = lambda: START + timedelta(minutes=5)
    backup_folder.make(dated)
    left = sorted(path.name[11:21] for path in folder.iterdir() if path.name not in others)
    assert left == [
        "2026-01-31",
        "2026-02-15",
        "2026-02-22",
        "2026-02-24",
        "2026-02-25",
        "2026-02-26",
        "2026-02-27",
        "2026-02-28",
        "2026-03-01",
        "2026-03-02",
    ]
    assert all((folder / name).exists() for name in others)


def test_a_folder_of_ones_choice_takes_the_backups(dated, tmp_path):
    disk = tmp_path / "disk"
    disk.mkdir()
    backup_folder.choose(dated, str(disk))
    assert backup_folder.make(dated).parent == disk
    assert names(dated) == ["ropewright-2026-03-02-090000.sqlite"]
    backup_folder.choose(dated, "")
    assert backup_folder.folder(dated).path == dated.folder / "backups"


def test_where_the_folder_is_gone_backups_are_kept_in_our_own_and_that_is_said(dated, tmp_path):
    disk = tmp_path / "disk"
    disk.mkdir()
    backup_folder.choose(dated, str(disk))
    disk.rmdir()
    found = backup_folder.folder(dated)
    assert (found.path, found.chosen) == (dated.folder / "backups", disk)
    assert found.wrong == f"There is no folder {disk}; make it first, or plug in the disk that it is on."
    assert backup_folder.make(dated).parent == dated.folder / "backups"


def test_a_folder_that_cannot_be_used_is_refused_in_a_sentence(dated, tmp_path, monkeypatch):
    (dated.folder / "inner").mkdir()
    (tmp_path / "file").write_text("")
    for text, sentence in (
        ("backups", "does not begin at the top of a disk"),
        (str(tmp_path / "none"), "There is no folder"),
        (str(tmp_path / "file"), "There is no folder"),
        (str(dated.folder), "lies inside the data folder"),
        (str(dated.folder / "inner"), "lies inside the data folder"),
    ):
        with pytest.raises(LibraryError, match=sentence):
            backup_folder.choose(dated, text)

    def refused(**options):
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr(backup_folder.tempfile, "NamedTemporaryFile", refused)
    with pytest.raises(LibraryError, match=r"Nothing can be written to .*: Read-only file system"):
        backup_folder.choose(dated, str(tmp_path))
    assert backup_folder.folder(dated).chosen is None


def test_a_backup_that_cannot_be_read_is_listed_as_such(dated):
    made = backup_folder.make(dated)
    made.write_bytes(b"knots" * 1000)
    assert [one.patterns for one in backup_folder.all_kept(dated)] == [None]


def test_only_what_is_in_the_list_can_be_asked_for(dated, pattern):
    made = backup_folder.make(dated)
    assert backup_folder.path_of(dated, made.name) == made
    patterns.create(dated, replace(pattern, title="Other"))
    for name in ("library.sqlite", "../library.sqlite", str(dated.path), "", made.name.upper()):
        with pytest.raises(NotFound, match="There is no backup of that name"):
            backup_folder.path_of(dated, name)


def test_what_a_kill_left_unfinished_is_swept_away_and_nothing_else(database):
    ours, copies, trial = (database.folder / name for name in ("backups", "copies", "trial"))
    for folder in (ours, copies, trial):
        folder.mkdir(exist_ok=True)
    left = [
        ours / "ropewright-2026-03-01-090000.part",
        ours / "ropewright-2026-03-01-090000.part-journal",
        copies / "before-restore-2026-03-01-090000.part",
        trial,
    ]
    stays = [
        ours / "ropewright-2026-03-01-090000.sqlite",
        ours / "somebody-else.part",
        ours / "ropewright-2026-03-02-090000.part",
    ]
    for path in (*left[:-1], *stays):
        path.write_bytes(b"x")
    now = database.now().timestamp()
    for path in (*left, *stays[:-1]):
        os.utime(path, (now - backup_folder.ABANDONED_S - 60,) * 2)
    os.utime(stays[-1], (now - backup_folder.ABANDONED_S + 60,) * 2)
    backup_folder.sweep(database)
    assert [path.exists() for path in (*left, *stays)] == [False] * 4 + [True] * 3
