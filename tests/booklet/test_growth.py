"""The rope as it grows: every thread that differs has its picture, and the picture is the end of the rope."""

from __future__ import annotations

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from engine.booklet.guides.growth import MOST_BEADS, MOST_PICTURES, WIDTH_MM, growth
from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.drawing.charts import cells, extent
from engine.pattern.pattern import Pattern, left_handed
from tests.booklet.test_figures import drawn, places
from tests.booklets import scattered
from webapp.printing.growing import GrownFigure


def grown(pattern: Pattern, mm: float | None = 220, plan: str | float = "chart", units: str = "cm"):
    return growth(pattern, answer(pattern, Question(mm), None, plan), units)


def test_one_thread_has_no_pictures() -> None:
    assert grown(scattered(12, 240), plan="whole") == ()


def test_threads_strung_alike_share_a_picture_and_say_so() -> None:
    first, last = grown(scattered(12, 240), 220)
    assert re.fullmatch(
        r"After thread 1: 240 beads, [\d.]+ cm\. Threads 2 to 6 are strung alike: 1,440 beads, [\d.]+ cm after "
        r"thread 6\.",
        first.caption,
    )
    assert re.fullmatch(r"After thread 7: [\d,]+ beads, 22\.0 cm\.", last.caption)
    assert last.share == 1.0 and 0 < first.share < 1


def test_there_are_never_more_than_eight_and_the_last_thread_is_among_them() -> None:
    pattern = scattered(12, 3000)
    made = grown(pattern, 480, 0.2)
    assert len(made) == MOST_PICTURES and made[-1].share == 1.0


def test_past_eight_the_last_says_which_threads_were_left_out() -> None:
    pattern = scattered(12, 3000)
    threads = len(answer(pattern, Question(480), None, 0.2).stringing.threads)
    *others, last = (one.caption for one in grown(pattern, 480, 0.2))
    assert last.endswith(
        f" Threads 8 to {threads - 1} are left out here; the heads of the lists say how many beads a thread takes."
    )
    assert not any("left out" in caption for caption in (*others, *(one.caption for one in grown(pattern, 220))))


def test_lengths_are_said_in_the_units_of_the_booklet() -> None:
    assert all(" in." in one.caption and " cm" not in one.caption for one in grown(scattered(12, 240), units="in"))


@settings(max_examples=40)
@given(st.integers(3, 60), st.integers(20, 900), st.booleans(), st.floats(0.5, 3))
def test_a_picture_is_the_end_of_the_rope_in_its_own_rows(around: int, beads: int, left: bool, passes: float) -> None:
    pattern = left_handed(scattered(around, beads)) if left else scattered(around, beads)
    answered = answer(pattern, Question(None), None, 0.3)
    worked = pattern.worked(answered.size.beads)
    for one in growth(pattern, answered, "cm"):
        upto = round(one.share * len(worked))
        shown = one.end.chart
        assert worked[:upto].endswith(shown)
        assert (upto - len(shown)) % (2 * around + 1) == 0
        assert len(shown) <= MOST_BEADS + 3 * (around + 1)
        assert extent(one.end, bead_mm=one.bead_mm, upright=False)[0] <= WIDTH_MM + 0.01


def test_the_beads_of_a_picture_stand_where_the_chart_has_them() -> None:
    for pattern in (scattered(12, 240), left_handed(scattered(12, 240))):
        one = grown(pattern)[0]
        found = set(places(drawn(GrownFigure(one)).text))
        assert found == {
            (round(cell.x, 2), round(cell.y, 2)) for cell in cells(one.end, bead_mm=one.bead_mm, upright=False)
        }


def test_the_bar_is_filled_as_far_as_the_rope_is_worked_and_marked_at_every_join() -> None:
    one = grown(scattered(12, 240))[0]
    text = drawn(GrownFigure(one)).text
    filled = re.search(r" 0 [\d.]+ ([\d.]+) 2\.00 re f", text)
    assert filled and float(filled[1]) == round(WIDTH_MM * one.share, 2)
    assert len(re.findall(r"RG [\d.]+ [\d.]+ m [\d.]+ [\d.]+ l S", text)) == len(one.joins) == 6
