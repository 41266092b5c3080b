"""Money is counted in whole coins, each currency for itself."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from engine.cabinet.money import Money, summed, whole_coins

amounts = st.builds(Money, st.integers(0, 10**9), st.sampled_from(("EUR", "JPY", "USD")))


@given(st.lists(amounts))
def test_every_currency_is_summed_for_itself_to_the_coin(given_amounts):
    sums = {money.currency: money.amount for money in summed(given_amounts)}
    for currency in ("EUR", "JPY", "USD"):
        exact = sum(money.amount for money in given_amounts if money.currency == currency)
        assert sums.get(currency, 0) == exact


def test_half_a_coin_is_rounded_up():
    assert [whole_coins(Fraction(part, 2)) for part in (0, 1, 2, 3)] == [0, 1, 1, 2]
