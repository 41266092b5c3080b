"""How far a ring is from what was asked for is said, with what fits better."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.finished import ring_question
from engine.counting.questions import Question
from engine.counting.ring_fit import FAR_MM, fit_in_words, ring_fit, ring_measures
from engine.counting.sizes import size
from engine.pattern.pattern import Pattern
from tests.pictures import palette

LONG = Pattern("Lights", 12, palette("AB"), bytes([0] * 899 + [1]))


def over_hand(mm, pattern=LONG):
    return size(pattern, ring_question(Question(), mm, None))


def test_a_ring_far_from_the_hand_is_said_with_those_beside_it_and_the_chart_that_closes_better():
    """A hand of 8.5 in: the next ring that closes is far too wide, though two passes miss by 2 mm."""
    assert fit_in_words(over_hand(215.9)) == (
        "The next ring that goes over the hand is 33.7 cm inside, 12.1 cm larger than the hand asked for.",
        "Beside it: 1,800 beads, 21.4 cm inside, 1.9 mm smaller; 3,600 beads, 45.9 cm inside, 24.3 cm larger.",
        "With one round more in what is repeated (912 beads) a ring of 1,824 beads closes at 21.7 cm inside, 1.4 mm larger.",
    )


def test_a_ring_that_fits_needs_no_words():
    short = Pattern("Spiral", 6, palette("AB"), bytes([0, 0, 1]))
    assert fit_in_words(over_hand(210.0, short)) == ()
    fit = ring_fit(over_hand(210.0, short))
    assert fit is not None and not fit.far and fit.better == ()
    assert ring_fit(size(LONG, Question(450.0, "clasp"))) is None
    assert ring_fit(size(LONG, Question(closure="ring"))) is None


@given(st.floats(120, 700), st.sampled_from(["ring", "hand"]), st.integers(1, 900))
def test_rings_beside_it_are_its_neighbours_and_better_charts_are_better(mm, asked, chart):
    pattern = Pattern("Trial", 12, palette("AB"), bytes([0] * chart + [1]))
    sized = over_hand(mm, pattern) if asked == "hand" else size(pattern, Question(mm, "ring"))
    fit = ring_fit(sized)
    assert fit is not None
    assert fit.off_mm == pytest.approx(sized.finished_mm - mm)
    assert fit.larger is not None and fit.larger.beads - sized.beads == pattern.repeat
    assert fit.smaller is None or sized.beads - fit.smaller.beads == pattern.repeat
    assert bool(fit_in_words(sized)) == (abs(fit.off_mm) > FAR_MM)
    for better in fit.better:
        assert 2 * abs(better.off_mm) < abs(fit.off_mm)
        assert better.ring_beads % better.chart_beads == 0
        assert better.chart_beads == pattern.repeat + better.rounds * 12
        assert asked == "ring" or better.off_mm >= -1e-6


@pytest.mark.parametrize(
    ("mm", "words"),
    [
        (210.0, "21.0 cm inside, 6.7 cm across, for a hand of up to 21.0 cm"),
        (400.0, "40.0 cm inside, 12.7 cm across"),
        (600.0, "60.0 cm inside, 19.1 cm across, for a head of up to 60.0 cm"),
    ],
)
def test_a_ring_is_told_by_its_girth_its_diameter_and_what_it_goes_over(mm, words):
    assert ring_measures(size(Pattern("Fine", 6, palette("AB"), bytes([0, 1])), Question(mm, "ring"))) == words
