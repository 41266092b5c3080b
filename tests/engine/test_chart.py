"""A stretch of beads: its runs, rows and letter picture."""

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from engine.pattern.chart import Chart, runs
from tests.pictures import assert_same_chart

beads = st.binary(max_size=200).map(lambda some: bytes(bead % 64 for bead in some))


def test_the_letter_picture_stands_as_the_rope_is_worked_from_the_bottom():
    assert str(Chart(3, bytes([0, 0, 1, 1, 2, 2, 2, 3]))) == "D\n C C C\nA A B B"


@given(beads)
def test_runs_joined_are_the_beads_and_no_two_neighbours_are_alike(some):
    found = list(runs(some))
    assert b"".join(bytes([index]) * count for index, count in found) == some
    assert all(one[0] != other[0] for one, other in pairwise(found))


@given(st.integers(3, 20), beads)
def test_rows_joined_are_the_beads(around, some):
    chart = Chart(around, some)
    assert b"".join(chart.row(row) for row in range(chart.rows)) == some


@given(st.integers(3, 20), beads)
def test_turning_every_row_twice_gives_the_chart(around, some):
    assert Chart(around, some).turned_rows().turned_rows() == Chart(around, some)


def test_turned_rows_keep_every_row_in_its_place():
    chart = Chart(3, bytes([0, 1, 2, 3, 0, 1, 2]))
    assert_same_chart(
        3,
        chart.turned_rows().beads,
        """\
         C B A
        D C B A""",
    )
