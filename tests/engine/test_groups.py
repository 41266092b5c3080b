"""Lists that repeat are told as groups, and say the same as run by run."""

from hypothesis import given
from hypothesis import strategies as st

from engine.counting.groups import MOST_IN_GROUP, beads_of, group_passes, group_runs
from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.stringing import Run, string
from engine.pattern.pattern import Pattern
from tests.pictures import palette
from tests.ropes import size_of_beads

runs = st.lists(
    st.tuples(st.sampled_from("ABCD"), st.integers(1, 9)).map(lambda run: Run(*run)), min_size=1, max_size=8
)


def told(grouped):
    return " ".join(f"{run.beads}{run.code}" for run in grouped)


@given(runs, runs, st.integers(1, 60), runs)
def test_the_groups_are_the_list_again_and_shorter_by_half(before, group, times, after):
    whole = (*before, *group * times, *after)
    grouped = group_runs(whole)
    if grouped is not None:
        assert grouped.runs == whole
        assert 2 * (len(grouped.before) + len(grouped.group) + len(grouped.after)) <= len(whole)
        assert grouped.times >= 2 and len(grouped.group) <= MOST_IN_GROUP
        assert grouped.totals[-1] == (grouped.times, beads_of(grouped.before) + grouped.times * beads_of(grouped.group))
    elif len(before) + len(group) + len(after) <= len(whole) / 2:
        assert len(group) > MOST_IN_GROUP


@given(st.integers(25, 60), st.integers(2, 4), st.randoms(use_true_random=False))
def test_a_long_pass_that_is_strung_again_is_one_group(length, times, random):
    one = (*tuple(Run("ABCD"[number % 4], random.randint(1, 9)) for number in range(length - 1)), Run("E", 1))
    grouped = group_passes(one * times)
    assert grouped is not None and grouped.runs == one * times
    assert (len(grouped.group), grouped.times, grouped.after) == (length, times, ())


@given(st.integers(3, 12), st.binary(min_size=1, max_size=12), st.integers(200, 2000))
def test_every_thread_of_every_rope_reads_the_same_in_groups(around, some, beads):
    pattern = Pattern("Trial", around, palette(), bytes(bead % 4 for bead in some))
    for thread in string(size_of_beads(pattern, Question(), beads), "whole").threads:
        grouped = group_runs(thread.runs)
        assert grouped is None or grouped.runs == thread.runs


def test_a_spiral_is_told_as_its_repeat_and_what_is_left_over():
    pattern = Pattern("Trial", 6, palette(), bytes([0, 0, 0, 1, 2, 2, 3]) * 12)
    (thread,) = string(size_of_beads(pattern, Question(), 926), "whole").threads
    grouped = group_runs(thread.runs)
    assert grouped is not None
    assert (told(grouped.before), told(grouped.group), grouped.times, told(grouped.after)) == (
        "2A",
        "1D 2C 1B 3A",
        132,
        "",
    )
    assert beads_of(grouped.group) == 7
    assert len(grouped.before) + len(grouped.after) < 8


def test_totals_stand_after_every_ten_and_at_the_end():
    grouped = group_runs([Run("B", 2), *[Run("A", 3), Run("B", 2)] * 23])
    assert grouped is not None
    assert (told(grouped.before), told(grouped.group), grouped.times) == ("", "2B 3A", 23)
    assert grouped.totals == ((10, 50), (20, 100), (23, 115))


def test_a_list_that_is_not_much_shorter_so_stays_as_it_is():
    assert group_runs([Run("A", 1)]) is None
    assert group_runs([Run("A", 1), Run("B", 1), Run("A", 1)]) is None
    assert group_runs(string(size(Pattern("Trial", 6, palette(), bytes(90)), Question())).threads[0].runs) is None
