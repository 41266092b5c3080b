"""Money in whole smallest coins, one currency at a time; nothing is converted."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import floor
from typing import NamedTuple


class Money(NamedTuple):
    """So many of the smallest coin of a currency (a code of ISO 4217): 350 EUR are € 3.50."""

    amount: int
    currency: str


def summed(amounts: Iterable[Money]) -> tuple[Money, ...]:
    """The sum of each currency, in the order of their codes; sums of nought are left out.

    >>> summed([Money(350, "EUR"), Money(20, "USD"), Money(50, "EUR")])
    (Money(amount=400, currency='EUR'), Money(amount=20, currency='USD'))
    """
    sums: dict[str, int] = {}
    for amount, currency in amounts:
        sums[currency] = sums.get(currency, 0) + amount
    return tuple(Money(amount, currency) for currency, amount in sorted(sums.items()) if amount)


def whole_coins(amount: Fraction) -> int:
    """The nearest whole number of coins, half up."""
    return floor(amount + Fraction(1, 2))
