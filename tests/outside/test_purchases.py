"""What is bought is enough by the published counts of beads in a gram, and of thread in a chain.

* Esther Beadwork, "How many seed beads are in that tube?" (2013), estherbeadwork.blogspot.com/2013/10: beads in 10 g
  15/0 2,715, 11/0 1,050, 8/0 347, 6/0 150; in a strung inch 15/0 23, 11/0 17, 8/0 11.
* Tubes of one size by Cranberry: 11/0 2,000, 8/0 650, 6/0 230 beads.
* Pacific Crest Silver, bangle sizes: a hand of 7 in round has an inner diameter of 2.22 in.
* Windchilde: a plain chain takes 5.1 times its length of thread.
* Holes as the maker gives them: 8/0 1.1 mm, 6/0 1.5 mm.
* The Manista swatch: 5.75 rounds of 18 to the centimetre in 11/0.
"""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.answers import answer
from engine.counting.finished import ring_question
from engine.counting.kinds import KINDS
from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.stock import kit
from engine.counting.thread import THREAD_PER_BEAD
from engine.pattern.pattern import Pattern
from engine.units import INCH_MM
from tests.pictures import palette

IN_TEN_GRAMS = {"15/0 round": 2715, "11/0 round": 1050, "8/0 round": 347, "6/0 round": 150}
IN_AN_INCH = {"15/0 round": 23, "11/0 round": 17, "8/0 round": 11}
ROPE = Pattern("Trial", 8, palette("AB"), bytes([0, 0, 1]) * 30)


@pytest.mark.parametrize(("kind", "beads"), IN_TEN_GRAMS.items())
def test_a_gram_holds_the_counted_beads_or_fewer_are_reckoned_with(kind, beads):
    assert 10 * KINDS[kind].fewest <= beads
    assert 10 * KINDS[kind].per_gram == pytest.approx(beads, rel=0.1)


@given(st.sampled_from(tuple(IN_TEN_GRAMS)), st.floats(100, 1500), st.sampled_from([0, 10, 25]), st.integers(1, 20))
def test_what_is_bought_holds_all_beads_by_the_published_counts(kind, mm, spare, pieces):
    answered = answer(ROPE, Question(mm, kind=kind), spare=spare)
    for need in answered.materials.colours:
        assert need.buy_grams * IN_TEN_GRAMS[kind] / 10 >= need.beads
    for line, need in zip(kit(answered, pieces).lines, answered.materials.colours, strict=True):
        assert line.grams * IN_TEN_GRAMS[kind] / 10 >= need.beads * pieces


@given(st.floats(100, 1500))
def test_what_is_bought_in_8_0_at_34_7_a_gram_still_holds_all_beads_of_the_longest_that_may_be_needed(mm):
    answered = answer(ROPE, Question(mm, kind="8/0 round"))
    for need in answered.materials.colours:
        assert need.buy_grams * 34.7 >= need.beads / (1 - 0.15)


@pytest.mark.parametrize(("kind", "beads"), IN_AN_INCH.items())
def test_lengths_along_the_hole_lie_near_the_counted_inch(kind, beads):
    """A thread pulls beads together, a counted inch leaves gaps: up to a fifth less than the counted length."""
    counted_mm = INCH_MM / beads
    assert 0.78 * counted_mm <= KINDS[kind].length_mm <= counted_mm


def test_tubes_of_one_size_hold_beads_in_the_ratio_of_the_table():
    per_gram = {size: KINDS[f"{size} round"].per_gram for size in ("11/0", "8/0", "6/0")}
    assert per_gram["11/0"] / per_gram["8/0"] == pytest.approx(2000 / 650, rel=0.15)
    assert per_gram["8/0"] / per_gram["6/0"] == pytest.approx(650 / 230, rel=0.15)


def test_the_published_swatch_in_rounds_of_eighteen():
    rope = Pattern("Swatch", 18, palette("A"), bytes(18 * 20))
    assert size(rope, Question(400.0)).beads == pytest.approx(5.75 * 18 * 40, rel=0.1)


def test_a_hand_of_seven_inches_has_a_bangle_of_two_and_two_ninths_across():
    asked = ring_question(Question(), 7 * INCH_MM, None)
    assert (asked.length_mm or 0) / pi / INCH_MM == pytest.approx(2.22, abs=0.01)
    found = size(Pattern("Trial", 6, palette("AB"), bytes([0, 1])), asked)
    assert found.finished_mm / pi / INCH_MM == pytest.approx(2.22, abs=0.02)


def test_a_bead_takes_more_thread_than_a_plain_chain_stitch():
    assert min(THREAD_PER_BEAD.values()) > 5.1


@pytest.mark.parametrize(("kind", "hole_mm"), [("8/0 round", 1.1), ("6/0 round", 1.5)])
def test_holes_are_no_wider_than_the_maker_gives_them(kind, hole_mm):
    assert hole_mm - 0.1 <= KINDS[kind].hole_mm + 1e-9 and KINDS[kind].hole_mm <= hole_mm
