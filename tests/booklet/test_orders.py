"""A rehearsal: a small booklet that nobody keeps, so that the next is printed sooner and is still the same bytes."""

from __future__ import annotations

import gc

import pytest

from engine.errors import SizeError
from tests.booklets import Choices, clasp, scattered
from webapp.printing import orders
from webapp.printing.orders import Order, Workshop, printed, rehearse
from webapp.printing.pictures import Begin, when_asked

SMALL = scattered(6, 60)


def test_a_rehearsal_asks_for_pictures_as_a_booklet_does_and_the_next_print_is_the_same_bytes() -> None:
    order, asked = Order(SMALL, Choices(), Workshop()), []
    before = printed(order).pdf

    def begin(pattern, wanted) -> Begin:
        asked.append([one.key for one in wanted])
        return when_asked(pattern, wanted)

    rehearse(begin)
    assert printed(order, begin=begin).pdf == before
    assert len(asked) == 2 and asked[0] == asked[1] != []


def test_a_print_that_cannot_be_worked_is_refused_at_its_field() -> None:
    with pytest.raises(SizeError, match="less than one round") as refused:
        Order(SMALL, clasp(26.0), Workshop()).check()
    assert refused.value.field == "length"


def test_after_a_print_garbage_is_looked_for_as_before() -> None:
    assert gc.isenabled()
    printed(Order(SMALL, Choices(), Workshop()))
    assert gc.isenabled() and gc.get_freeze_count() == 0


def test_lists_that_would_take_minutes_to_print_are_refused_as_they_are_ordered(monkeypatch) -> None:
    monkeypatch.setattr(orders, "MOST_ENTRIES", 5)
    with pytest.raises(SizeError, match=r"The lists of this booklet would have \d+ entries, and at most 5 are printed"):
        Order(scattered(12, 400), Choices(), Workshop()).check()
