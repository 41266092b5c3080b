"""A picture laid round the rope: proportions, the mean of each bead's field, the seam, and the ground beside it."""

from math import isclose

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.errors import EngineError
from engine.pattern.photographs.laid import ROW, Summed, lay
from engine.pattern.repeats import drift

WHITE = np.ones(3)
AROUND = st.integers(3, 60)


def picture(values) -> Summed:
    """A grey picture of those values, 0 to 1, all of it covered."""
    grey = np.asarray(values, np.float32)
    return Summed(np.stack([grey, grey, grey, np.ones_like(grey)], axis=-1))


def noise(high: int, wide: int, seed: int = 1) -> Summed:
    return picture(np.random.default_rng(seed).random((high, wide)))


@given(AROUND, st.floats(0.2, 5))
def test_a_picture_that_goes_right_round_keeps_its_proportions_to_a_row_and_stands_straight(around, shape):
    laid = lay(around, shape)
    assert abs(laid.wide - shape * laid.high) <= ROW + 1e-9 or laid.rows == 2
    assert (laid.high, drift(around, laid.beads).beads) == (around + 0.5, 0)
    assert isclose(laid.wide, laid.length)


@given(AROUND, st.floats(0.2, 5), st.integers(1, 40))
def test_with_a_gap_the_proportions_are_kept_exactly_and_the_rest_is_ground(around, shape, gap):
    laid = lay(around, shape, high=around - 1, gap=gap)
    assert isclose(laid.wide, shape * (around - 1))
    assert gap * ROW - 1e-9 <= laid.length - laid.wide < (gap + 2) * ROW + 1e-9


def test_rows_that_are_given_stretch_it():
    assert lay(8, 1.0, rows=30).rows == 30
    assert lay(8, 1.0, rows=31, gap=3).rows == 34


@pytest.mark.parametrize(("asked", "field"), [({}, "high"), ({"rows": 4000}, "rows")])
def test_more_beads_than_a_chart_has_are_refused_at_the_field_that_makes_them(asked, field):
    with pytest.raises(EngineError, match=r"The picture would take .* beads; a chart has at most 100,000\.") as refused:
        lay(60, 900.0, **asked)
    assert refused.value.field == field


@given(st.integers(3, 20), st.integers(8, 40), st.integers(8, 40), st.integers(0, 5))
def test_fields_fill_the_rope_but_for_the_half_bead_so_that_no_light_is_lost(around, high, wide, seed):
    values = np.random.default_rng(seed).random((high, wide)).astype("f4")
    means = picture(values).means(lay(around, wide / high), WHITE)
    assert isclose(means.mean(), values.mean(), abs_tol=0.01)


def test_every_bead_is_the_mean_of_its_own_field():
    values = np.random.default_rng(3).random((130, 173)).astype("f4")
    laid = lay(6, 173 / 130)
    means = picture(values).means(laid, WHITE)[:, 0]
    fine = 40  # places a bead each way
    for k in (0, 3, 6, 7, 20, laid.beads - 1):
        turns = k / 6.5
        x = (turns * ROW + (np.arange(fine) + 0.5) / fine * ROW) % laid.length
        y = (turns % 1 * 6.5 + (np.arange(fine) + 0.5) / fine) % 6.5
        column, row = (x / laid.wide * 173).astype(int), (y / 6.5 * 130).astype(int)
        assert means[k] == pytest.approx(values[np.ix_(row, column)].mean(), abs=0.01)


@given(st.integers(3, 20), st.integers(6, 30))
def test_the_chart_said_twice_is_the_picture_laid_twice_so_that_its_ends_meet(around, high):
    once = lay(around, 20 / high)
    twice = lay(around, 40 / high, rows=2 * once.rows)
    row = np.random.default_rng(high).random((high, 20))
    means, both = (
        drawn.means(laid, WHITE) for drawn, laid in ((picture(row), once), (picture(np.tile(row, 2)), twice))
    )
    assert np.allclose(np.tile(means, (2, 1)), both, atol=1e-6)


@given(st.integers(3, 20), st.integers(1, 19))
def test_the_seam_closes_a_picture_turned_round_the_rope_gives_the_same_beads_turned(around, turned):
    tall = 2 * around + 1  # pixels round the rope, two a bead
    values = np.random.default_rng(turned).random((tall, 1)).repeat(24, axis=1)
    laid, many = lay(around, 1.0), turned % around + 1
    means = picture(values).means(laid, WHITE)
    moved = picture(np.roll(values, -2 * many, axis=0)).means(laid, WHITE)
    assert np.allclose(np.roll(means, -many, axis=0), moved, atol=1e-6)


def test_what_the_picture_leaves_free_is_ground_on_both_sides_of_it_and_behind():
    laid = lay(8, 1.0, high=4, gap=6)
    means = picture(np.zeros((9, 9))).means(laid, WHITE)[:, 0]
    assert means[:9].round(2).tolist() == [1, 1, 0.25, 0, 0, 0, 0.75, 1, 1]
    assert means[9:17].round(2).tolist() == [1, 0.75, 0, 0, 0, 0.25, 1, 1]
    assert means[-40:-8].tolist() == [1.0] * 32


def test_clear_parts_show_the_ground():
    clear = Summed(np.zeros((10, 10, 4), np.float32))
    assert np.allclose(clear.means(lay(6, 1.0), np.array([0.1, 0.2, 0.3])), (0.1, 0.2, 0.3))
