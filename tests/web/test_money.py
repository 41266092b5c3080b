"""Money as it is typed and read, by the rules of countries (CLDR, as Babel carries it)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.cabinet.money import Money
from engine.errors import EngineError
from webapp.money import countries, currencies, read_amount, read_currency, shown, to_type


@pytest.mark.parametrize(
    ("money", "country", "text"),
    [
        (Money(123450, "EUR"), "", "€1,234.50"),
        (Money(123450, "EUR"), "DE", "1.234,50 €"),
        (Money(123450, "EUR"), "AT", "€ 1.234,50"),
        (Money(123450, "CHF"), "CH", "CHF 1’234.50"),
        (Money(123450, "GBP"), "GB", "£1,234.50"),
        (Money(123450, "USD"), "US", "$1,234.50"),
        (Money(1234, "JPY"), "JP", "￥1,234"),
        (Money(350, "EUR"), "no country", "€3.50"),
        (Money(350, "EUR"), "XX", "€3.50"),
        (Money(0, "EUR"), "", "€0.00"),
    ],
)
def test_an_amount_is_written_as_its_country_writes_it(money, country, text):
    assert shown(money, country).replace("\xa0", " ").replace("'", "’") == text


@pytest.mark.parametrize(
    ("typed", "currency", "amount"),
    [("3.50", "EUR", 350), ("3,5", "EUR", 350), (" 12 ", "EUR", 1200), ("350", "JPY", 350), ("1.250", "KWD", 1250)],
)
def test_an_amount_is_typed_with_point_or_comma(typed, currency, amount):
    assert read_amount(typed, currency) == amount


@pytest.mark.parametrize(
    ("typed", "currency", "sentence"),
    [
        ("€ 3.50", "EUR", "“€ 3.50” is not an amount; write it such as 3.50, without a sign."),
        ("-3", "EUR", "“-3” is not an amount"),
        ("1,250", "EUR", "“1,250” is not an amount; EUR has 2 places behind the point."),
        ("3.5", "JPY", "“3.5” is not an amount; JPY has no places behind the point."),
        ("999999999", "EUR", "“999999999” is beyond what is kept."),
        ("", "EUR", "“” is not an amount"),
        ("٣", "EUR", "“٣” is not an amount"),
    ],
)
def test_what_is_no_amount_is_refused_in_a_sentence(typed, currency, sentence):
    with pytest.raises(EngineError) as refused:
        read_amount(typed, currency)
    assert refused.value.message.startswith(sentence)


@given(st.integers(1, 10**8), st.sampled_from(("EUR", "JPY", "KWD")))
def test_an_amount_that_is_typed_again_is_the_same(amount, currency):
    assert read_amount(to_type(amount, currency), currency) == amount


def test_currencies_and_countries_are_those_in_use():
    assert read_currency(" eur") == "EUR"
    assert dict(currencies())["GBP"] == "GBP, British Pound"
    assert "DEM" not in dict(currencies())
    assert dict(countries())["AT"] == "Austria"
    with pytest.raises(EngineError, match="“euro” is not the code of a currency"):
        read_currency("euro")
