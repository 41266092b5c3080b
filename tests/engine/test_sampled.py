"""A colour out of a photograph: the middle of the area in linear light, without the highlights."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.cabinet.sampled import sampled_colour
from engine.pattern.colour import hex_of, linear_rgb
from engine.pattern.rgb import rgb

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


def area(colour, side=20):
    return np.full((side, side, 3), rgb(colour), np.uint8)


@given(colours, st.integers(1, 9))
def test_an_area_of_one_colour_has_that_colour(colour, side):
    assert sampled_colour(area(colour, side)) == colour


def test_two_colours_are_averaged_as_light_not_as_numbers():
    photograph = area("#404040")
    photograph[:, 10:] = rgb("#606060")
    mean = hex_of(linear_rgb(["#404040", "#606060"]).mean(axis=0, keepdims=True))[0]
    assert sampled_colour(photograph) == mean == "#525252"


def test_highlights_are_left_out():
    photograph = area("#2f5f76")
    photograph[7:11, 7:11] = 255
    photograph[11:13, 7:11] = rgb("#b0d0e0")
    assert sampled_colour(photograph) == "#2f5f76"


def test_the_corners_of_the_area_do_not_count():
    photograph = area("#2f5f76")
    photograph[:3, :3] = photograph[-3:, -3:] = 0
    assert sampled_colour(photograph) == "#2f5f76"


@pytest.mark.parametrize("colour", ["#ffffff", "#fdfcfb", "#000000"])
def test_a_white_or_a_black_bead_keeps_its_colour(colour):
    assert sampled_colour(area(colour)) == colour
