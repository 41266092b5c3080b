"""Threads on the scales: what they should weigh, and how many beads a difference means."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.stringing import string
from engine.counting.weighed import weigh, weighed_in_words
from engine.errors import SizeError
from engine.pattern.notation import parse
from engine.pattern.pattern import Pattern
from tests.pictures import palette

SIZE = size(Pattern("Trial", 6, palette(), parse("(3A 2B)x44", "AB")), Question())
LIST = string(SIZE)


def test_a_thread_should_weigh_what_the_table_of_kinds_says() -> None:
    (one,) = weigh(SIZE, LIST)
    assert (one.beads, one.grams) == (220, pytest.approx(220 / 110))
    assert one.error_grams == pytest.approx(220 / 105 - 220 / 110)
    assert weighed_in_words(one) == "Thread 1, 220 beads, should weigh 2.0 g ± 0.1 g."


def test_a_difference_is_told_in_beads_with_how_sure_that_is() -> None:
    (one,) = weigh(SIZE, LIST, (2.5,))
    assert (one.off, one.unsure) == (pytest.approx(55), pytest.approx(110 * (one.error_grams + 0.05)))
    assert weighed_in_words(one) == (
        "Thread 1, 220 beads, should weigh 2.0 g ± 0.1 g and weighs 2.5 g: about 55 beads too many, give or take 16."
    )


def test_a_small_difference_tells_nothing_and_says_what_helps() -> None:
    (one,) = weigh(SIZE, LIST, (1.95,))
    assert "That tells nothing below 16 beads: count, or weigh a hundred beads" in weighed_in_words(one)


def test_a_hundred_beads_of_the_bag_make_it_surer() -> None:
    (table,), (bag,) = weigh(SIZE, LIST, (2.2,)), weigh(SIZE, LIST, (2.2,), 0.0095)
    assert bag.grams == pytest.approx(2.09)
    assert bag.unsure < table.unsure
    with pytest.raises(SizeError, match="weighs more than nothing"):
        weigh(SIZE, LIST, (), 0.0)


@given(st.floats(0.1, 10))
def test_more_on_the_scales_means_more_beads(weighed: float) -> None:
    (one,), (more,) = weigh(SIZE, LIST, (weighed,)), weigh(SIZE, LIST, (weighed + 1,))
    assert more.off - one.off == pytest.approx(110)
