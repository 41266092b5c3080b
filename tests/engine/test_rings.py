"""Where rings close: by the repeat, not by how often it was typed."""

from dataclasses import replace
from math import ceil, floor

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.answers import answer
from engine.counting.closures import CLOSURES
from engine.counting.finished import ring_question
from engine.counting.questions import ROUNDINGS, Question
from engine.counting.rings import closes, nearest_ring, smallest_ring, whole_steps
from engine.counting.sizes import size
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from engine.units import whole
from tests.pictures import palette

repeats = st.binary(min_size=1, max_size=9).map(lambda some: bytes(bead % 4 for bead in some))


def made(chart, around=6, **words):
    return Pattern("Trial", around, palette(), chart, **words)


def outcome(pattern, question):
    """Everything of an answer that does not count passes, or the sentence that refuses it."""
    try:
        found = answer(pattern, question)
    except EngineError as error:
        return error.message
    size_, bill = found.size, found.materials
    threads = [thread.runs for thread in found.stringing.threads] if len(found.stringing.threads) == 1 else None
    return size_.beads, size_.rope_mm, size_.finished_mm, size_.closes, [need.beads for need in bill.colours], threads


@given(repeats, st.integers(3, 20), st.integers(2, 60), st.floats(60, 900), st.sampled_from(tuple(CLOSURES)))
def test_no_answer_changes_when_the_chart_is_typed_several_times_over(chart, around, times, mm, closure):
    question = Question(mm, closure)
    assert outcome(made(chart, around), question) == outcome(made(chart * times, around), question)


@given(repeats, st.integers(3, 20), st.integers(2, 60), st.floats(120, 300))
def test_nor_does_the_ring_over_a_hand(chart, around, times, hand_mm):
    question = ring_question(Question(), hand_mm, None)
    assert outcome(made(chart, around), question) == outcome(made(chart * times, around), question)


@given(
    st.integers(2, 60),
    st.integers(3, 20),
    st.integers(1, 40),
    st.floats(5, 200),
    st.sampled_from(ROUNDINGS),
    st.sampled_from(["open", "clasp", "glued"]),
)
def test_so_many_times_ones_own_pass_are_so_many_passes(chart, around, passes, pass_mm, rounding, closure):
    pattern = made(bytes([0] * (chart - 1) + [1]), around)
    question = Question(pass_mm * passes, closure, rounding=rounding, pass_mm=pass_mm)
    if closure != "open":
        question = replace(question, closure_mm=0.0)
    try:
        assert size(pattern, question).passes == passes
    except EngineError as refused:
        assert (
            "less than one round" in refused.message
            or "are counted" in refused.message
            or "cannot be" in refused.message
        )


def test_whole_passes_are_not_lost_to_the_last_digit():
    """48 cm of passes of 96 mm are five passes, at every rounding."""
    pattern = made(bytes([0, 1]) * 60)
    for rounding in ROUNDINGS:
        assert size(pattern, Question(480.0, rounding=rounding, pass_mm=96.0)).passes == 5


@pytest.mark.parametrize(("hand_mm", "beads"), [(210.0, 889), (220.0, 931)])
def test_a_ring_over_a_hand_is_the_next_that_closes(hand_mm, beads):
    twisted = made(bytes([0, 0, 0, 1, 2, 2, 3]) * 12)
    found = size(twisted, ring_question(Question(), hand_mm, None))
    assert found.beads == beads
    assert found.closes and hand_mm <= found.finished_mm < hand_mm + 7 * found.rope.bead_mm
    assert size(made(bytes([0, 0, 0, 0, 1, 1, 2]) * 60), ring_question(Question(), hand_mm, None)).beads == beads


@given(repeats, st.integers(3, 20), st.floats(1, 3000), st.integers(0, 9), st.integers(0, 9))
def test_the_nearest_ring_closes_and_none_is_nearer(chart, around, beads, start, end):
    pattern = made(chart, around, start=bytes(start), end=bytes(end))
    ring = nearest_ring(pattern, beads)
    assert closes(pattern, ring) and ring >= smallest_ring(pattern) >= 2 * around + 3
    nearer = range(ceil(min(ring, beads)), floor(max(ring, beads)) + 1)
    assert [other for other in nearer if closes(pattern, other) and abs(other - beads) < abs(ring - beads)] == []


@pytest.mark.parametrize(
    ("steps", "down", "near", "up"), [(5 - 1e-9, 5, 5, 5), (5 + 1e-9, 5, 5, 5), (4.5, 4, 5, 5), (4.4, 4, 4, 5)]
)
def test_what_is_whole_but_for_an_error_of_the_sum_is_whole(steps, down, near, up):
    assert [whole_steps(steps, rounded) for rounded in (floor, whole, ceil)] == [down, near, up]
