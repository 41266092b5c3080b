"""Patterns are kept, found, and taken back from the bin."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from webapp.storage import patterns
from webapp.storage.errors import NotFound


@pytest.fixture
def steady(database):
    """A clock that moves a minute with every look."""
    clock = iter(datetime(2026, 3, 1, tzinfo=UTC) + timedelta(minutes=n) for n in range(1000))
    database.now = lambda: next(clock)
    return database


def titles(found):
    return [summary.title for summary in found.patterns]


def test_a_pattern_is_loaded_as_it_was_kept(database, pattern):
    stored = patterns.create(database, pattern)
    assert stored == patterns.load(database, stored.id)
    assert (stored.pattern, stored.revision, stored.working, stored.sequence) == (pattern, 1, False, 0)


def test_a_pattern_that_is_not_there_is_not_found(database):
    for number in (0, -1, 7, 2**70):
        with pytest.raises(NotFound, match="There is no pattern at this address"):
            patterns.load(database, number)


def test_the_summary_says_what_a_list_shows(steady, pattern):
    patterns.create(steady, pattern, example=True)
    (summary,) = patterns.find(steady).patterns
    assert summary == type(summary)(
        1, "Small harbour", 12, 50, 50, ("11/0 round",), ("#1d3350", "#e9ebe2", "#dfa63a"), ("bracelet", "trial"),
        datetime(2026, 3, 1, tzinfo=UTC), 1, True, patterns.picture_version(pattern), False)


def test_search_finds_every_word_in_title_notes_tags_and_bead_names(database, pattern):
    patterns.create(database, pattern)
    patterns.create(database, replace(pattern, title="Meadow 100%", notes="", tags=("flowers",)))
    assert titles(patterns.find(database, "HARBOUR lamp")) == ["Small harbour"]
    assert titles(patterns.find(database, "lamps")) == ["Small harbour"]
    assert titles(patterns.find(database, "flowers 12 around")) == ["Meadow 100%"]
    assert titles(patterns.find(database, "0%")) == ["Meadow 100%"]
    assert titles(patterns.find(database, "harbour meadow")) == []
    assert titles(patterns.find(database, tag="trial")) == ["Small harbour"]
    assert patterns.find(database).tags == (("bracelet", 1), ("flowers", 1), ("trial", 1))


def test_patterns_are_sorted_and_turned_in_pages(steady, pattern):
    for title, around in (("Beta", 20), ("alpha", 12), ("Gamma", 6)):
        patterns.create(steady, replace(pattern, title=title, around=around))
    assert titles(patterns.find(steady)) == ["Gamma", "alpha", "Beta"]
    assert titles(patterns.find(steady, sort="title")) == ["alpha", "Beta", "Gamma"]
    assert titles(patterns.find(steady, sort="around")) == ["Gamma", "alpha", "Beta"]
    assert titles(patterns.find(steady, sort="nonsense")) == ["Gamma", "alpha", "Beta"]
    second = patterns.find(steady, sort="title", page=2, per_page=2)
    assert (titles(second), second.page, second.pages, second.total) == (["Gamma"], 2, 2, 3)
    assert patterns.find(steady, page=99, per_page=2).page == 2


def test_the_bin_gives_back_what_was_put_in_until_it_is_emptied(database, pattern):
    stored = patterns.create(database, pattern)
    patterns.put_into_bin(database, stored.id)
    assert titles(patterns.find(database)) == []
    assert titles(patterns.find(database, binned=True)) == ["Small harbour"]
    assert patterns.counts(database) == (0, 1)
    patterns.take_back(database, stored.id)
    assert titles(patterns.find(database)) == ["Small harbour"]
    patterns.put_into_bin(database, stored.id)
    assert patterns.empty_bin(database) == 1
    with pytest.raises(NotFound):
        patterns.take_back(database, stored.id)


def test_examples_are_removed_together_and_nothing_else(database, pattern):
    patterns.create(database, pattern, example=True)
    patterns.create(database, replace(pattern, title="Mine"))
    assert patterns.counts(database) == (1, 0)
    assert patterns.remove_examples(database) == 1
    assert titles(patterns.find(database)) == ["Mine"]
    assert patterns.all_numbers(database) == [2]


def test_the_picture_version_follows_what_is_drawn_and_not_the_words(pattern):
    version = patterns.picture_version(pattern)
    assert patterns.picture_version(replace(pattern, title="Other", notes="")) == version
    assert patterns.picture_version(replace(pattern, chart=pattern.chart[::-1] + b"\1")) != version
    assert patterns.picture_version(replace(pattern, hand="left")) != version
