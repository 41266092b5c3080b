"""What was made takes off the stock as far as it goes, and undone puts exactly that back."""

from dataclasses import replace

import pytest

from engine.cabinet.bead import Bead
from webapp.storage import beads, making, patterns
from webapp.storage.errors import NotFound

SEA = Bead("Sea", "#2f7f76", stock_mg=5_000)


@pytest.fixture
def number(database, pattern):
    return patterns.create(database, pattern).id


@pytest.fixture
def sea(database):
    return beads.add(database, SEA)


def stock(database, key):
    return beads.load(database, key).bead.stock_mg


def test_a_piece_takes_its_beads_off_the_stock(database, number, sea):
    making.note_made(database, number, 2, "45.0 cm, clasp", {sea: 1_800})
    assert stock(database, sea) == 3_200
    (made,) = making.last_made(database, number)
    assert (made.title, made.pieces, made.size, made.taken, made.undone) == (
        "Small harbour",
        2,
        "45.0 cm, clasp",
        {sea: 1_800},
        False,
    )


def test_undone_once_or_twice_the_stock_is_as_before(database, number, sea):
    made = making.note_made(database, number, 9, "", {sea: 8_000})
    assert stock(database, sea) == 0
    for _ in range(2):
        making.undo(database, made)
        assert stock(database, sea) == 5_000
    assert making.last_made(database, number)[0].undone


def test_what_was_bought_meanwhile_stays(database, number, sea):
    made = making.note_made(database, number, 1, "", {sea: 1_000})
    bead = beads.load(database, sea).bead
    beads.save(database, replace(bead, stock_mg=bead.stock_mg + 20_000))
    making.undo(database, made)
    assert stock(database, sea) == 25_000


def test_nothing_is_taken_off_where_a_bead_is_not_there(database, number, sea):
    with pytest.raises(NotFound):
        making.note_made(database, number, 1, "", {sea: 1_000, "gone": 5})
    assert stock(database, sea) == 5_000
    with pytest.raises(NotFound):
        making.undo(database, 99)
