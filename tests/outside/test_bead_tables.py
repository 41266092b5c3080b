"""Bead kinds against published tables.

Sources: Regal Crafts, http://www.regalcrafts.com/containers-and-bead-information/info_8.html; Beading Life,
http://www.beadinglife.com/bead-sizes.html; Cranberry, https://www.cranberry.net.au/bead-essentials/seed-bead-sizes/
(diameters); Downland Crafts, http://downlandcrafts.blogspot.com/2014/04/dedicated-crafter-tips-techniques.html (11/0: 5 g
are 580 beads or 80 cm strung; 8/0: 220 beads or 40 cm); hank counts of Beading Life, with strands of 20 inches from
memory; Seed Bead Smarts, http://www.seedbeadsmarts.com/bead-weights.html (15/0: 250 a gram); The Bead Gallery,
https://thebeadgallery.com/pages/seed-bead-guide (11/0 cylinder 1.6 × 1.3 mm). Soda-lime glass weighs 2.5 g/cm³.
"""

import pytest

from engine.counting.kinds import KINDS

ACCEPTED_MM = {
    "15/0 round": (1.3, 1.5),
    "11/0 round": (1.8, 2.2),
    "10/0 round": (2.0, 2.3),
    "8/0 round": (2.5, 3.1),
    "6/0 round": (3.3, 4.0),
}
HANKS = {"6/0 round": 2160, "8/0 round": 3360, "11/0 round": 4320}


@pytest.mark.parametrize("kind", ACCEPTED_MM)
def test_diameters_lie_within_the_published_tables(kind):
    least, most = ACCEPTED_MM[kind]
    assert least <= KINDS[kind].diameter_mm <= most


@pytest.mark.parametrize(("kind", "beads", "strung_mm"), [("11/0 round", 580, 800), ("8/0 round", 220, 400)])
def test_five_grams_are_the_published_beads_and_length(kind, beads, strung_mm):
    """One shop counts many small beads in 5 g; the usual count lies between that and the fewest published."""
    assert 5 * KINDS[kind].fewest <= 5 * KINDS[kind].per_gram <= beads
    assert beads * KINDS[kind].length_mm == pytest.approx(strung_mm, rel=0.025)


@pytest.mark.parametrize("kind", HANKS)
def test_a_hank_is_twelve_strands_of_twenty_inches(kind):
    assert HANKS[kind] * KINDS[kind].length_mm == pytest.approx(12 * 20 * 25.4, rel=0.025)


def test_the_smallest_round_bead_weighs_as_published():
    assert KINDS["15/0 round"].fewest == 250 <= KINDS["15/0 round"].per_gram


def test_a_cylinder_bead_measures_as_published():
    kind = KINDS["11/0 cylinder"]
    assert (kind.diameter_mm, kind.length_mm) == (1.6, 1.3)


def test_a_cylinder_bead_of_soda_lime_glass_weighs_what_is_published():
    """About 200 a gram (makers' tables, from memory); 204 computed from its measures and 2.5 g/cm³."""
    kind = KINDS["11/0 cylinder"]
    assert kind.per_gram * kind.density / 2.5 == pytest.approx(204, abs=0.5)
    assert kind.density == pytest.approx(2.5, rel=0.10)


@pytest.mark.parametrize("kind", [kind for kind in KINDS if "round" in kind])
def test_round_beads_are_shorter_than_they_are_wide(kind):
    assert 0.60 <= KINDS[kind].length_mm / KINDS[kind].diameter_mm <= 0.80
