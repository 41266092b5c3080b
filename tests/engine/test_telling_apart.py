"""Symbols and codes given out anew: beads that touch get those that differ most."""

from dataclasses import replace

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.drawing.symbols import SYMBOLS, assigned
from engine.drawing.telling_apart import (
    _change,
    _cost,
    code_likeness,
    exchanged,
    symbol_likeness,
    told_apart,
    touching,
)
from engine.pattern.lattice import neighbours
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern


def pattern(beads, codes="ABCDEFGH", around=6):
    entries = len(set(beads))
    hues = ("#1d3350", "#f2e8d5", "#b23a30", "#dfa63a", "#2c8a4a", "#6b4a6e", "#808080", "#000000")
    palette = Palette(tuple(Entry(code, f"Bead {code}", hues[n]) for n, code in enumerate(codes[:entries])))
    return Pattern("Told apart", around, palette, bytes(beads))


def worked_cost(palette, weights):
    likeness = symbol_likeness()
    places = [SYMBOLS.index(symbol) for symbol in assigned(palette)]
    return float((likeness[np.ix_(places, places)] * weights).sum())


def test_beads_that_touch_on_the_lattice_weigh_by_how_often_they_do():
    worked = pattern([0, 0, 1, 0, 2, 0, 0, 1, 0, 2] * 3, around=4)
    drawn = worked.chart * 2
    counted = np.zeros((3, 3))
    for bead in range(len(drawn)):
        for other in neighbours(4, bead):
            if other < len(drawn):
                counted[drawn[bead], drawn[other]] += 1
    np.fill_diagonal(counted, 0)
    weights = touching(worked)
    assert ((weights > 0) == (counted > 0)).all()
    assert (weights == weights.T).all()


def test_codes_of_neighbours_are_not_letters_that_are_mistaken_for_one_another():
    striped = pattern([0, 1] * 21, codes="CG")
    codes = told_apart(striped).codes
    assert code_likeness(*codes) == 0


def test_two_colours_that_never_touch_may_keep_letters_that_are_alike():
    apart = pattern([0] * 30 + [1] * 30 + [2] * 30 + [1] * 30, codes="CAG")
    assert code_likeness(*told_apart(apart).codes[:2]) == 0
    assert code_likeness(*told_apart(apart).codes[1:]) == 0


@settings(max_examples=20)
@given(st.lists(st.integers(0, 7), min_size=40, max_size=120).filter(lambda beads: set(beads) == set(range(8))))
def test_the_chart_stays_and_its_symbols_are_never_harder_to_tell(beads):
    before = pattern(beads)
    palette = told_apart(before)
    weights = touching(before)
    assert [replace(entry, code="", symbol="") for entry in palette] == [
        replace(entry, code="", symbol="") for entry in before.palette
    ]
    assert len({entry.symbol for entry in palette}) == len(palette)
    assert worked_cost(palette, weights) <= worked_cost(before.palette, weights) + 2e-3


def test_no_exchange_of_two_lowers_the_sum_further():
    likeness = symbol_likeness()[:10, :10]
    weights = touching(pattern([0, 1, 2, 3, 4, 5] * 9 + [0, 2, 4, 1, 3, 5] * 9))

    def total(places):
        return (likeness[np.ix_(places, places)] * weights).sum() + 1e-3 * sum(places) / 10

    found = exchanged(range(6), likeness, weights)
    for one in range(6):
        for other in range(one + 1, 6):
            swapped = list(found)
            swapped[one], swapped[other] = swapped[other], swapped[one]
            assert total(swapped) >= total(found) - 1e-9


def test_a_symbol_is_like_itself_and_less_like_every_other():
    likeness = symbol_likeness()
    assert np.allclose(np.diag(likeness), 1)
    assert (likeness - np.eye(64) < 0.95).all()


def test_a_palette_of_more_beads_than_letters_exchanges_its_own_codes():
    codes = [a + b for a in "ABCDEF" for b in "ABCDE"]
    palette = Palette(
        tuple(Entry(code, f"Bead {code}", f"#{n * 8:02x}{255 - n * 8:02x}80") for n, code in enumerate(codes))
    )
    wide = Pattern("Many", 6, palette, bytes(range(30)) * 3)
    assert sorted(told_apart(wide).codes) == sorted(codes)


@settings(max_examples=40)
@given(st.permutations(range(9)), st.integers(0, 5), st.data())
def test_the_change_of_an_exchange_is_that_of_the_whole_sum(order, one, data):
    other = data.draw(st.integers(one + 1, 8))
    likeness = symbol_likeness()[:9, :9]
    weights = touching(pattern([0, 1, 2, 3, 4, 5] * 9 + [0, 2, 4, 1, 3, 5] * 9))
    before, after = np.array(order), np.array(order)
    after[[one, other]] = after[[other, one]]
    worked = _cost(after[:6], likeness, weights) - _cost(before[:6], likeness, weights)
    assert np.isclose(_change(before, one, other, likeness, weights), worked)
