"""A slow reader of the whole library holds up nobody."""

import os

import pytest

from webapp.storage import backup_folder, library_export, patterns, restore
from webapp.storage.snapshot import FOLDER, snapshot


@pytest.fixture
def kept(database, pattern):
    patterns.create(database, pattern)
    return backup_folder.make(database)


def test_a_restore_does_not_wait_for_a_download_which_stays_of_its_moment(database, pattern, kept):
    patterns.create(database, pattern)
    with snapshot(database) as copy:
        sent = library_export.export_patterns(copy)
        next(sent)
        restore.put_back(database, kept)
        assert len(list(sent)) == 1
    assert len(list(library_export.export_patterns(database))) == 1
    assert list((database.folder / FOLDER).iterdir()) == []


def test_what_a_killed_download_left_is_swept_away_after_an_hour(database):
    old, new = (database.folder / FOLDER / name for name in ("old", "new"))
    for folder in (old, new):
        folder.mkdir(parents=True)
    os.utime(old, (database.now().timestamp() - backup_folder.ABANDONED_S - 60,) * 2)
    backup_folder.sweep(database)
    assert (old.exists(), new.exists()) == (False, True)
