"""Colour differences against the published test data, and colour-blind sight against the published matrices.

Sources: G. Sharma, W. Wu, E. N. Dalal, Color Research & Application 30(1), 21-30 (2005), doi 10.1002/col.20070, data at
http://www.ece.rochester.edu/~gsharma/ciede2000/; G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, IEEE TVCG 15(6) 2009,
doi 10.1109/TVCG.2009.113 (matrices of severity 1 as coloraide carries them; worked colours computed from them);
H. Brettel, F. Viénot, J. D. Mollon, J. Opt. Soc. Am. A 14(10), 2647-2655 (1997), doi 10.1364/JOSAA.14.002647 (tritan, as
coloraide computes it);
W3C, WCAG 2.2, relative luminance and contrast ratio.
"""

import numpy as np
import pytest
from coloraide import Color
from hypothesis import given
from hypothesis import strategies as st

from engine.pattern.colour import (
    DEFICIENCIES,
    PROTAN_AND_DEUTAN,
    decoded,
    hex_of,
    lab,
    lab_of,
    linear_of,
    linear_rgb,
    pairwise,
    seen_by,
    simulated,
)
from engine.pattern.palette import contrast

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")
PAIRS = (
    ((50.0000, 2.6772, -79.7751), (50.0000, 0.0000, -82.7485), 2.0425),
    ((50.0000, 3.1571, -77.2803), (50.0000, 0.0000, -82.7485), 2.8615),
    ((50.0000, 2.8361, -74.0200), (50.0000, 0.0000, -82.7485), 3.4412),
    ((50.0000, -1.3802, -84.2814), (50.0000, 0.0000, -82.7485), 1.0000),
    ((50.0000, -1.1848, -84.8006), (50.0000, 0.0000, -82.7485), 1.0000),
    ((50.0000, -0.9009, -85.5211), (50.0000, 0.0000, -82.7485), 1.0000),
    ((50.0000, 0.0000, 0.0000), (50.0000, -1.0000, 2.0000), 2.3669),
    ((50.0000, -1.0000, 2.0000), (50.0000, 0.0000, 0.0000), 2.3669),
    ((50.0000, 2.4900, -0.0010), (50.0000, -2.4900, 0.0009), 7.1792),
    ((50.0000, 2.4900, -0.0010), (50.0000, -2.4900, 0.0010), 7.1792),
    ((50.0000, 2.4900, -0.0010), (50.0000, -2.4900, 0.0011), 7.2195),
    ((50.0000, 2.4900, -0.0010), (50.0000, -2.4900, 0.0012), 7.2195),
    ((50.0000, -0.0010, 2.4900), (50.0000, 0.0009, -2.4900), 4.8045),
    ((50.0000, -0.0010, 2.4900), (50.0000, 0.0010, -2.4900), 4.8045),
    ((50.0000, -0.0010, 2.4900), (50.0000, 0.0011, -2.4900), 4.7461),
    ((50.0000, 2.5000, 0.0000), (50.0000, 0.0000, -2.5000), 4.3065),
    ((50.0000, 2.5000, 0.0000), (73.0000, 25.0000, -18.0000), 27.1492),
    ((50.0000, 2.5000, 0.0000), (61.0000, -5.0000, 29.0000), 22.8977),
    ((50.0000, 2.5000, 0.0000), (56.0000, -27.0000, -3.0000), 31.9030),
    ((50.0000, 2.5000, 0.0000), (58.0000, 24.0000, 15.0000), 19.4535),
    ((50.0000, 2.5000, 0.0000), (50.0000, 3.1736, 0.5854), 1.0000),
    ((50.0000, 2.5000, 0.0000), (50.0000, 3.2972, 0.0000), 1.0000),
    ((50.0000, 2.5000, 0.0000), (50.0000, 1.8634, 0.5757), 1.0000),
    ((50.0000, 2.5000, 0.0000), (50.0000, 3.2592, 0.3350), 1.0000),
    ((60.2574, -34.0099, 36.2677), (60.4626, -34.1751, 39.4387), 1.2644),
    ((63.0109, -31.0961, -5.8663), (62.8187, -29.7946, -4.0864), 1.2630),
    ((61.2901, 3.7196, -5.3901), (61.4292, 2.2480, -4.9620), 1.8731),
    ((35.0831, -44.1164, 3.7933), (35.0232, -40.0716, 1.5901), 1.8645),
    ((22.7233, 20.0904, -46.6940), (23.0331, 14.9730, -42.5619), 2.0373),
    ((36.4612, 47.8580, 18.3852), (36.2715, 50.5065, 21.2231), 1.4146),
    ((90.8027, -2.0831, 1.4410), (91.1528, -1.6435, 0.0447), 1.4441),
    ((90.9257, -0.5406, -0.9208), (88.6381, -0.8985, -0.7239), 1.5381),
    ((6.7747, -0.2908, -2.4247), (5.8714, -0.0985, -2.2286), 0.6377),
    ((2.0776, 0.0795, -1.1350), (0.9033, -0.0636, -0.5514), 0.9082),
)
ON_A_KNIFE_EDGE = (
    13  # hues exactly opposite: rounding of the arc tangent gives 4.8045 on one platform, 4.7461 on another
)


