"""Beads of several sizes settle until they touch: the helix for one kind, chains of touching spheres for two."""

import random
from math import sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.pattern.helix import helix
from engine.pattern.settled import MOST_SETTLED, settled, settled_charts


@pytest.mark.parametrize("around", [2, 3, 6, 12, 20, 60])
def test_beads_of_one_kind_stand_on_the_exact_helix(around):
    found, exact = settled(around, bytes(7), (1.97,)), helix(around)
    assert (found.rise, found.thickness, found.channel) == pytest.approx(
        (exact.rise, 2 * exact.radius + 1, 2 * exact.radius - 1), abs=1e-6
    )


@pytest.mark.parametrize("around", [4, 6, 12, 20])
def test_beads_that_hardly_differ_settle_back_to_the_helix(around):
    """A stretch that is said twice with sizes a hair apart: the settled mean is the helix to the second order."""
    found, exact = settled(around, bytes([0, 1, 0, 0, 1]), (1.0, 1.0 + 1e-4)), helix(around)
    assert found.off < 1e-9
    assert found.rise == pytest.approx(exact.rise, abs=1e-5)


def chain(sizes, beads):
    """Spheres each of which touches the three before it: two around, every place by trilateration."""
    d = [sizes[k % len(sizes)] for k in range(beads)]
    apart = [[(d[i] + d[j]) / 2 for j in range(beads)] for i in range(3)]
    x = (apart[0][2] ** 2 - apart[1][2] ** 2 + apart[0][1] ** 2) / (2 * apart[0][1])
    places = [np.zeros(3), np.array([apart[0][1], 0, 0]), np.array([x, sqrt(apart[0][2] ** 2 - x * x), 0])]
    side = 1.0
    for k in range(3, beads):
        a, b, c = places[-3:]
        ra, rb, rc = ((d[k] + d[k - back]) / 2 for back in (3, 2, 1))
        ex = (b - a) / np.linalg.norm(b - a)
        i = ex @ (c - a)
        ey = (c - a - i * ex) / np.linalg.norm(c - a - i * ex)
        along, j = np.linalg.norm(b - a), ey @ (c - a)
        u = (ra**2 - rb**2 + along**2) / (2 * along)
        v = (ra**2 - rc**2 + i * i + j * j - 2 * i * u) / (2 * j)
        w = sqrt(ra**2 - u * u - v * v)
        ez = np.cross(ex, ey)
        new = [a + u * ex + v * ey + sign * w * ez for sign in (1, -1)]
        if k > 3:  # away from the bead before these three
            side = max((1, -1), key=lambda sign: np.linalg.norm(new[0 if sign > 0 else 1] - places[-4]))
        places.append(new[0 if side > 0 else 1])
    return np.array(places)


@pytest.mark.parametrize(("small", "large"), [(1.0, 1.0), (1.0, 1.2), (1.976, 2.75), (1.35, 1.976)])
def test_a_chain_of_two_sizes_is_that_of_touching_spheres_set_one_on_the_other(small, large):
    """Two around every bead touches the three before it, so that the chain follows from the sizes alone."""
    found = settled(2, b"\0\1", (small, large))
    mean = (small + large) / 2
    places = chain([small / mean, large / mean], 40)[::2]
    steps = np.diff(places, axis=0)
    axis = np.cross(steps[4] - steps[5], steps[5] - steps[6])
    axis /= np.linalg.norm(axis)
    assert found.off < 1e-9
    assert found.move == pytest.approx(abs(float(steps[4] @ axis)), abs=1e-6)


def test_a_chain_of_one_size_is_the_boerdijk_coxeter_helix():
    """Equal spheres two around: rise 1/√10 a bead (see tests/outside/test_helix.py for its source)."""
    assert settled(2, b"\0\1", (1.0, 1.0)).rise == pytest.approx(1 / sqrt(10), abs=1e-9)


def test_large_beads_stand_out_and_the_rope_is_thicker_there():
    found = settled(6, bytes([0] * 5 + [1]), (1.97628, 2.75))
    out = [sqrt(x * x + y * y) + d / 2 for (x, y, _), d in zip(found.places, found.diameters, strict=True)]
    assert out[5] == max(out)
    assert found.thickness == pytest.approx(2 * out[5])
    assert found.off < 1e-9


@settings(max_examples=20)
@given(st.integers(3, 20), st.lists(st.integers(0, 2), min_size=1, max_size=40), st.floats(1.0, 1.4))
def test_what_settles_does_not_depend_on_the_unit_or_on_how_often_the_chart_is_typed(around, beads, largest):
    sizes = (1.0, 1.1, largest)
    once = settled(around, bytes(beads), sizes)
    assert settled(around, bytes(beads) * 3, sizes) == once
    other = settled(around, bytes(beads), tuple(2 * size for size in sizes))
    assert (other.rise, other.thickness) == pytest.approx((once.rise, once.thickness), abs=1e-6)
    assert once.off < 0.1


def test_two_thousand_beads_of_any_order_settle_and_more_are_left_alone():
    beads = bytes(random.Random(3).choices([0, 1], k=MOST_SETTLED))
    found = settled(12, beads, (1.97628, 2.75))
    assert found.off < 0.08
    assert found.rise == pytest.approx(helix(12).rise, rel=0.1)
    assert settled(12, beads + b"\0", (1.97628, 2.75)) is None


def test_of_several_charts_the_shortest_settle_as_long_as_nobody_waits():
    some = [bytes(random.Random(number).choices((0, 1), k=beads)) for number, beads in enumerate((1500, 400, 900))]
    plain = bytes(5)
    found = settled_charts(12, [*some, plain], (1.0, 1.2))
    assert set(found) == {some[1], some[2]}
    assert found[some[1]] == settled(12, some[1], (1.0, 1.2))
    assert settled_charts(12, [some[0]], (1.0, 1.0)) == {}
