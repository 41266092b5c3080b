"""What was earned, by month."""

import pytest

from engine.cabinet.earnings import Earning, Month, by_month
from engine.cabinet.money import Money
from engine.errors import EngineError


def earned(date, copies=0, price=0, fee=0, currency="EUR"):
    return Earning(pattern=1, edition=1, date=date, copies=copies, price=price, fee=fee, currency=currency)


def test_months_stand_newest_first_with_sales_and_fees_by_currency():
    months = by_month(
        [
            earned("2026-03-01", 3, 950),
            earned("2026-03-30", 1, 950, fee=5000),
            earned("2026-05-11", 2, 1100, currency="USD"),
            earned("2026-05-02", 1, 950),
        ]
    )
    assert months == (
        Month("2026-05", 3, (Money(950, "EUR"), Money(2200, "USD")), (), (Money(950, "EUR"), Money(2200, "USD"))),
        Month("2026-03", 4, (Money(3800, "EUR"),), (Money(5000, "EUR"),), (Money(8800, "EUR"),)),
    )


@pytest.mark.parametrize(
    ("wrong", "field"),
    [
        ({"date": "2026-13-01"}, "date"),
        ({"date": "2026-02-30"}, "date"),
        ({"date": "0000-01-01"}, "date"),
        ({"date": "20260301"}, "date"),
        ({"date": "٢٠٢٦-03-01"}, "date"),
        ({"copies": 0}, "copies"),
        ({"copies": -1}, "copies"),
        ({"price": -1}, "price"),
        ({"fee": 10**12}, "fee"),
        ({"note": "x" * 201}, "note"),
    ],
)
def test_what_was_not_earned_so_is_refused_by_its_field(wrong, field):
    sound = {"pattern": 1, "edition": 1, "date": "2026-03-01", "copies": 2, "price": 950, "fee": 0, "currency": "EUR"}
    with pytest.raises(EngineError) as refused:
        Earning(**{**sound, **wrong})
    assert refused.value.field == field
