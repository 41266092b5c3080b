"""An answer says how it differs from the one before."""

from hypothesis import given
from hypothesis import strategies as st

from engine.counting.answers import again, answer
from engine.counting.change import change_in_words, change_since
from engine.counting.questions import Question
from engine.pattern.pattern import Pattern
from tests.pictures import palette

ROPE = Pattern("Buoys", 6, palette("ABC"), bytes([0, 1, 1, 2, 0, 0, 0]) * 3)


@given(st.floats(60, 900), st.floats(60, 900))
def test_what_was_before_and_the_change_are_what_is_now(before_mm, now_mm):
    before, now = answer(ROPE, Question(before_mm)), answer(ROPE, Question(now_mm))
    change = change_since(before, now)
    if before_mm == now_mm:
        assert change is None
        return
    assert change is not None
    assert before.size.beads + change.beads == now.size.beads
    old = {need.code: need.beads for need in before.materials.colours}
    assert {need.code: need.beads for need in now.materials.colours} == {
        code: old[code] + beads for code, beads in change.by_code
    }


def test_a_centimetre_less_is_told_in_a_sentence():
    before = answer(ROPE, Question(450.0, "clasp"))
    change = change_since(before, again(before, Question(440.0, "clasp")))
    assert change is not None
    assert change_in_words(change) == (
        "38 beads fewer than for 45.0 cm before: A −20, B −12, C −6; 0.05 m of strung beads less."
    )


def test_another_closure_of_as_many_beads_is_told_so():
    before = answer(ROPE, Question(425.0))
    change = change_since(before, answer(ROPE, Question(450.0, "clasp")))
    assert change is not None and change.beads == 0
    assert change_in_words(change) == "As many beads as for 42.5 cm before."


def test_joins_chosen_before_stay_where_the_rope_has_them():
    before = answer(ROPE, Question(450.0), plan=(300, 900))
    assert [thread.last for thread in again(before, Question(100.0)).stringing.threads][:-1] == [300]
