"""Notes of what was earned stay when their pattern goes."""

import pytest

from engine.cabinet.earnings import Earning
from webapp.storage import earnings, patterns
from webapp.storage.errors import NotFound


def earned(pattern, date="2026-03-01", copies=3):
    return Earning(pattern=pattern, edition=1, date=date, copies=copies, price=950, fee=0, currency="EUR")


def test_the_newest_day_stands_first(database, pattern):
    one, other = (patterns.create(database, pattern).id for _ in range(2))
    for note in (earned(one), earned(other, "2026-04-02"), earned(one, "2025-12-24")):
        earnings.note(database, note)
    assert [kept.earning.date for kept in earnings.noted(database)] == ["2026-04-02", "2026-03-01", "2025-12-24"]
    assert [kept.earning.date for kept in earnings.noted(database, one)] == ["2026-03-01", "2025-12-24"]


def test_a_note_outlives_its_pattern(database, pattern):
    number = patterns.create(database, pattern).id
    earnings.note(database, earned(number))
    patterns.put_into_bin(database, number)
    patterns.empty_bin(database)
    assert [(kept.title, kept.earning) for kept in earnings.noted(database)] == [("Small harbour", earned(number))]


def test_a_note_is_removed_and_given_back(database, pattern):
    number = patterns.create(database, pattern).id
    note = earnings.note(database, earned(number))
    assert earnings.remove(database, note).earning == earned(number)
    assert earnings.noted(database) == ()
    with pytest.raises(NotFound):
        earnings.remove(database, note)
    with pytest.raises(NotFound):
        earnings.note(database, earned(99))
