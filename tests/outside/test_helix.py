"""The rope's helix against the Boerdijk–Coxeter helix and a table solved with thirty digits.

Sources: Wikipedia, "Boerdijk–Coxeter helix", https://en.wikipedia.org/wiki/Boerdijk%E2%80%93Coxeter_helix (R = 3√3/10,
θ = arccos(−2/3), rise 1/√10 for edges of 1, every sphere touches six). The packing [N + 1, N, 1]: A. Mughal, H. K. Chan,
D. Weaire, S. Hutzler, arXiv:1203.3373; the table was computed from its equations. Nanotube girth: the diameter of a
tube (n, m) is (a/π)·√(n² + nm + m²), https://github.com/t3n0/cntt; here (n, m) = (N, 1).
"""

from math import acos, degrees, pi, sin, sqrt

import pytest

from engine.counting.rope import helix

TABLE = {  # around: radius, twist in degrees, rise, in bead diameters
    2: (0.51961524, 131.81031, 0.31622777),
    3: (0.6452620, 97.743120, 0.23468934),
    4: (0.7856106, 77.414818, 0.18598240),
    5: (0.9325850, 63.979611, 0.15376076),
    6: (1.0831852, 54.468269, 0.13093361),
    7: (1.2359993, 47.393551, 0.11394570),
    8: (1.3902673, 41.931568, 0.10082547),
    9: (1.5455416, 37.590442, 0.09039481),
    10: (1.7015412, 34.058980, 0.08190782),
    11: (1.8580808, 31.130975, 0.07486998),
    12: (2.0150329, 28.664515, 0.06894079),
    14: (2.3298386, 24.740344, 0.05950609),
    16: (2.6454861, 21.758774, 0.05233668),
    18: (2.9617052, 19.417211, 0.04670570),
    20: (3.2783299, 17.529872, 0.04216674),
}


def test_two_around_is_the_boerdijk_coxeter_helix():
    radius, twist, rise = helix(2)
    assert radius == pytest.approx(3 * sqrt(3) / 10, abs=1e-12)
    assert twist == pytest.approx(acos(-2 / 3), abs=1e-12)
    assert rise == pytest.approx(1 / sqrt(10), abs=1e-12)


@pytest.mark.parametrize("around", TABLE)
def test_radius_twist_and_rise_are_those_of_the_table(around):
    radius, twist, rise = helix(around)
    assert (radius, degrees(twist), rise) == pytest.approx(TABLE[around], rel=2e-7)


def test_the_girth_nears_that_of_a_nanotube_as_the_rope_widens():
    def off(around):
        flat = sqrt(around**2 + around + 1) / (2 * pi)
        return flat / helix(around).radius - 1

    assert [off(around) for around in (6, 12, 20)] == pytest.approx([-0.037, -0.010, -0.004], abs=0.0006)
    assert -0.0006 < off(60) < 0


def test_a_spiral_rope_is_thicker_than_a_plain_ring_of_as_many_beads():
    """The ring's outside diameter, 1 + 1/sin(π/N), is in Mughal et al., arXiv:1012.3684."""
    for around in range(3, 61):
        assert 2 * helix(around).radius + 1 > 1 + 1 / sin(pi / around)
