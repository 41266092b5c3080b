"""Beads found by words, kind, stock and colour."""

import pytest

from engine.cabinet.bead import Bead
from engine.cabinet.finding import WantedBeads, find_beads
from engine.cabinet.nearness import by_hue

SEA = Bead("Sea glass", "#2f7f76", finish="matte", maker_code="LS-4", supplier="Pier Nine", stock_mg=12_000, key="sea")
BAY = Bead("Bay", "#37857c", kind="8/0 round", note="left of the seaside order", key="bay")
LAMP = Bead("Lamp", "#d9932b", finish="lined", stock_mg=40_000, key="lamp")
ALL = by_hue((SEA, BAY, LAMP))


@pytest.mark.parametrize(
    ("wanted", "found"),
    [
        (WantedBeads(), {"sea", "bay", "lamp"}),
        (WantedBeads(search="sea"), {"sea", "bay"}),
        (WantedBeads(search="SEA pier"), {"sea"}),
        (WantedBeads(search="ls-4"), {"sea"}),
        (WantedBeads(search="ined"), set()),
        (WantedBeads(search="lined"), {"lamp"}),
        (WantedBeads(kind="8/0 round"), {"bay"}),
        (WantedBeads(stock="in"), {"sea", "lamp"}),
        (WantedBeads(stock="out"), {"bay"}),
        (WantedBeads(near="#308078"), {"sea", "bay"}),
        (WantedBeads(near="#308078", stock="in"), {"sea"}),
    ],
)
def test_every_word_begins_a_word_and_everything_else_narrows_too(wanted, found):
    assert {bead.key for bead in find_beads(ALL, wanted)} == found


@pytest.mark.parametrize(
    ("sort", "order"),
    [
        ("name", ["bay", "lamp", "sea"]),
        ("kind", ["lamp", "sea", "bay"]),
        ("stock", ["lamp", "sea", "bay"]),
        ("hue", ["lamp", "bay", "sea"]),
    ],
)
def test_beads_stand_in_the_order_that_was_asked_for(sort, order):
    assert [bead.key for bead in find_beads(ALL, WantedBeads(), sort)] == order


def test_near_a_colour_the_nearest_stands_first():
    assert [bead.key for bead in find_beads(ALL, WantedBeads(near="#37857c"), "near")] == ["bay", "sea"]
    assert [bead.key for bead in find_beads(ALL, WantedBeads(near="#2f7f76"), "near")] == ["sea", "bay"]
