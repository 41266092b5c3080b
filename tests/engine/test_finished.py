"""Finished sizes by their usual names."""

from dataclasses import replace
from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.finished import NAMED, USUAL, bangle_mm, named, ring_question
from engine.counting.questions import NamedSize, Question
from engine.counting.sizes import size
from engine.errors import EngineError, SizeError
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern


def test_every_size_has_a_key_of_its_own():
    keys = [size.key for size in NAMED]
    assert len(set(keys)) == len(keys)
    assert set(USUAL) <= set(keys)


def test_necklaces_are_the_middle_of_their_published_range_in_whole_centimetres():
    found = {
        size.name: (size.question.length_mm or size.question.girth_mm, size.question.closure)
        for size in NAMED
        if size.group == "Necklace"
    }
    assert found == {
        "Collar": (320, "clasp"),
        "Choker": (380, "clasp"),
        "Princess": (460, "clasp"),
        "Matinée": (560, "clasp"),
        "Opera": (790, "clasp"),
        "Rope": (1080, "clasp"),
    }


def test_sizes_are_found_by_key_in_the_order_asked_for_and_in_another_kind():
    own = NamedSize("Own", "Market stall", Question(420.0, "glued"))
    found = named(("market-stall", "nowhere", "choker"), "8/0 round", "slip", (own,))
    assert [size.name for size in found] == ["Market stall", "Choker"]
    assert {(size.question.kind, size.question.stitch) for size in found} == {("8/0 round", "slip")}


def test_a_size_of_ones_own_wins_over_a_built_in_one_of_the_same_name():
    assert named(("choker",), own=(NamedSize("Own", "Choker", Question(400.0)),))[0].question.length_mm == 400


@given(st.integers(1, 4), st.integers(0, 15), st.sampled_from(["-", "/", ".", " "]))
def test_a_bangle_size_is_inches_and_sixteenths(inches, sixteenths, mark):
    assert bangle_mm(f"{inches}{mark}{sixteenths}") == pytest.approx((inches + sixteenths / 16) * 25.4)


@pytest.mark.parametrize("text", ["2-16", "9", "0-8", "two", "", "2-8-1"])
def test_what_is_no_bangle_size_is_refused(text):
    with pytest.raises(EngineError, match="is not a bangle size; write it such as 2-8"):
        bangle_mm(text)


def test_a_bangle_asks_for_a_ring_of_its_inner_girth():
    bangle = named(("bangle-2-8",))[0]
    assert (bangle.question.closure, bangle.about) == ("ring", "6.4 cm across inside")
    assert bangle.question.length_mm == pytest.approx(pi * 63.5)


def test_a_bangle_goes_by_the_hand_or_by_its_inner_diameter():
    asked = Question(kind="8/0 round")
    assert ring_question(asked, 200.0, None) == Question(200.0, "ring", "8/0 round", over_hand=True)
    assert ring_question(replace(asked, rounding="down"), 200.0, None).rounding == "down"
    assert ring_question(asked, None, 63.5).length_mm == pytest.approx(pi * 63.5)
    assert ring_question(asked, None, None) is asked


@pytest.mark.parametrize(
    ("question", "hand", "inner", "said"),
    [
        (Question(450.0), 200.0, None, "Give one size"),
        (Question(wrist_mm=160.0), None, 63.5, "Give one size"),
        (Question(), 200.0, 63.5, "Give one size"),
        (Question(closure="clasp"), 200.0, None, "asks for a ring that is worked shut"),
    ],
)
def test_a_bangle_of_two_sizes_or_with_a_clasp_is_refused(question, hand, inner, said):
    with pytest.raises(SizeError, match=said):
        ring_question(question, hand, inner)


@given(st.integers(3, 30), st.integers(1, 60), st.floats(150, 260))
def test_a_ring_over_a_hand_is_never_smaller_than_the_hand(around, beads, girth_mm):
    pattern = Pattern(
        "Trial",
        around,
        Palette((Entry("A", "Candle", "#f5eddc"), Entry("B", "Quay", "#8a97a3"))),
        bytes(k % 2 for k in range(beads)),
    )
    found = size(pattern, ring_question(Question(), girth_mm, None))
    assert found.finished_mm >= girth_mm - 1e-6 and found.closes
