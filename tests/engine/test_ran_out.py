"""Where to go on when thread or a colour runs out, and what is wanting."""

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.counting.ran_out import out_of_colour, out_of_thread, place_on_thread
from engine.counting.stopped import upto
from engine.counting.stringing import runs, string
from engine.errors import SizeError
from engine.pattern.pattern import Pattern
from tests.pictures import palette

ROPE = Pattern("Trial", 6, palette(), bytes([0, 1, 1, 2, 0, 0, 3]) * 9, start=b"\0\0", end=b"\2")
FOUND = answer(ROPE, Question(120.0), plan=(100, 250))
BEADS = ROPE.worked(FOUND.size.beads)
PLACES = st.integers(0, FOUND.size.beads - 1)


@given(PLACES)
def test_the_rest_of_a_thread_and_the_later_threads_are_all_that_is_to_be_strung(worked):
    out = out_of_thread(FOUND, worked)
    later = FOUND.stringing.threads[out.number :]
    assert out.rest.beads + sum(thread.beads for thread in later) == out.remaining.beads == len(BEADS) - worked
    assert out.rest.runs == runs(BEADS[worked : out.rest.last], ROPE.palette.codes)
    assert out.rest.strung_mm == pytest.approx(out.rest.beads * 1.4)


@given(PLACES)
def test_the_joins_cut_the_rope_where_the_thread_ended(worked):
    out = out_of_thread(FOUND, worked)
    cut = string(FOUND.size, out.joins).threads
    assert {*out.joins} == {100, 250, worked} - {0}
    assert out.rest.runs in [thread.runs for thread in cut]


@given(PLACES, st.floats(0, 20_000))
def test_thread_that_is_left_and_thread_that_is_bought_are_enough(worked, left_mm):
    out = out_of_thread(FOUND, worked, left_mm)
    per_bead = FOUND.materials.use.per_bead_mm
    threads = len(FOUND.stringing.threads) - out.number + 1
    assert out.all_mm == pytest.approx(out.remaining.beads * per_bead + 300 * threads)
    assert out.rest_mm == pytest.approx(out.rest.beads * per_bead + 300)
    assert left_mm + out.buy_mm >= out.all_mm - 1e-6
    assert 0 <= out.works <= out.remaining.beads
    assert out.works == 0 or out.works * per_bead + 300 <= left_mm + 1e-6


def test_a_place_on_a_thread_is_counted_from_its_first_bead():
    assert [place_on_thread(FOUND, *place) for place in ((1, 0), (1, 100), (2, 40), (3, 1))] == [0, 100, 140, 251]
    with pytest.raises(SizeError, match="There is no thread 4; this rope has 3"):
        place_on_thread(FOUND, 4, 1)
    with pytest.raises(SizeError, match="Thread 2 has 150 beads, not 151"):
        place_on_thread(FOUND, 2, 151)


@given(st.sampled_from("ABCD"), st.data())
def test_a_colour_ends_before_the_first_bead_that_is_wanting(code, data):
    index = ROPE.palette.index(code)
    had = data.draw(st.integers(0, BEADS.count(index) - 1))
    out = out_of_colour(FOUND, code, had)
    assert (BEADS[: out.worked].count(index), BEADS[out.worked]) == (had, index)
    assert out.next_bead == out.worked + 1 == upto(out.next_round, out.next_place, 6)
    assert {*out.joins} == {100, 250, out.worked} - {0}
    (short,) = out.short
    assert (short.buy.code, short.wanted, short.buy.beads) == (code, BEADS.count(index) - had, BEADS.count(index) - had)


@given(st.sampled_from("ABCD"), PLACES)
def test_beads_of_a_colour_before_and_after_a_place_are_all_of_them(code, worked):
    index = ROPE.palette.index(code)
    if index not in BEADS[worked:]:
        with pytest.raises(SizeError, match=f"No {code} is worked after bead"):
            out_of_colour(FOUND, code, worked=worked)
        return
    out = out_of_colour(FOUND, code, worked=worked)
    assert out.had + out.short[0].wanted == BEADS.count(index)
    assert BEADS[out.next_bead - 1] == index
    assert index not in BEADS[worked : out.next_bead - 1]


def test_other_colours_are_bought_where_too_few_are_left():
    rest = Counter(BEADS[200:])
    out = out_of_colour(FOUND, "B", worked=200, left={"A": rest[0] - 5, "C": rest[2], "B": 3})
    assert [(short.buy.code, short.wanted, short.left, short.buy.beads) for short in out.short] == [
        ("A", rest[0], rest[0] - 5, 5),
        ("B", rest[1], 3, rest[1] - 3),
    ]
    assert [short.buy.grams for short in out.short] == [1, 1]


def test_beads_that_are_enough_are_said_to_be():
    with pytest.raises(SizeError) as refused:
        out_of_colour(FOUND, "C", BEADS.count(2))
    assert refused.value.message == f"This rope takes {BEADS.count(2)} beads of C: {BEADS.count(2)} are enough."
    with pytest.raises(SizeError, match="is not inside this rope"):
        out_of_colour(FOUND, "C", worked=len(BEADS))
    assert out_of_colour(FOUND, "C", worked=0, left={"C": 1000}).short == ()
