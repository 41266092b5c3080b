"""Values as text."""

from __future__ import annotations

from datetime import date, datetime

import pytest

from engine import units
from engine.units import counted
from webapp.pages.filters import FILTERS, day, moment


def test_a_date_is_written_in_words() -> None:
    assert day(date(2026, 3, 1)) == "1 March 2026"


def test_a_moment_has_its_time_of_day() -> None:
    assert moment(datetime(2026, 11, 23, 8, 5)) == "23 November 2026, 08:05"


@pytest.mark.parametrize(("number", "text"), [(0, "0 beads"), (1, "1 bead"), (2, "2 beads"), (1500, "1,500 beads")])
def test_a_count_agrees_with_its_noun(number: int, text: str) -> None:
    assert counted(number, "bead") == text


def test_a_noun_may_have_a_plural_of_its_own() -> None:
    assert counted(3, "pass", "passes") == "3 passes"


def test_numbers_are_rounded_by_the_engine_alone() -> None:
    names = ("count", "grams", "metres", "millimetres", "degrees", "percent", "fixed", "plain")
    assert {name: FILTERS[name] for name in names} == {name: getattr(units, name) for name in names}
    assert FILTERS["as_length"] is units.length
