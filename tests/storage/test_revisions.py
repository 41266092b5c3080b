"""A save names what it was made from; an older one is refused and nothing is lost."""

from dataclasses import replace

import pytest

from webapp.storage import finding, patterns, revisions
from webapp.storage.errors import NotFound, Stale


@pytest.fixture
def number(database, pattern):
    return patterns.create(database, pattern).id


def test_a_save_is_a_new_revision_and_the_old_one_stays(database, pattern, number):
    changed = replace(pattern, title="Large harbour")
    assert revisions.save(database, number, changed, made_from=1) == 2
    assert patterns.load(database, number).pattern == changed
    assert revisions.revision(database, number, 1).pattern == pattern
    assert [summary.title for summary in finding.find(database).patterns] == ["Large harbour"]


def test_a_save_from_an_older_revision_is_refused_and_changes_nothing(database, pattern, number):
    revisions.save(database, number, replace(pattern, title="First"), made_from=1)
    with pytest.raises(Stale) as refused:
        revisions.save(database, number, replace(pattern, title="Second"), made_from=1)
    assert refused.value.message == (
        "This pattern has been saved since: revision 2 is the newest, and this was made from revision 1. Nothing was changed."
    )
    assert patterns.load(database, number).pattern.title == "First"


def test_the_pattern_as_it_stands_is_its_working_copy(database, pattern, number):
    drawn = replace(pattern, chart=pattern.chart[:-1])
    assert revisions.write_working(database, number, drawn, sequence=0) == 1
    stored = patterns.load(database, number)
    assert (stored.pattern, stored.working, stored.revision, stored.sequence) == (drawn, True, 1, 1)
    assert finding.find(database).patterns[0].beads == 49


def test_a_working_copy_written_by_another_page_is_not_overwritten(database, pattern, number):
    revisions.write_working(database, number, replace(pattern, title="Theirs"), sequence=0)
    with pytest.raises(Stale, match="its sequence is 1, this page knows 0"):
        revisions.write_working(database, number, replace(pattern, title="Mine"), sequence=0)
    assert patterns.load(database, number).pattern.title == "Theirs"


def test_a_save_keeps_the_working_copy_as_a_revision_of_its_own(database, pattern, number):
    revisions.write_working(database, number, replace(pattern, title="Working"), sequence=0)
    assert revisions.save(database, number, replace(pattern, title="Saved"), made_from=1) == 3
    assert revisions.revision(database, number, 2).pattern.title == "Working"
    stored = patterns.load(database, number)
    assert (stored.pattern.title, stored.working, stored.sequence) == ("Saved", False, 2)


def test_leaving_makes_the_working_copy_a_revision(database, pattern, number):
    assert revisions.keep_working(database, number) == 1
    revisions.write_working(database, number, replace(pattern, title="Working"), sequence=0)
    assert revisions.keep_working(database, number) == 2
    stored = patterns.load(database, number)
    assert (stored.pattern.title, stored.working) == ("Working", False)


def test_revisions_go_with_their_pattern(database, pattern, number):
    patterns.put_into_bin(database, number)
    patterns.empty_bin(database)
    with pytest.raises(NotFound):
        revisions.revision(database, number, 1)


@pytest.mark.parametrize("wanted", [0, -3, 2])
def test_a_revision_that_never_was_is_not_found(database, number, wanted):
    with pytest.raises(NotFound, match=f"There is no revision {wanted} of this pattern"):
        revisions.revision(database, number, wanted)
