"""What is inside a backup is compared with the present library."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from webapp.storage import backup_contents, backup_folder, patterns, revisions


@pytest.fixture
def kept(database, pattern):
    """A library of three patterns, and its backup."""
    database.now = lambda: datetime(2026, 3, 2, 9, tzinfo=UTC)
    for title in ("Alpha", "Beta", "Gamma"):
        patterns.create(database, replace(pattern, title=title))
    return backup_folder.make(database)


def change(database, pattern):
    revisions.save(database, 1, replace(pattern, title="Alpha, wider"), 1)
    patterns.put_into_bin(database, 2)
    patterns.empty_bin(database)
    patterns.create(database, replace(pattern, title="Delta"))


def test_what_is_inside_is_shown_beside_the_present_library(database, pattern, kept):
    change(database, pattern)
    found = backup_contents.compare(database, kept)
    assert (found.path, found.patterns, found.binned, found.newest) == (kept, 3, 0, datetime(2026, 3, 2, 9, tzinfo=UTC))
    assert found.lines == (("Beta", "comes back"), ("Alpha", "is changed"), ("Delta", "goes"), ("Gamma", "stays"))


def test_a_pattern_in_the_bin_is_not_the_same(database, kept):
    patterns.put_into_bin(database, 3)
    assert dict(backup_contents.compare(database, kept).lines) == {
        "Alpha": "stays",
        "Beta": "stays",
        "Gamma": "is changed",
    }
