"""Few colours for many: found in a picture, or the nearest of those at hand."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from engine.pattern.colour import difference, linear_rgb
from engine.pattern.photographs.few_colours import few_colours, those_at_hand

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


def test_the_colours_of_a_flat_drawing_are_found_as_they_are_the_most_frequent_first():
    drawn = linear_rgb(["#1d3350"] * 40 + ["#f2e8d5"] * 70 + ["#b23a30"] * 9)
    assert few_colours(drawn, 3) == ("#f2e8d5", "#1d3350", "#b23a30")
    assert few_colours(drawn, 24) == ("#f2e8d5", "#1d3350", "#b23a30")


@given(st.lists(colours, min_size=1, max_size=40), st.integers(1, 24))
def test_there_are_never_more_than_asked_and_the_same_picture_gives_the_same(of, many):
    found = few_colours(linear_rgb(of), many)
    assert 1 <= len(found) <= min(many, len(of))
    assert len(set(found)) == len(found)
    assert few_colours(linear_rgb(of), many) == found


@given(st.lists(colours, min_size=1, max_size=24, unique=True))
def test_with_room_for_all_each_colour_has_one_that_looks_like_it(of):
    found = few_colours(linear_rgb(of), 24)
    assert max(min(difference(colour, one) for one in found) for colour in of) < 1


def test_a_fade_is_cut_evenly():
    grey = np.linspace(0, 1, 500)[:, None].repeat(3, axis=1) ** 3  # even in OKLab
    shades = [int(colour[1:3], 16) for colour in sorted(few_colours(grey, 5))]
    steps = np.diff([np.cbrt(linear_rgb([f"#{shade:02x}" * 1 + f"{shade:02x}" * 2])[0, 0]) for shade in shades])
    assert np.allclose(steps, 0.2, atol=0.02)


def test_of_those_at_hand_each_is_taken_once_and_the_first_colour_chooses_first():
    assert those_at_hand(("#ff0000", "#fe0101", "#0000ff"), ("#0000ee", "#ee0000", "#c01010")) == (1, 2, 0)
    assert those_at_hand(("#ff0000", "#0000ff"), ("#123456",)) == (0,)
