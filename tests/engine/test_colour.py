"""Which beads of a palette look alike, and to whom."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.pattern.colour import TOO_NEAR, difference, look_alikes
from engine.pattern.palette import Entry, Palette

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


def palette(*of):
    return Palette(tuple(Entry(code, f"Bead {code}", colour) for code, colour in zip("ABCDEFGH", of, strict=False)))


def test_two_near_blues_look_alike_to_everyone():
    (pair,) = look_alikes(palette("#1d3350", "#203755", "#f2e8d5"))
    assert (pair.first, pair.second, pair.sight) == (0, 1, "plain")


def test_a_red_and_a_green_may_look_alike_only_to_some():
    (pair,) = look_alikes(palette("#a39000", "#ff0000", "#2040c0"))
    assert (pair.first, pair.second, pair.sight) == (0, 1, "deutan")


def test_beads_far_apart_are_not_questioned():
    assert look_alikes(palette("#1d3350", "#f2e8d5", "#b23a30", "#dfa63a")) == ()


@given(st.lists(colours, min_size=2, max_size=6))
def test_the_form_for_whole_palettes_agrees_with_the_authority(of):
    found = {(pair.first, pair.second): pair.difference for pair in look_alikes(palette(*of)) if pair.sight == "plain"}
    for second in range(len(of)):
        for first in range(second):
            apart = difference(of[first], of[second])
            assert ((first, second) in found) == (apart < TOO_NEAR) or apart == pytest.approx(TOO_NEAR, abs=1e-3)
            if (first, second) in found:
                assert found[first, second] == pytest.approx(apart, abs=1e-3)
