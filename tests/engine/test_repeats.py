"""How a chart repeats, drifts and closes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.pattern.repeats import closes, drift, least_ring, repeat


@pytest.mark.parametrize(
    ("beads", "length"), [(b"A", 1), (b"AAAA", 1), (b"ABAB", 2), (b"AABAA", 5), (b"ABCABCABC", 3), (b"", 0)]
)
def test_the_repeat_is_the_shortest_stretch_that_gives_the_chart(beads, length):
    assert repeat(beads) == length


@given(st.binary(min_size=1, max_size=40), st.integers(1, 6))
def test_said_again_and_again_the_repeat_gives_the_chart(stretch, times):
    chart = stretch * times
    length = repeat(chart)
    assert len(chart) % length == 0
    assert chart[:length] * (len(chart) // length) == chart
    assert all(chart[:n] * (len(chart) // n) != chart for n in range(1, length) if len(chart) % n == 0)


@given(st.integers(2, 60), st.integers(0, 10_000))
def test_drift_is_signed_and_stays_within_half_a_turn(around, beads):
    beads_off, degrees = drift(around, beads)
    girth = around + 0.5
    assert -girth / 2 < beads_off <= girth / 2
    assert (beads - beads_off) / girth == pytest.approx(round((beads - beads_off) / girth))
    assert degrees == pytest.approx(beads_off / girth * 360)


def test_a_pair_of_rows_does_not_drift():
    assert drift(12, 25) == (0, 0)
    assert drift(12, 13).beads == 0.5


def test_a_ring_closes_on_whole_repeats_that_are_long_enough():
    assert least_ring(6) == 15
    assert [total for total in range(1, 40) if closes(6, 7, total)] == [21, 28, 35]
