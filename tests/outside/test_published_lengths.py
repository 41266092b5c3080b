"""Rounds, beads and strung lengths against published swatches and the practice of the trade.

Sources: By Adinda, "How many beads in a beads crochet project?" (2021), https://byadinda.com/2021/04/23/how-many-beads-in-a-beads-crochet-project/
(strung length = finished length × around: 15 cm × 11 = 165 cm, 180 cm × 6 = 10.80 m); Manista Beads,
https://manistabeads.com/how-to-read-a-crochet-rope-pdf-pattern (18 around in 11/0: 40 cm are 230 rows, 5.75 a cm).
6 rounds per cm at 20 around, 6 × 20 × 50 cm = 6,000 beads, 10 m strung: common practice, no source.
"""

import pytest

from engine.counting.kinds import KINDS
from engine.counting.materials import materials
from engine.counting.questions import Question
from engine.counting.rope import Swatch, beads_of_rows, rope
from engine.counting.sizes import size
from engine.counting.stringing import string
from engine.counting.workshop import Workshop
from engine.pattern.pattern import Pattern
from tests.pictures import palette


def bill(around, length_mm, workshop=None):
    pattern = Pattern("Trial", around, palette("A"), bytes(1000))
    sized = size(pattern, Question(length_mm), workshop)
    return materials(sized, string(sized))


@pytest.mark.parametrize(("around", "length_mm", "strung_mm"), [(11, 150, 1650), (6, 1800, 10_800), (20, 500, 10_000)])
def test_the_rule_of_thumb_gives_the_published_strung_lengths(around, length_mm, strung_mm):
    assert bill(around, length_mm).strung_rule_mm == pytest.approx(strung_mm, rel=0.001)


def test_fifty_centimetres_at_twenty_around_are_six_thousand_beads():
    found = bill(20, 500)
    assert found.beads == 6000
    assert found.rounds_per_cm == pytest.approx(6, abs=0.0001)


def test_the_published_swatch_lies_within_the_error_that_is_said():
    beads = beads_of_rows(230, 18)
    estimate = rope(18, "single", {"11/0 round": 1}, KINDS)
    assert estimate.sure == 0.10
    assert beads * estimate.bead_mm == pytest.approx(400, rel=estimate.sure)


def test_the_published_swatch_as_ones_own_gives_its_rows_again():
    swatch = Swatch("11/0 round", 18, "single", beads_of_rows(230, 18), 400.0)
    own = rope(18, "single", {"11/0 round": 1}, KINDS, [swatch])
    assert 10 / own.bead_mm / 18.5 == pytest.approx(5.75)
    assert bill(18, 400.0, Workshop(swatches=(swatch,))).beads == 230 * 18 + 115
