"""A data folder is opened: made at the first start, with examples, and refused in a sentence when it cannot be."""

import pytest

from webapp.demo import examples
from webapp.storage import backup_folder, finding, patterns
from webapp.storage.database import LIBRARY
from webapp.storage.errors import LibraryError, NoLibrary
from webapp.storage.library import open_library


def test_the_first_start_puts_in_the_examples_and_the_second_does_not(tmp_path):
    for _ in range(2):
        database = open_library(tmp_path / "new" / "data", examples())
        found = finding.find(database)
        assert [(summary.title, summary.around, summary.example) for summary in found.patterns] == [
            ("Evening Star", 14, True),
            ("Twisted Ribbon", 6, True),
            ("Harbour Lights", 12, True),
            ("Meadow Path", 20, True),
        ]
        database.close()


def test_examples_that_were_removed_do_not_come_back(tmp_path):
    database = open_library(tmp_path, examples())
    patterns.remove_examples(database)
    patterns.empty_bin(database)
    database.close()
    database = open_library(tmp_path, examples())
    assert finding.find(database).total == 0
    database.close()


@pytest.mark.parametrize("bytes_left", [None, b""])
def test_where_the_library_is_lost_and_backups_are_there_no_empty_one_takes_its_place(tmp_path, pattern, bytes_left):
    database = open_library(tmp_path)
    patterns.create(database, pattern)
    backup = backup_folder.make(database)
    database.close()
    database.path.unlink()
    if bytes_left is not None:
        database.path.write_bytes(bytes_left)
    with pytest.raises(NoLibrary, match=f"there are backups; the newest is {backup}"):
        open_library(tmp_path, examples())
    database = open_library(tmp_path, examples(), anew=True)
    assert finding.find(database).total == len(examples())
    database.close()


def test_schema_and_examples_of_a_new_library_are_one_transaction(tmp_path, monkeypatch):
    def killed(*given, **more):
        raise KeyboardInterrupt

    monkeypatch.setattr("webapp.storage.library.put", killed)
    with pytest.raises(KeyboardInterrupt):
        open_library(tmp_path, examples())
    monkeypatch.undo()
    database = open_library(tmp_path, examples())
    assert finding.find(database).total == len(examples())
    database.close()


def test_nobody_else_may_read_the_library_nor_what_lay_there_before(tmp_path, pattern):
    data = tmp_path / "data"
    (data / "copies").mkdir(parents=True)
    (data / "copies" / "old.sqlite").write_bytes(b"x")
    (data / "copies" / "old.sqlite").chmod(0o644)
    (data / "of-somebody.sh").write_text("echo beads")
    (data / "of-somebody.sh").chmod(0o755)
    database = open_library(data)
    patterns.create(database, pattern)
    backup_folder.make(database)
    assert (data / "of-somebody.sh").stat().st_mode & 0o777 == 0o755
    (data / "of-somebody.sh").unlink()
    modes = {path.stat().st_mode & 0o777 for path in (data, *data.rglob("*")) if path.is_dir()}
    assert modes == {0o700}
    assert {path.stat().st_mode & 0o777 for path in data.rglob("*") if path.is_file()} == {0o600}
    database.close()


def test_a_file_that_is_no_library_is_refused_in_a_sentence(tmp_path):
    (tmp_path / LIBRARY).write_text("These are not the beads you are looking for. " * 100)
    with pytest.raises(LibraryError, match="cannot be opened: file is not a database"):
        open_library(tmp_path)


def test_a_library_too_damaged_to_open_says_how_to_go_on_from_the_newest_sound_backup(tmp_path):
    database = open_library(tmp_path, examples())
    sound = backup_folder.make(database)
    database.close()
    (tmp_path / LIBRARY).write_bytes(b"U" * (tmp_path / LIBRARY).stat().st_size)
    with pytest.raises(LibraryError) as refused:
        open_library(tmp_path)
    assert refused.value.message == (
        f"The library in {tmp_path} cannot be opened: file is not a database. "
        f"Put the newest sound backup in its place with “restore {sound} --data {tmp_path}”."
    )


def test_a_folder_that_cannot_be_made_is_refused_in_a_sentence(tmp_path):
    (tmp_path / "file").write_text("")
    with pytest.raises(LibraryError, match=r"cannot be opened: Not a directory|File exists"):
        open_library(tmp_path / "file" / "data")
