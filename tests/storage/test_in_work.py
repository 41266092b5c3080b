"""Pieces in work keep the list they were begun with and their place, and two pages do not overwrite one another."""

from dataclasses import replace

import pytest

from webapp.records import Counted
from webapp.storage import in_work, patterns, revisions
from webapp.storage.errors import NotFound, Rejected, Stale


@pytest.fixture
def begun(database, pattern):
    """A pattern and a piece of it."""
    number = patterns.create(database, pattern).id
    return number, in_work.begin(
        database, number, "For Marta", Counted(pattern, 1, '{"hand": "right"}'), "length=45+cm"
    )


def test_a_piece_keeps_the_pattern_as_it_was_begun(database, pattern, begun):
    number, piece = begun
    revisions.save(database, number, replace(pattern, chart=pattern.chart[1:]), 1)
    (kept,) = in_work.pieces(database, number)
    assert (kept.id, kept.name, kept.counted, kept.asked) == (
        piece,
        "For Marta",
        Counted(pattern, 1, '{"hand": "right"}'),
        "length=45+cm",
    )
    assert (kept.thread, kept.strung, kept.sequence, kept.state) == (1, 0, 0, "open")


def test_a_page_that_missed_a_change_of_the_place_is_refused(database, begun):
    number, piece = begun
    assert in_work.move(database, piece, 2, 17, 0) == 1
    with pytest.raises(Stale, match="changed on another page"):
        in_work.move(database, piece, 1, 3, 0)
    kept = in_work.piece(database, number, piece)
    assert (kept.thread, kept.strung, kept.sequence) == (2, 17, 1)


def test_only_a_piece_that_is_not_in_work_is_removed(database, begun):
    number, piece = begun
    with pytest.raises(Rejected, match="put it away first"):
        in_work.remove(database, piece)
    in_work.put(database, piece, "away")
    in_work.rename(database, piece, "For Ole")
    assert [(kept.name, kept.state) for kept in in_work.pieces(database, number)] == [("For Ole", "away")]
    in_work.remove(database, piece)
    with pytest.raises(NotFound):
        in_work.piece(database, number, piece)


def test_a_piece_of_one_pattern_is_not_found_at_another(database, pattern, begun):
    other = patterns.create(database, pattern).id
    with pytest.raises(NotFound):
        in_work.piece(database, other, begun[1])


def test_a_piece_goes_with_its_pattern(database, begun):
    number, piece = begun
    patterns.put_into_bin(database, number)
    patterns.empty_bin(database)
    with pytest.raises(NotFound):
        in_work.move(database, piece, 1, 1, 0)
