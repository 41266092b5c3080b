"""Which colour each bead takes: the nearest, or mixtures that keep the mean."""

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from engine.pattern.colour import difference, lab_of, linear_rgb, pairwise
from engine.pattern.lattice import neighbours
from engine.pattern.photographs.nearest import SURE, _roughly, carried_on, mixed_evenly, nearest
from tests.pictures import assert_same_chart

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")
BLACK_AND_WHITE = linear_rgb(["#000000", "#ffffff"])


@settings(max_examples=60)
@given(st.lists(colours, min_size=1, max_size=6), st.lists(colours, min_size=1, max_size=24, unique=True))
def test_no_colour_of_the_palette_is_nearer_by_the_authority(of, palette):
    for colour, place in zip(of, nearest(linear_rgb(of), linear_rgb(palette)), strict=True):
        least = min(difference(colour, one) for one in palette)
        assert difference(colour, palette[place]) == pytest.approx(least, abs=1e-3)


def test_the_rough_difference_leaves_out_nothing_that_could_be_nearest():
    random = np.random.default_rng(1)
    one, far = (lab_of(random.random((60_000, 3)) ** 2) for _ in range(2))
    ratio = [pairwise(one, other) / _roughly(one, other) for other in (far, one + random.normal(0, 4, one.shape))]
    assert max(map(np.max, ratio)) / min(map(np.min, ratio)) < SURE


@pytest.mark.parametrize("mixing", [mixed_evenly, carried_on])
@pytest.mark.parametrize("share", [0.1, 0.25, 0.5, 0.8])
def test_a_grey_of_black_and_white_beads_has_as_much_light(mixing, share):
    beads = mixing(12, np.full((3000, 3), share), BLACK_AND_WHITE)
    assert beads.mean() == pytest.approx(share, abs=0.02)


@pytest.mark.parametrize("mixing", [mixed_evenly, carried_on])
def test_few_white_beads_on_black_do_not_touch(mixing):
    beads = mixing(9, np.full((900, 3), 0.1), BLACK_AND_WHITE)
    white = np.flatnonzero(beads)
    assert [k for k in white if {*neighbours(9, int(k))} & {*white.tolist()}] == []


@pytest.mark.parametrize("mixing", [mixed_evenly, carried_on])
@example(["#000c0d", "#000000"], 0)
@given(st.lists(colours, min_size=1, max_size=6, unique=True), st.integers(0, 5))
def test_a_colour_of_the_palette_stays_unmixed(mixing, palette, place):
    own = place % len(palette)
    assert {*mixing(7, linear_rgb(palette)[[own] * 40], linear_rgb(palette)).tolist()} == {own}


def test_half_grey_is_mixed_bead_by_bead():
    assert_same_chart(
        4,
        bytes(carried_on(4, np.full((18, 3), 0.5), BLACK_AND_WHITE).tolist()),
        """
     A B A B
    B A B A B
     B A B A
    B B A B A
""",
    )


def test_a_mixture_is_of_two_that_lie_near_rather_than_of_black_and_white():
    palette = linear_rgb(["#000000", "#6a6a6a", "#8a8a8a", "#ffffff"])
    assert set(mixed_evenly(8, linear_rgb(["#7a7a7a"] * 200), palette).tolist()) == {1, 2}
