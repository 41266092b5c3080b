"""Photographs stand in the order of the maker, ten at most, all that were sent or none."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from webapp.storage import library_export, patterns, photographs
from webapp.storage.errors import NotFound

PICTURES = [(b"first", 900, 600), (b"second", 600, 900)]


@pytest.fixture
def number(database, pattern):
    return patterns.create(database, pattern).id


def seen(database, number):
    return [photographs.jpeg(database, number, one.id) for one in photographs.of(database, number)]


def test_photographs_are_kept_in_order_and_can_be_moved_described_and_removed(database, number):
    photographs.add_all(database, number, PICTURES)
    photographs.add_all(database, number, [(b"third", 300, 300)])
    first, second, third = photographs.of(database, number)
    assert (first.width, first.height, second.height) == (900, 600, 900)
    photographs.move(database, number, third.id, up=True)
    photographs.move(database, number, first.id, up=True)
    photographs.move(database, number, second.id, up=False)
    assert seen(database, number) == [b"first", b"third", b"second"]
    photographs.move(database, number, first.id, up=False)
    assert seen(database, number) == [b"third", b"first", b"second"]
    photographs.describe(database, number, third.id, "Closed", "A ring on linen")
    assert photographs.of(database, number)[0][1:3] == ("Closed", "A ring on linen")
    photographs.remove(database, number, first.id)
    assert seen(database, number) == [b"third", b"second"]
    photographs.move(database, number, third.id, up=True)
    assert seen(database, number) == [b"third", b"second"]


@given(st.lists(st.tuples(st.sampled_from(("remove", "take_back", "up", "down")), st.integers(0, 4)), max_size=8))
@settings(max_examples=15, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_whatever_is_removed_and_moved_nothing_is_lost_or_stands_twice(database, pattern, presses):
    number = patterns.create(database, pattern).id
    made = photographs.add_all(database, number, [(bytes([place]), 300, 300) for place in range(5)])
    for press, place in presses:
        before = [one.id for one in photographs.of(database, number)]
        if press in ("up", "down"):
            photographs.move(database, number, made[place], press == "up")
        else:
            getattr(photographs, press)(database, number, made[place])
        after, gone = ([one.id for one in found(database, number)] for found in (photographs.of, photographs.removed))
        assert sorted(after + gone) == list(made)
        if press == "remove" and made[place] in before:
            photographs.take_back(database, number, made[place])
            assert [one.id for one in photographs.of(database, number)] == before
            photographs.remove(database, number, made[place])


def test_of_those_removed_the_last_ten_are_kept_until_they_are_let_go(database, number):
    for _ in range(2):
        for one in photographs.add_all(database, number, PICTURES * 5)[:6]:
            photographs.remove(database, number, one)
        for one in photographs.of(database, number):
            photographs.remove(database, number, one.id)
    assert (photographs.of(database, number), len(photographs.removed(database, number))) == ((), 10)
    photographs.forget_removed(database, number)
    assert photographs.removed(database, number) == ()


def test_one_that_is_removed_does_not_travel(database, number):
    first, _ = photographs.add_all(database, number, PICTURES)
    photographs.remove(database, number, first)
    (portable,) = library_export.export_patterns(database, [number])
    assert [one.jpeg for one in portable.photographs] == [b"second"]


def test_more_than_ten_are_refused_and_none_of_them_kept(database, number):
    photographs.add_all(database, number, PICTURES * 4)
    with pytest.raises(photographs.TooMany, match="at most 10 photographs, and 8 are there already; nothing was added"):
        photographs.add_all(database, number, PICTURES * 2)
    assert len(seen(database, number)) == 8


def test_a_photograph_of_another_pattern_is_not_given(database, number, pattern):
    photographs.add_all(database, number, PICTURES)
    other, found = patterns.create(database, pattern).id, photographs.of(database, number)[0].id
    for wrong in (photographs.jpeg, photographs.remove, photographs.take_back):
        with pytest.raises(NotFound, match="There is no such photograph"):
            wrong(database, other, found)
    assert len(seen(database, number)) == 2
