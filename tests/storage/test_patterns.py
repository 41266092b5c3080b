"""Patterns are kept, loaded as they stand, and taken back from the bin."""

from dataclasses import replace

import pytest

from webapp.storage import finding, patterns
from webapp.storage.errors import NotFound
from webapp.storage.tables import EditionRow


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


def test_the_bin_gives_back_what_was_put_in_until_it_is_emptied(database, pattern):
    stored = patterns.create(database, pattern)
    patterns.put_into_bin(database, stored.id)
    assert titles(finding.find(database)) == []
    assert titles(finding.find(database, binned=True)) == ["Small harbour"]
    assert finding.counts(database) == (0, 1)
    patterns.take_back(database, stored.id)
    assert titles(finding.find(database)) == ["Small harbour"]
    patterns.put_into_bin(database, stored.id)
    assert patterns.empty_bin(database) == 1
    with pytest.raises(NotFound):
        patterns.take_back(database, stored.id)


def test_emptying_the_bin_leaves_what_was_published(database, pattern):
    number = patterns.create(database, pattern).id
    with database.writing() as session:
        session.add(EditionRow(pattern=number, number=1, revision=1, published=database.now(), note="", words=""))
    patterns.put_into_bin(database, number)
    assert patterns.empty_bin(database) == 0
    assert titles(finding.find(database, binned=True)) == ["Small harbour"]


def test_examples_are_removed_together_and_nothing_else(database, pattern):
    patterns.create(database, pattern, example=True)
    patterns.create(database, replace(pattern, title="Mine"))
    assert finding.counts(database) == (1, 0)
    assert patterns.remove_examples(database) == (1,)
    assert titles(finding.find(database)) == ["Mine"]
    assert finding.numbers(database) == [2]


def test_the_picture_version_follows_what_is_drawn_and_not_the_words(pattern):
    version = patterns.picture_version(pattern)
    assert patterns.picture_version(replace(pattern, title="Other", notes="")) == version
    assert patterns.picture_version(replace(pattern, chart=pattern.chart[::-1] + b"\1")) != version
    assert patterns.picture_version(replace(pattern, hand="left")) != version
