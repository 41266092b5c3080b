"""Answers that were given are found again by name or pattern, and stay when their pattern goes."""

import pytest

from webapp.records import Counted
from webapp.storage import given_answers, patterns
from webapp.storage.errors import NotFound


@pytest.fixture
def given(database, pattern):
    """A pattern, and two answers about it."""
    number = patterns.create(database, pattern).id
    counted = Counted(pattern, 1, "{}")
    for name, beads in (("Marta Lind", 3119), ("Ole 100 %", 2000)):
        given_answers.keep(database, number, name, counted, "pattern=1&length=45+cm", f"{beads} beads", beads)
    return number


def names(found):
    return [answer.name for answer in found]


def test_they_are_found_by_parts_of_the_name_or_the_title_the_newest_first(database, given):
    assert names(given_answers.find(database)) == ["Ole 100 %", "Marta Lind"]
    assert names(given_answers.find(database, "lind HARB")) == ["Marta Lind"]
    assert names(given_answers.find(database, "100 %")) == ["Ole 100 %"]
    assert names(given_answers.find(database, "_")) == []
    assert names(given_answers.find(database, pattern=given)) == ["Ole 100 %", "Marta Lind"]
    assert given_answers.find(database, pattern=given + 1) == given_answers.find(database, pattern=-1) == ()


def test_an_answer_outlives_its_pattern_and_is_forgotten_when_asked(database, pattern, given):
    patterns.put_into_bin(database, given)
    patterns.empty_bin(database)
    newest = given_answers.find(database)[0]
    assert (newest.title, newest.sent, newest.beads, newest.counted.pattern) == (
        "Small harbour",
        "2000 beads",
        2000,
        pattern,
    )
    assert given_answers.remove(database, newest.id) == newest
    with pytest.raises(NotFound):
        given_answers.load(database, newest.id)
