"""Where a rope is cut into threads: few, even, and none that cannot be handled."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.cuts import EXACT_MM, easy_limit_mm, limit_mm
from engine.counting.questions import Question
from engine.counting.stringing import string
from engine.counting.workshop import Workshop
from engine.errors import PlanError
from engine.pattern.palette import Entry, Palette
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from tests.pictures import palette
from tests.ropes import in_parts, size_of_beads

LIMITS = st.sampled_from([None, 300.0, 1000.0, 4000.0])


def made(chart, around=6, **words):
    return Pattern("Trial", around, palette(), (bytes([0, 1, 1, 2, 0, 3, 3]) * (chart // 7 + 1))[:chart], **words)


def cut(pattern, beads, plan="balanced", longest_mm=None, **own):
    sized = size_of_beads(pattern, Question(), beads, Workshop(longest_mm=longest_mm, **own))
    return sized, string(sized, plan)


def beads_of(stringing):
    return [thread.beads for thread in stringing.threads]


@given(st.integers(1, 400), st.integers(3, 12), st.integers(0, 60), st.integers(0, 60), st.integers(60, 20_000), LIMITS)
def test_threads_are_the_rope_and_none_is_too_long(chart, around, start, end, beads, longest_mm):
    pattern = made(chart, around, start=bytes(start), end=bytes(end))
    sized, stringing = cut(pattern, max(beads, start + end + around), longest_mm=longest_mm)
    cuts = [(thread.first, thread.last) for thread in stringing.threads]
    assert (cuts[0][0], cuts[-1][1]) == (0, sized.beads)
    assert all(one[1] == other[0] for one, other in pairwise(cuts))
    assert all(0 < thread.strung_mm <= easy_limit_mm(sized) + EXACT_MM for thread in stringing.threads)


@given(st.integers(7, 400), st.integers(1, 60), st.sampled_from([300.0, 1000.0, 4000.0]))
def test_whole_passes_are_spread_evenly_over_the_fewest_threads(chart, passes, longest_mm):
    pattern = made(chart)
    _, stringing = cut(pattern, chart * passes, longest_mm=longest_mm)
    if chart * 1.4 > longest_mm:
        return
    assert all(thread.last % chart == 0 for thread in stringing.threads)
    shares = [thread.beads // chart for thread in stringing.threads]
    assert max(shares) - min(shares) <= 1
    fewest = -(-passes // int((longest_mm + EXACT_MM) // (chart * 1.4)))
    assert len(shares) == fewest
    assert len(stringing.distinct) <= 2


@given(st.integers(3000, 9000), st.integers(1, 4))
def test_a_longer_pass_is_cut_alike_every_time(chart, passes):
    pattern = made(chart)
    _, stringing = cut(pattern, chart * passes)
    ends = [thread.last for thread in stringing.threads]
    pieces = len(ends) // passes
    assert len(ends) == pieces * passes
    one_pass = ends[:pieces]
    assert ends == [chart * number + end for number in range(passes) for end in one_pass]
    assert all(end % 6 == 0 for end in one_pass[:-1])
    lengths = [last - first for first, last in pairwise((0, *one_pass))]
    assert max(lengths) - min(lengths) <= 12


def test_a_spiral_needs_one_thread_and_not_one_a_pass():
    _, stringing = cut(made(7), 1645)
    assert beads_of(stringing) == [1645]


def test_start_and_end_and_a_short_rest_go_with_their_neighbours():
    pattern = made(700, start=bytes(20), end=bytes(20))
    assert beads_of(cut(pattern, 40 + 7 * 700)[1]) == [20 + 4 * 700, 3 * 700 + 20]
    assert beads_of(cut(made(700), 6 * 700 + 100)[1]) == [2100, 2200]
    assert beads_of(cut(made(700), 8 * 700 + 100)[1]) == [2100, 2100, 1500]
    assert beads_of(cut(made(2800), 2900)[1]) == [1452, 1448]


def test_a_rest_of_a_quarter_or_more_has_a_thread_of_its_own():
    assert beads_of(cut(made(1400), 4 * 1400 + 800)[1]) == [2800, 2800, 800]


def test_the_string_is_as_light_as_it_can_be_handled():
    sixes = Palette(
        (Entry("A", "Large", "#1d3350", kind="6/0 round"), Entry("B", "Other", "#f2e8d5", kind="6/0 round"))
    )
    pattern = Pattern("Heavy", 6, sixes, bytes([0, 1]) * 50)
    sized, stringing = cut(pattern, 1400)
    assert easy_limit_mm(sized) == pytest.approx(60 * 15 * 2.8)
    assert limit_mm(sized) == float("inf")
    assert beads_of(stringing) == [700, 700]
    assert beads_of(cut(pattern, 1400, heaviest_g=30.0)[1]) == [400, 400, 300, 300]


def test_at_most_so_many_metres_a_start_is_never_alone():
    """12 around, a start of 4 beads before passes of 600 beads, which fill a thread of 0.84 m exactly."""
    pattern = Pattern("Trial", 12, palette("AB"), bytes(300) + bytes([1]) * 300, start=bytes([1]) * 4)
    _, stringing = cut(pattern, 1804, plan=0.84)
    assert beads_of(stringing) == [600, 600, 600, 4]
    assert beads_of(cut(pattern, 1804, plan=0.8456)[1]) == [604, 600, 600]


def test_a_thread_that_fits_exactly_fits_whatever_the_kinds():
    mixed = Palette((Entry("A", "Small", "#1d3350"), Entry("B", "Large", "#f2e8d5", kind="8/0 round")))
    pattern = Pattern("Mixed", 6, mixed, bytes([0, 0, 1]) * 20)
    exact = (40 * 1.40 + 20 * 1.82) / 1000
    assert beads_of(cut(pattern, 240, plan=exact)[1]) == [60] * 4


def test_not_even_one_round_on_a_thread_is_refused():
    with pytest.raises(PlanError, match=r"Not even one round fits on 0\.005 m of strung beads; allow more\."):
        cut(made(70), 700, longest_mm=5.0)


ROPE, FOCAL = Part("Rope", bytes([0, 1, 1]), None), Part("Focal", bytes([2] * 50), 4)


def parted(*parts, **words):
    return Pattern("Parts", 6, palette(), in_parts=parts, **words)


def test_threads_are_cut_where_parts_end_when_that_keeps_them_even():
    pattern = parted(ROPE, FOCAL, ROPE)
    assert beads_of(cut(pattern, 820, longest_mm=450.0)[1]) == [310, 200, 310]


def test_else_they_are_cut_where_a_pass_ends():
    pattern = parted(ROPE, replace(FOCAL, times=12), ROPE)
    _, stringing = cut(pattern, 640, longest_mm=300.0)
    assert beads_of(stringing) == [170, 150, 150, 170]


def test_else_they_are_cut_after_whole_rounds():
    pattern = parted(Part("Head", bytes(600)), Part("Tail", bytes([1] * 5)))
    assert beads_of(cut(pattern, 605, longest_mm=300.0)[1]) == [204, 198, 203]


@given(in_parts(), st.sampled_from([30.0, 100.0, 400.0]), st.integers(30, 2000))
def test_threads_of_parts_are_even_and_few(pattern, longest_mm, beads):
    if not pattern.fills or beads < pattern.fixed_beads + pattern.around:
        return
    sized, stringing = cut(pattern, beads, longest_mm=longest_mm)
    assert all(0 < thread.strung_mm <= longest_mm + EXACT_MM for thread in stringing.threads)
    fewest = sized.beads * 1.4 / longest_mm
    if len(pattern.parts) > 3 and pattern.around * 1.4 * fewest < longest_mm:
        assert len(stringing.threads) <= fewest + 2


def test_a_thread_for_every_pass_of_every_part():
    _, stringing = cut(parted(ROPE, replace(FOCAL, times=2), ROPE), 114, "chart")
    assert beads_of(stringing) == [1, 3, 3, 50, 50, 3, 3, 1]


@pytest.mark.parametrize("around", [3, 60])
def test_the_longest_chart_on_the_shortest_threads_has_one_for_every_round(around):
    pattern = made(100_000, around)
    _, stringing = cut(pattern, 100_000, longest_mm=around * 1.4 * 1.9)
    assert set(beads_of(stringing)[:-1]) == {around}
    with pytest.raises(PlanError, match="Not even one round fits"):
        cut(pattern, 100_000, longest_mm=around * 1.4 * 0.9)


def test_short_threads_are_even_behind_a_long_start_too():
    pattern = made(3, 3, start=bytes(30))
    _, stringing = cut(pattern, 30 + 3 * 30_000, longest_mm=35 * 1.4)
    assert beads_of(stringing)[0] == 33
    assert set(beads_of(stringing)[1:]) == {3}


def test_parts_without_end_on_threads_that_hold_no_round_are_refused():
    parts = tuple(Part(f"Part {number}", bytes([0, 1] * 4_000), 1) for number in range(12))
    with pytest.raises(PlanError, match=r"Not even one round fits on 0\.001 m"):
        cut(Pattern("Trial", 60, palette(), in_parts=parts), 96_000, longest_mm=1.0)
