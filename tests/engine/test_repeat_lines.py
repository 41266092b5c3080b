"""Where lines part one repeat of a chart from the next."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as some

from engine.drawing.charts import ROW, extent, repeat_ends, repeat_lines
from tests.booklets import scattered


def repeated(around: int, repeat: int, many: int):
    once = scattered(around, repeat)
    return replace(once, chart=once.chart * many)


def test_long_repeats_are_all_parted_of_short_ones_the_first_is_closed() -> None:
    assert repeat_ends(repeated(6, 40, 3)) == (40, 80)
    assert repeat_ends(replace(scattered(6, 10), chart=bytes((0, 1, 2)) * 8)) == (3,)
    assert repeat_ends(scattered(6, 40)) == ()
    assert repeat_ends(replace(scattered(6, 10), chart=bytes(30))) == ()


def test_a_repeat_of_one_row_is_closed_by_a_straight_line() -> None:
    pattern = replace(scattered(6, 10), chart=bytes((0, 1, 2, 0, 1, 3, 2)) * 4)
    ((begin, end),) = repeat_lines(pattern)
    assert begin == pytest.approx((0.5, 4 * ROW)) and end == pytest.approx((6.5, 4 * ROW))


def test_a_repeat_that_ends_inside_a_row_is_closed_by_a_step() -> None:
    pattern = replace(scattered(6, 10), chart=bytes((0, 1, 2)) * 8)
    (step,) = repeat_lines(pattern)
    assert [x for x, _ in step] == pytest.approx([0.0, 3.0, 3.0, 7.0])
    assert step[0][1] == step[1][1] < step[2][1] == step[3][1]


@given(some.integers(3, 30), some.integers(20, 200), some.integers(2, 4))
def test_lines_stay_within_the_chart(around: int, repeat: int, many: int) -> None:
    pattern = repeated(around, repeat, many)
    width, height = extent(pattern)
    for line in repeat_lines(pattern):
        assert all(-1e-9 <= x <= width + 1e-9 and -1e-9 <= y <= height + 1e-9 for x, y in line)
