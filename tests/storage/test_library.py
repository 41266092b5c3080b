"""A data folder is opened: made at the first start, with examples, and refused in a sentence when it cannot be."""

import pytest

from webapp.demo import examples
from webapp.storage import finding, patterns
from webapp.storage.database import LIBRARY
from webapp.storage.errors import LibraryError
from webapp.storage.library import open_library


def test_the_first_start_puts_in_the_examples_and_the_second_does_not(tmp_path):
    for _ in range(2):
        database = open_library(tmp_path / "new" / "data", examples())
        found = finding.find(database)
        assert [(summary.title, summary.around, summary.example) for summary in found.patterns] == [
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


def test_a_file_that_is_no_library_is_refused_in_a_sentence(tmp_path):
    (tmp_path / LIBRARY).write_text("These are not the beads you are looking for. " * 100)
    with pytest.raises(LibraryError, match="cannot be opened: file is not a database"):
        open_library(tmp_path)


def test_a_folder_that_cannot_be_made_is_refused_in_a_sentence(tmp_path):
    (tmp_path / "file").write_text("")
    with pytest.raises(LibraryError, match=r"cannot be opened: Not a directory|File exists"):
        open_library(tmp_path / "file" / "data")
