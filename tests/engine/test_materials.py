"""The bill: counts from the list, weights, what to buy, thread."""

from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.closures import CLOSURES
from engine.counting.materials import materials
from engine.counting.questions import Question
from engine.counting.rope import Swatch
from engine.counting.sizes import size
from engine.counting.stringing import string
from engine.counting.workshop import Workshop
from engine.errors import SizeError
from engine.pattern.pattern import Pattern
from tests.pictures import palette

stretches = st.binary(max_size=50).map(lambda some: bytes(bead % 4 for bead in some))


def bill(rope, question, plan="chart", spare=10.0):
    sized = size(rope, question)
    return sized, materials(sized, string(sized, plan), spare=spare)


@given(st.integers(3, 20), stretches.filter(bool), stretches, st.floats(300, 700), st.sampled_from(tuple(CLOSURES)))
def test_counts_agree_between_list_bill_and_chart(around, chart, start, length, closure):
    rope = Pattern("Trial", around, palette(), chart, start=start)
    sized, found = bill(rope, Question(length, closure))
    worked = rope.worked(sized.beads)
    assert [need.beads for need in found.colours] == [worked.count(index) for index in range(4)]
    assert sum(need.beads for need in found.colours) == found.beads == sized.beads


def test_a_colour_that_is_not_used_is_not_bought():
    _, found = bill(Pattern("Trial", 6, palette(), bytes([0, 1])), Question(300.0))
    assert [(need.beads > 0, need.buy_grams > 0) for need in found.colours] == [(True, True)] * 2 + [(False, False)] * 2


def test_spare_is_added_to_the_beads_before_grams_are_rounded_up():
    _, found = bill(Pattern("Trial", 6, palette("A"), bytes(200)), Question(), spare=10)
    need = found.colours[0]
    assert (need.beads, need.buy_beads, need.buy_grams) == (200, 220, 3)
    assert need.grams == pytest.approx(200 / 110)
    assert bill(Pattern("Trial", 6, palette("A"), bytes(200)), Question(), spare=0)[1].colours[0].buy_grams == 2


@given(st.integers(1, 5000), st.sampled_from([0, 5, 10, 12.5, 33]))
def test_what_is_bought_is_never_too_little(beads, spare):
    need = bill(Pattern("Trial", 6, palette("A"), bytes(beads)), Question(), spare=spare)[1].colours[0]
    assert need.buy_beads == ceil(round(beads * (100 + spare), 6) / 100)
    assert need.buy_grams * 105 >= need.buy_beads > (need.buy_grams - 1) * 105


def test_thread_is_counted_by_stitch_with_tails_for_every_thread():
    rope = Pattern("Trial", 6, palette("A"), bytes(300))
    _, slip = bill(rope, Question(stitch="slip"))
    _, single = bill(rope, Question(stitch="single"))
    assert slip.thread_mm == pytest.approx(300 * 6 * 1.97628 + 300)
    assert single.thread_mm == pytest.approx(300 * 7 * 1.97628 + 300)
    _, two = bill(rope, Question(100.0))
    assert two.thread_mm == pytest.approx(two.beads * 6 * 1.97628 + 600)
    assert two.threads == 2


def test_thread_to_buy_covers_an_estimate_and_the_ends_of_a_reel():
    rope = Pattern("Trial", 6, palette("A"), bytes(300))
    swatch = Swatch("11/0 round", 6, "slip", 480, 124.0, unravelled_mm=210.0)
    guessed, measured = (
        materials(sized, string(sized))
        for sized in (size(rope, Question(200.0)), size(rope, Question(200.0), Workshop(swatches=(swatch,))))
    )
    assert guessed.buy_thread_mm == pytest.approx(1.15 * guessed.thread_mm)
    assert measured.buy_thread_mm == pytest.approx(1.05 * measured.thread_mm)


@pytest.mark.parametrize(
    ("question", "spare", "bought"),
    [
        (Question(), 10, 10),
        (Question(300.0), 10, 17.7),
        (Question(300.0), 25, 25),
        (Question(wrist_mm=160.0, closure="clasp"), 0, 17.7),
        (Question(girth_mm=360.0, closure="clasp"), 10, 17.7),
        (Question(300.0, pass_mm=60.0), 10, 10),
    ],
)
def test_spare_covers_the_error_of_an_estimated_length(question, spare, bought):
    _, found = bill(Pattern("Trial", 6, palette("A"), bytes(300)), question, spare=spare)
    assert (found.spare, found.spare_asked) == (bought, spare)
    assert bool(found.spare_reason) == (bought > spare)


@given(st.floats(100, 900), st.sampled_from(["11/0 round", "8/0 round", "15/0 round"]))
def test_what_is_bought_still_makes_the_length_where_the_rope_comes_out_shortest(mm, kind):
    """An estimate of ±e: beads may make only (1 − e) of the length that they are reckoned to make."""
    sized, found = bill(Pattern("Trial", 6, palette("A"), bytes(300)), Question(mm, kind=kind), spare=0)
    shortest_mm = sized.rope.bead_mm * (1 - sized.rope.sure)
    assert found.colours[0].buy_beads * shortest_mm >= sized.rope_mm * (1 - 1e-9)


def test_the_rule_of_thumb_stands_beside_the_strung_length():
    _, found = bill(Pattern("Trial", 20, palette("A"), bytes(100)), Question(300.0))
    assert found.strung_rule_mm == pytest.approx(found.rope_mm * 20)
    assert found.strung_rule_mm > found.strung_mm


@pytest.mark.parametrize("spare", [-1, 1001, float("nan")])
def test_a_spare_that_cannot_be_meant_is_refused(spare):
    with pytest.raises(SizeError, match="Spare is between 0 and 1,000 percent"):
        bill(Pattern("Trial", 6, palette("A"), bytes(10)), Question(), spare=spare)