@pytest.mark.parametrize("place", range(34))
def test_all_34_published_pairs_are_as_far_apart_as_published(place):
    one, other, published = PAIRS[place]
    found = float(pairwise(np.array(one), np.array(other)))
    accepted = (published, 4.7461) if place == ON_A_KNIFE_EDGE else (published,)
    assert min(abs(found - value) for value in accepted) < 0.00005
    authority = Color("lab-d65", one).delta_e(Color("lab-d65", other), method="2000")
    if place != ON_A_KNIFE_EDGE:
        assert found == pytest.approx(authority, abs=1e-6)


@pytest.mark.parametrize(
    ("colour", "published"),
    [
        ("#ff0000", (53.23, 80.11, 67.22)),
        ("#00ff00", (87.74, -86.18, 83.18)),
        ("#0000ff", (32.30, 79.20, -107.86)),
        ("#ffff00", (97.14, -21.55, 94.49)),
        ("#00ffff", (91.12, -48.08, -14.13)),
        ("#ff00ff", (60.32, 98.25, -60.84)),
        ("#808080", (53.585, 0, 0)),
        ("#c0c0c0", (77.704, 0, 0)),
        ("#800000", (25.53, 48.05, 38.06)),
        ("#ffa500", (74.93, 23.94, 78.96)),
        ("#ffffff", (100, 0, 0)),
    ],
)
def test_lab_values_are_those_on_which_three_libraries_agree(colour, published):
    assert lab([colour])[0] == pytest.approx(published, abs=0.05)


def test_linear_light_is_that_of_the_published_formula():
    assert decoded(np.array([0.5])) == pytest.approx(0.2140411, abs=1e-7)
    assert linear_rgb(["#808080"])[0] == pytest.approx(0.2158605, abs=1e-7)


def test_the_matrices_of_colour_blind_sight_are_the_published_ones_and_keep_greys():
    assert PROTAN_AND_DEUTAN == {
        "protan": ((0.152286, 1.052583, -0.204868), (0.114503, 0.786281, 0.099216), (-0.003882, -0.048116, 1.051998)),
        "deutan": ((0.367322, 0.860646, -0.227968), (0.280085, 0.672501, 0.047413), (-0.011820, 0.042940, 0.968881)),
    }
    for matrix in PROTAN_AND_DEUTAN.values():
        assert [sum(row) for row in matrix] == pytest.approx([1, 1, 1], abs=2e-6)


@pytest.mark.parametrize(
    ("colour", "protan", "deutan", "tritan"),
    [
        ("#ff0000", "#6d5f00", "#a39000", "#ff004e"),
        ("#00ff00", "#ffe500", "#efd63a", "#79e9ff"),
        ("#0000ff", "#0059ff", "#003dfb", "#006288"),
        ("#ffff00", "#fff400", "#fffa31", "#ffeef1"),
        ("#ff8800", "#ac9700", "#c8b200", "#ff7c8f"),
    ],
)
def test_colour_blind_eyes_see_the_worked_colours(colour, protan, deutan, tritan):
    assert [simulated(colour, sight) for sight in DEFICIENCIES] == [protan, deutan, tritan]


@pytest.mark.parametrize("grey", ["#000000", "#343434", "#808080", "#ffffff"])
def test_greys_stay_grey_to_every_eye(grey):
    assert [simulated(grey, sight) for sight in DEFICIENCIES] == [grey] * 3


METHODS = {"protan": "machado", "deutan": "machado", "tritan": "brettel"}


@given(colours)
def test_colour_blind_eyes_see_what_the_authority_says(colour):
    for sight, method in METHODS.items():
        authority = Color(colour).filter(sight, method=method, out_space="srgb-linear").clip()
        assert seen_by(linear_rgb([colour]), sight)[0] == pytest.approx(authority.coords(), abs=1e-6)


def test_a_green_and_a_blue_are_one_colour_to_tritan_eyes():
    seen = lab_of(seen_by(linear_rgb(["#26970c", "#516dd3"]), "tritan"))
    authority = [Color(colour).filter("tritan", method="brettel").clip() for colour in ("#26970c", "#516dd3")]
    assert float(pairwise(seen[0], seen[1])) == pytest.approx(
        authority[0].delta_e(authority[1], method="2000"), abs=0.01
    )
    assert float(pairwise(seen[0], seen[1])) == pytest.approx(5.6, abs=0.05)


@given(colours)
def test_a_colour_keeps_its_hex_through_linear_light_and_lab(colour):
    assert hex_of(linear_rgb([colour])) == (colour,)
    assert hex_of(linear_of(lab_of(linear_rgb([colour])))) == (colour,)


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#000000", "#ffffff", 21.0),
        ("#767676", "#ffffff", 4.5422),
        ("#777777", "#ffffff", 4.4781),
        ("#ff0000", "#ffffff", 3.9985),
        ("#0000ff", "#ffffff", 8.5925),
        ("#ffff00", "#0000ff", 8.0016),
        ("#00c600", "#0000c6", 5.0002),
    ],
)
def test_contrast_is_that_of_the_published_formula(one, other, ratio):
    assert contrast(one, other) == pytest.approx(ratio, abs=0.00005)
