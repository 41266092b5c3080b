"""The spiral: where beads sit, which touch, and in which sense it runs."""

from itertools import combinations
from math import cos, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.rope import helix
from engine.pattern.lattice import (
    Place,
    angle,
    first_of_row,
    neighbours,
    place,
    row_length,
    rows,
    turns,
)

arounds = st.integers(2, 60)


def test_rows_hold_one_more_and_as_many_as_the_rope_is_around_by_turns():
    assert [place(3, k) for k in (0, 3, 4, 6, 7)] == [
        Place(0, 0),
        Place(0, 3),
        Place(1, 0.5),
        Place(1, 2.5),
        Place(2, 0),
    ]


@given(arounds, st.integers(0, 100_000))
def test_a_bead_is_found_again_at_its_place(around, k):
    row, x = place(around, k)
    assert first_of_row(around, row) + int(x) == k
    assert first_of_row(around, row) <= k < first_of_row(around, row) + row_length(around, row)


@given(arounds, st.integers(0, 100_000))
def test_a_drawn_row_is_one_turn_of_the_spiral_to_within_half_a_bead(around, k):
    row, x = place(around, k)
    assert (row + (x + 0.5) / (around + 0.5)) == pytest.approx(turns(around, k), abs=1.01 / (around + 0.5))


@given(arounds, st.integers(1, 5000))
def test_the_last_bead_stands_in_the_last_row(around, beads):
    assert rows(around, beads) == place(around, beads - 1).row + 1


def test_no_beads_have_no_rows():
    assert rows(6, 0) == 0


@given(arounds, st.integers(0, 300), st.integers(0, 300))
def test_touching_goes_both_ways(around, k, step):
    total = 2 * around + 3 + step
    k %= total
    assert all(k in neighbours(around, other, total) for other in neighbours(around, k, total))


@given(arounds, st.integers(0, 200))
def test_a_ring_long_enough_has_six_neighbours_everywhere_and_the_faces_of_a_torus(around, more):
    total = 2 * around + 3 + more
    near = [set(neighbours(around, k, total)) for k in range(total)]
    assert {len(some) for some in near} == {6}
    edges = {frozenset((a, b)) for a in range(total) for b in near[a]}
    faces = {frozenset((k, (k + step) % total, (k + around + 1) % total)) for k in range(total) for step in (1, around)}
    assert (len(edges), len(faces)) == (3 * total, 2 * total)
    assert {frozenset(side) for face in faces for side in combinations(face, 2)} == edges


def test_an_open_rope_has_fewer_neighbours_at_its_start():
    assert neighbours(6, 0) == (1, 6, 7)
    assert neighbours(6, 20) == (13, 14, 19, 21, 26, 27)


@given(st.integers(3, 60), st.integers(0, 500))
def test_right_handed_work_climbs_as_a_right_handed_helix(around, k):
    def out(bead):
        return cos(angle(around, bead)), sin(angle(around, bead))

    (x, y), (next_x, next_y) = out(k), out(k + 1)
    assert x * next_y - y * next_x > 0


@given(st.integers(2, 24))
def test_beads_that_touch_on_the_lattice_are_the_spheres_that_touch(around):
    radius, twist, rise = helix(around)
    points = [(radius * cos(k * twist), radius * sin(k * twist), k * rise) for k in range(3 * around + 4)]
    touching = {
        (a, b)
        for a, b in combinations(range(len(points)), 2)
        if sum((p - q) ** 2 for p, q in zip(points[a], points[b], strict=True)) < 1.0001**2
    }
    near = {(a, b) for a in range(len(points)) for b in neighbours(around, a) if a < b < len(points)}
    assert touching == near
