"""The stringing list: the last bead worked is strung first, and threads joined give the rope."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.closures import CLOSURES
from engine.counting.questions import ROUNDINGS, Question
from engine.counting.sizes import size
from engine.counting.stringing import Run, string
from engine.counting.workshop import Workshop
from engine.errors import PlanError, SizeError
from engine.pattern.palette import Entry, Palette
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from tests.pictures import palette, pattern
from tests.ropes import in_parts

stretches = st.binary(max_size=50).map(lambda some: bytes(bead % 4 for bead in some))
joins = st.sets(st.integers(1, 300)).map(lambda some: tuple(sorted(some)))
plans = st.sampled_from(["balanced", "whole", "chart"]) | st.floats(0.1, 3) | joins


def expanded(runs):
    return [run.code for run in runs for _ in range(run.beads)]


def made(around=6, chart=bytes([0, 1, 1]), **words):
    return Pattern("Trial", around, palette(), chart, **words)


def test_the_last_bead_worked_is_strung_first():
    chart = pattern(
        """\
         C B B
        A A A B""",
        3,
    )
    found = string(size(chart, Question()))
    assert found.runs == (Run("B", 2), Run("C", 1), Run("B", 1), Run("A", 3))


@given(st.integers(3, 12), stretches.filter(bool), stretches, stretches, st.floats(100, 400) | st.none(), plans)
def test_threads_expanded_reversed_and_joined_give_the_worked_rope(around, chart, start, end, length, plan):
    rope = made(around, chart, start=start, end=end)
    sized = size(rope, Question(length))
    if isinstance(plan, tuple):
        plan = tuple(join for join in plan if join < sized.beads)
    found = string(sized, plan)
    joined = [code for thread in found.threads for code in reversed(expanded(thread.runs))]
    assert joined == [rope.palette[bead].code for bead in rope.worked(sized.beads)]
    assert [thread.first for thread in found.threads[1:]] == [thread.last for thread in found.threads[:-1]]
    assert all(one.code != other.code for thread in found.threads for one, other in pairwise(thread.runs))
    assert sum(len(numbers) for _, numbers in found.distinct) == len(found.threads) == found.joins + 1


@given(in_parts(), st.floats(30, 900), plans, st.sampled_from(ROUNDINGS), st.sampled_from(tuple(CLOSURES)))
def test_threads_of_a_rope_of_parts_are_its_parts_one_behind_the_other(rope, length, plan, rounding, closure):
    try:
        sized = size(
            rope, Question(length if rope.fills else None, closure, rounding=rounding), Workshop(longest_mm=900.0)
        )
    except SizeError:
        return
    if isinstance(plan, tuple):
        plan = tuple(join for join in plan if join < sized.beads)
    found = string(sized, plan)
    joined = b"".join(
        bytes(rope.palette.index(code) for code in reversed(expanded(thread.runs))) for thread in found.threads
    )
    assert joined == b"".join(part.worked for part in sized.laid) == sized.worked
    assert [part.part for part in sized.laid] == list(rope.parts)
    assert all(thread.strung_mm <= 900 + 1e-6 for thread in found.threads)
    for part in sized.laid:
        assert part.part.fills or part.worked == part.part.beads * part.part.times
    assert sum(len(numbers) for _, numbers in found.distinct) == len(found.threads)


@given(in_parts(), st.floats(30, 900), plans)
def test_the_list_does_not_ask_in_which_form_a_pattern_is_written(rope, length, plan):
    parts = (
        Part("Start", rope.parts[0].beads),
        Part("Chart", rope.main.beads, None),
        Part("End", rope.parts[-1].beads),
    )
    long = replace(rope, in_parts=parts)
    short = replace(long, in_parts=(), start=parts[0].beads, chart=parts[1].beads, end=parts[2].beads)
    one, other = (size(form, Question(max(length, 80.0))) for form in (short, long))
    if isinstance(plan, tuple):
        plan = tuple(join for join in plan if join < one.beads)
    assert string(one, plan) == string(other, plan)


def test_one_pass_a_thread_and_start_and_end_go_with_their_neighbours():
    rope = made(chart=bytes([0, 1]) * 10, start=bytes(3), end=bytes(2))
    sized = size(rope, Question(4 * 20 * 0.25876, closure="open"))
    found = string(sized, "chart")
    assert [thread.beads for thread in found.threads] == [23, 20, 20, sized.beads - 63]


def test_a_rope_that_ends_inside_a_pass_has_a_shorter_last_thread():
    rope = made(chart=bytes([0, 1]) * 30)
    found = string(size(rope, Question(40.0)), "chart")
    assert [thread.beads for thread in found.threads] == [60, 60, 35]
    assert [numbers for _, numbers in found.distinct] == [(1, 2), (3,)]


def test_a_pass_without_a_rest_has_no_empty_thread():
    rope = made(chart=bytes([0, 1]) * 30)
    assert len(string(size(rope, Question()), "chart").threads) == 1


@given(st.floats(0.02, 2), st.floats(50, 300))
def test_no_thread_holds_more_than_the_metres_allowed(metres, length):
    rope = made(chart=bytes([0, 1, 2]) * 30)
    for thread in string(size(rope, Question(length)), metres).threads:
        assert thread.strung_mm <= metres * 1000


def test_threads_hold_whole_passes_where_they_fit_and_whole_rounds_where_not():
    rope = made(around=6, chart=bytes([0, 1]) * 30)
    sized = size(rope, Question(70.0))
    assert [thread.beads for thread in string(sized, 0.200).threads] == [120, 120, 31]
    assert [thread.beads for thread in string(sized, 0.080).threads] == [54, 54, 54, 54, 55]


def test_a_thread_too_short_for_one_round_is_refused():
    rope = made(chart=bytes([0, 1]) * 30)
    with pytest.raises(PlanError) as refused:
        string(size(rope, Question()), 0.005)
    assert refused.value.message == "Not even one round fits on 0.005 m of strung beads; allow more."


def test_threads_are_joined_after_the_beads_that_were_chosen():
    rope = made(chart=bytes([0, 1]) * 30)
    found = string(size(rope, Question()), (10, 45))
    assert [(thread.first, thread.last) for thread in found.threads] == [(0, 10), (10, 45), (45, 60)]
    assert found.joins == 2
    assert [thread.strung_mm for thread in found.threads] == pytest.approx([14, 49, 21])
    assert (len(found.threads[1].runs), found.threads[1].runs[0]) == (35, Run("A", 1))
    assert string(size(rope, Question()), ()).threads == string(size(rope, Question()), "whole").threads


def test_a_chosen_thread_over_the_limit_of_the_workshop_is_joined_once_more():
    rope = made(chart=bytes([0, 1]) * 30)
    found = string(size(rope, Question(), Workshop(longest_mm=45)), (10,))
    assert [thread.last for thread in found.threads] == [10, 40, 60]


@pytest.mark.parametrize(
    ("joins", "said"),
    [
        ((0,), "A join comes after bead 1 or later."),
        ((30, 60), "A join after bead 60 is not inside this rope of 60 beads."),
        ((30, 20), "The join after bead 20 cannot follow the one after bead 30; joins rise and each stands once."),
        ((30, 30), "The join after bead 30 cannot follow the one after bead 30; joins rise and each stands once."),
    ],
)
def test_joins_outside_the_rope_or_out_of_order_are_refused(joins, said):
    rope = made(chart=bytes([0, 1]) * 30)
    with pytest.raises(PlanError) as refused:
        string(size(rope, Question()), joins)
    assert refused.value.message == said


def test_a_plan_that_is_none_is_refused():
    with pytest.raises(
        PlanError, match="“halves” is not a plan for threads; expected balanced, whole, chart or metres such as 4"
    ):
        string(size(made(), Question()), "halves")


def test_mixed_kinds_are_measured_bead_by_bead():
    mixed = Palette(
        (Entry("A", "Small", "#1d3350", kind="11/0 round"), Entry("B", "Large", "#f2e8d5", kind="8/0 round"))
    )
    rope = Pattern("Mixed", 6, mixed, bytes([0, 0, 1]) * 20)
    found = string(size(rope, Question()), "whole")
    assert found.strung_mm == pytest.approx(40 * 1.40 + 20 * 1.82)
    assert string(size(rope, Question(kind="6/0 round")), "whole").strung_mm == pytest.approx(60 * 2.8)


@given(st.integers(200, 3000), st.floats(0.05, 3), st.sampled_from(["whole", "chart", 1.0, (30, 90)]))
def test_no_thread_is_longer_or_heavier_than_the_workshop_allows(mm, most_m, plan):
    rope = Pattern("Trial", 6, palette(), bytes([0, 1, 2]) * 50)
    limited = Workshop(longest_mm=most_m * 1000, heaviest_g=12)
    listed = string(size(rope, Question(float(mm)), limited), plan)
    assert sum(thread.beads for thread in listed.threads) == size(rope, Question(float(mm))).beads
    assert all(thread.strung_mm <= most_m * 1000 + 1e-6 and thread.beads / 110 <= 12 for thread in listed.threads)
