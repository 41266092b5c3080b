"""What is still to string after a stop."""

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.stopped import remaining, upto
from engine.counting.stringing import runs, string
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from tests.pictures import palette

ROPE = Pattern("Trial", 6, palette(), bytes([0, 1, 1, 2, 0, 0, 3]) * 9, start=b"\0\0", end=b"\2")
WHOLE = size(ROPE, Question(200.0))


@given(st.integers(0, WHOLE.beads - 1))
def test_what_is_worked_and_what_is_left_are_the_whole_rope(worked):
    left = remaining(WHOLE, worked)
    done = Counter(ROPE.palette.codes[bead] for bead in ROPE.worked(WHOLE.beads)[:worked])
    rest = Counter({need.code: need.beads for need in left.to_buy})
    everything = Counter(ROPE.palette.codes[bead] for bead in ROPE.worked(WHOLE.beads))
    assert done + rest == everything
    assert sum(run.beads for run in left.runs) == left.beads == WHOLE.beads - worked
    assert left.strung_mm == pytest.approx(left.beads * 1.4)


@given(st.integers(0, WHOLE.beads - 1))
def test_the_next_bead_stands_where_it_is_said_to(worked):
    left = remaining(WHOLE, worked)
    assert upto(left.next_round, left.next_place, 6) == worked + 1


def test_nothing_worked_leaves_the_whole_list():
    assert remaining(WHOLE, 0).runs == string(WHOLE, "whole").threads[0].runs


def test_the_last_bead_worked_is_strung_first():
    left = remaining(WHOLE, WHOLE.beads - 5)
    assert left.runs == runs(ROPE.worked(WHOLE.beads)[-5:], ROPE.palette.codes)
    assert left.runs[0].code == "C"


@pytest.mark.parametrize("worked", [-1, WHOLE.beads, 10**9])
def test_a_bead_outside_the_rope_is_refused(worked):
    with pytest.raises(EngineError, match="is not inside this rope of"):
        remaining(WHOLE, worked)


@pytest.mark.parametrize(("round_number", "place"), [(0, 1), (1, 0), (1, 7)])
def test_a_place_that_no_round_has_is_refused(round_number, place):
    with pytest.raises(EngineError, match="is not on a rope of 6 around"):
        upto(round_number, place, 6)
