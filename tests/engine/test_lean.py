"""Lines of short repeats lean as the bead plane has it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.pattern.lean import lean, lean_in_words


def test_lines_take_the_shortest_way_to_the_same_place_of_a_repeat() -> None:
    """Calculated from the flat model of touching beads, six around."""
    steps = {2: 6, 3: 6, 6: 6, 4: 8, 8: 8, 5: 5, 7: 7, 11: 11, 12: 12, 13: 13, 14: 14}
    assert {repeat: lean(6, repeat).step for repeat in steps} == steps


@pytest.mark.parametrize(("repeat", "degrees"), [(6, -37.59), (7, 22.41), (13, -7.59)])
def test_six_around_they_lean_by_thirty_degrees_and_the_lean_of_the_rows(repeat: int, degrees: float) -> None:
    """30 + 7.59, 30 - 7.59 and 7.59 degrees: arctan(√3 / (2N + 1)) is the chiral angle of a lattice rolled up (N, 1)."""
    assert lean(6, repeat).degrees == pytest.approx(degrees, abs=0.005)


@given(st.integers(3, 60), st.integers(2, 14))
def test_a_line_comes_back_to_its_place_in_the_repeat(around: int, repeat: int) -> None:
    found = lean(around, repeat)
    assert found.step > 0 and found.step % repeat == 0
    assert -90 < found.degrees <= 90


@given(st.integers(3, 60))
def test_repeats_that_divide_a_round_lean_to_the_left_and_one_bead_more_to_the_right(around: int) -> None:
    assert lean(around, around).degrees < 0 < lean(around, around + 1).degrees


def test_a_lean_is_told_in_words() -> None:
    assert [lean_in_words(6, repeat) for repeat in (6, 7, 13, 1)] == [
        "lines lean to the left, 38°",
        "lines lean to the right, 22°",
        "lines run nearly along the rope, 8° off",
        "lines go round the rope",
    ]
