"""Photographs stand in the order of the maker, ten at most, all that were sent or none."""

import pytest

from webapp.storage import patterns, photographs
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
    photographs.move_up(database, number, third.id)
    photographs.move_up(database, number, first.id)
    assert seen(database, number) == [b"first", b"third", b"second"]
    photographs.describe(database, number, third.id, "Closed", "A ring on linen")
    assert photographs.of(database, number)[1][1:3] == ("Closed", "A ring on linen")
    photographs.remove(database, number, first.id)
    assert seen(database, number) == [b"third", b"second"]


def test_more_than_ten_are_refused_and_none_of_them_kept(database, number):
    photographs.add_all(database, number, PICTURES * 4)
    with pytest.raises(photographs.TooMany, match="at most 10 photographs, and 8 are there already; nothing was added"):
        photographs.add_all(database, number, PICTURES * 2)
    assert len(seen(database, number)) == 8


def test_a_photograph_of_another_pattern_is_not_given(database, number, pattern):
    photographs.add_all(database, number, PICTURES)
    other, found = patterns.create(database, pattern).id, photographs.of(database, number)[0].id
    for wrong in (photographs.jpeg, photographs.remove, photographs.move_up):
        with pytest.raises(NotFound, match="There is no such photograph"):
            wrong(database, other, found)
    assert len(seen(database, number)) == 2
