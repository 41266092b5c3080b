"""What is bought is enough and no gram too much."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.kinds import KINDS
from engine.counting.purchase import check_spare, covering_spare, grams_to_buy, thread_to_buy_mm, with_spare
from engine.errors import SizeError


@given(st.floats(0, 0.5).map(lambda error: round(error, 3)))
def test_spare_covers_the_error_and_is_rounded_up_to_a_tenth(error):
    spare = covering_spare(error)
    assert (1 + Fraction(str(spare)) / 100) * (1 - Fraction(str(error))) >= 1
    assert (1 + Fraction(str(spare - 0.11)) / 100) * (1 - Fraction(str(error))) < 1 or spare == 0


@pytest.mark.parametrize(("error", "spare"), [(0.10, 11.2), (0.15, 17.7), (0.25, 33.4), (0, 0)])
def test_the_errors_that_are_said_have_their_spare(error, spare):
    assert covering_spare(error) == spare


@given(st.integers(0, 100_000), st.sampled_from([0, 5, 10, 12.5, 17.7, 33.4]))
def test_beads_with_spare_are_rounded_up_and_exact(beads, spare):
    assert 0 <= with_spare(beads, spare) - beads * (1 + Fraction(str(spare)) / 100) < 1


@given(st.integers(0, 100_000), st.sampled_from(tuple(KINDS)))
def test_grams_hold_the_beads_where_a_gram_holds_the_fewest(beads, kind):
    grams = grams_to_buy(beads, KINDS[kind])
    assert (
        grams * Fraction(str(KINDS[kind].fewest)) >= beads > (grams - 1) * Fraction(str(KINDS[kind].fewest))
        or not beads
    )


def test_thread_to_buy_is_more_where_it_is_an_estimate():
    assert (thread_to_buy_mm(1000, measured=True), thread_to_buy_mm(1000, measured=False)) == pytest.approx(
        (1050, 1150)
    )


@pytest.mark.parametrize("spare", [-1, 1001, float("nan")])
def test_a_spare_that_cannot_be_meant_is_refused(spare):
    with pytest.raises(SizeError, match=r"Spare is between 0 and 1,000 percent\."):
        check_spare(spare)
