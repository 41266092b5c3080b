"""Backups are made into a folder of one's choice, checked, listed and thinned."""

import os
import threading
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from shutil import copyfile

import pytest

from tests.storage.damaged import damage
from webapp.storage import backup_folder, clock, library_file, patterns, revisions, workshop
from webapp.storage.errors import Damaged, LibraryError, NotFound

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
    sound = backup_folder.make(dated)
    for days in range(40):
        copyfile(sound, folder / f"ropewright-{START - timedelta(days=days, minutes=1):%Y-%m-%d-%H%M%S}.sqlite")
    others = ["ropewright-mine.sqlite", "ropewright-2026-01-01.sqlite", "notes.txt"]
    for name in others:
        (folder / name).write_bytes(b"mine")
    dated.now = lambda: START + timedelta(minutes=5)
    backup_folder.make(dated)
    left = sorted(path.name[11:21] for path in folder.iterdir() if path.name not in others)
    assert left == [
        "2026-01-31",
        "2026-02-15",
        *(f"2026-02-{day}" for day in range(22, 29)),
        "2026-03-01",
        "2026-03-02",
        "2026-03-02",
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
        ("/" + "x" * 300, "is too long for the path of a folder"),
        ("~nosuchuser/backups", "names a person whom this computer does not know"),
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
        ours / "ropewright-2026-03-01-090000.sqlite.0a1b2c3d.part",
        ours / "ropewright-2026-03-01-090000.sqlite.0a1b2c3d.part-wal",
        ours / "ropewright-2026-03-01-090000.sqlite-shm",
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
    assert [path.exists() for path in (*left, *stays)] == [False] * 7 + [True] * 3


def test_copies_that_killed_downloads_left_in_the_temporary_folder_go(database, tmp_path, monkeypatch):
    monkeypatch.setattr(backup_folder.tempfile, "tempdir", str(tmp_path))
    old, mine, new = (tmp_path / f"ropewright-{name}" for name in ("abcd1234", "mine0000", "efgh5678"))
    for folder, name in ((old, "ropewright-2026-01-01.sqlite"), (mine, "notes.txt"), (new, "ropewright-1.part")):
        folder.mkdir()
        (folder / name).write_bytes(b"x")
    for folder in (old, mine):
        os.utime(folder, (database.now().timestamp() - backup_folder.ABANDONED_S - 60,) * 2)
    backup_folder.sweep(database)
    assert [folder.exists() for folder in (old, mine, new)] == [False, True, True]


def test_a_library_that_is_damaged_gives_no_backup_and_is_set_aside_once(dated, pattern):
    for _ in range(40):
        patterns.create(dated, pattern)
    sound = backup_folder.make(dated)
    dated.close()
    damage(dated.path)
    for days in range(1, 4):
        dated.now = lambda days=days: START + timedelta(days=days)
        with pytest.raises(Damaged, match="is damaged, so no backup was made of it; earlier ones stay as they are"):
            backup_folder.make(dated)
    assert sorted(path.name for path in sound.parent.iterdir()) == [sound.name, "unsound.sqlite"]
    assert backup_folder.last_sound(dated).path == sound
    assert workshop.last_backup(dated) == START


def test_damaged_backups_are_marked_and_never_push_out_sound_ones(dated, pattern):
    for _ in range(40):
        patterns.create(dated, pattern)
    sound = backup_folder.make(dated)
    for days in range(1, 30):
        dated.now = lambda days=days: START + timedelta(days=days)
        copyfile(sound, later := sound.with_name(f"ropewright-{dated.now():%Y-%m-%d}-080000.sqlite"))
        damage(later)
    backup_folder.thin(dated, sound.parent)
    listed = backup_folder.all_kept(dated)
    assert (len(listed), [backup.path for backup in listed if backup.sound]) == (30, [sound])
    assert backup_folder.make_daily(dated) is not None


def test_a_backup_of_ones_own_is_replaced_only_by_a_sound_one(database, pattern, tmp_path):
    for _ in range(40):
        patterns.create(database, pattern)
    target = tmp_path / "mine.sqlite"
    library_file.write_backup(database.path, target)
    before = target.read_bytes()
    database.close()
    damage(database.path)
    with pytest.raises(Damaged):
        library_file.write_backup(database.path, target)
    assert target.read_bytes() == before
    assert [path.name for path in tmp_path.iterdir() if path.is_file()] == ["mine.sqlite"]


def test_a_backup_that_fails_is_not_the_last_backup(dated, monkeypatch):
    def full(path, copy):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(library_file, "_copy_pages", full)
    with pytest.raises(LibraryError, match=r"cannot be written to .*No space left on device"):
        backup_folder.make(dated)
    assert (workshop.last_backup(dated), names(dated)) == (None, [])


def test_a_backup_knows_of_itself_when_it_is_put_back(dated, tmp_path):
    made = backup_folder.make(dated)
    with library_file.opened(made) as copy:
        assert copy.execute("SELECT value FROM setting WHERE name = 'last backup'").fetchone() == (START.isoformat(),)
    assert [path.name for path in made.parent.iterdir()] == [made.name]


def test_twelve_backups_at_once_are_twelve_files(dated):
    made = []
    threads = [threading.Thread(target=lambda: made.append(backup_folder.make(dated))) for _ in range(12)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert sorted(names(dated)) == sorted(path.name for path in made)
    assert len(set(made)) == 12


def test_a_wrong_clock_takes_nothing_away_until_the_date_is_said_to_be_right(dated, pattern):
    number = patterns.create(dated, pattern).id
    for day in range(30):
        dated.now = lambda day=day: START + timedelta(days=day)
        assert clock.note_time(dated) is None
        backup_folder.make(dated)
        sequence = revisions.write_working(dated, number, pattern, day)
        revisions.keep_working(dated, number)
    many = len(names(dated))
    dated.now = lambda: datetime(2099, 1, 1, tzinfo=UTC)
    backup_folder.make(dated)
    assert (clock.note_time(dated).now.year, revisions.thin(dated), len(names(dated))) == (2099, 0, many + 1)
    clock.trust(dated)
    backup_folder.make(dated)
    assert len(names(dated)) >= 10
    assert sequence == 30


def test_a_link_that_leads_nowhere_is_no_backup(dated):
    made = backup_folder.make(dated)
    (made.parent / "ropewright-2026-01-01-000000.sqlite").symlink_to(made.parent / "gone")
    (dated.folder / "copies").mkdir()
    (dated.folder / "copies" / "before-restore.sqlite").symlink_to(made.parent / "gone")
    assert names(dated) == [made.name]
