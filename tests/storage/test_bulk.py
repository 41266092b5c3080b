"""Several patterns binned, taken back and tagged at once."""

from dataclasses import replace

import pytest

from engine.errors import PatternError
from webapp.storage import bulk, finding, history, patterns, revisions
from webapp.storage.errors import NotFound


@pytest.fixture
def three(database, pattern):
    for title in ("Alpha", "Beta", "Gamma"):
        patterns.create(database, replace(pattern, title=title, tags=("sea",) if title == "Alpha" else ()))
    return database


def test_only_what_changes_is_given_back_to_be_undone(three):
    patterns.put_into_bin(three, 2)
    assert bulk.set_binned(three, (1, 2, 9), True) == (1,)
    assert finding.numbers(three) == [3]
    assert bulk.set_binned(three, (1,), False) == (1,)
    assert finding.numbers(three) == [1, 3]


def test_a_tag_is_put_on_those_that_do_not_carry_it_and_taken_off_again(three):
    assert bulk.set_tag(three, (1, 2, 3), "sea", True) == (2, 3)
    assert finding.find(three).tags == (("sea", 3),)
    assert history.kept_revision(three, 2, 2).note == "Tag “sea” added"
    assert bulk.set_tag(three, (2, 3), "sea", False) == (2, 3)
    assert finding.find(three).tags == (("sea", 1),)


def test_a_working_copy_is_kept_before_its_pattern_is_tagged(three):
    stored = patterns.load(three, 2)
    revisions.write_working(three, 2, replace(stored.pattern, title="Drawn"), 0)
    bulk.set_tag(three, (2,), "sea", True)
    stands = patterns.load(three, 2)
    assert (stands.pattern.title, stands.pattern.tags, stands.working, stands.revision) == ("Drawn", ("sea",), False, 3)


@pytest.mark.parametrize(("numbers", "tag", "error"), [((1, 99), "new", NotFound), ((2, 1), "x" * 41, PatternError)])
def test_where_one_cannot_be_tagged_none_is(three, numbers, tag, error):
    with pytest.raises(error):
        bulk.set_tag(three, numbers, tag, True)
    assert finding.find(three).tags == (("sea", 1),)
