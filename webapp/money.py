"""Money as people type and read it, by the rules of their country: places of decimals, signs, order."""

from __future__ import annotations

import re
from decimal import Decimal
from functools import lru_cache

from babel import Locale, UnknownLocaleError
from babel.numbers import format_currency, get_currency_name, get_currency_precision, get_territory_currencies

from engine.cabinet.bead import MOST_PRICE
from engine.cabinet.money import Money
from engine.errors import EngineError, shortened

ENGLISH = Locale("en")
USUAL_CURRENCY = "EUR"

_TYPED = re.compile(r"(?P<whole>[0-9]{1,9})(?:[.,](?P<part>[0-9]{1,4}))?")
_CODE = re.compile(r"[A-Z]{3}")
_COUNTRY = re.compile(r"[A-Z]{2}")


def shown(money: Money, country: str = "") -> str:
    """An amount as it is written in that country (ISO 3166); in English where no country is said.

    >>> shown(Money(123450, "EUR"), "DE"), shown(Money(123450, "EUR"))
    ('1.234,50\\xa0€', '€1,234.50')
    """
    return format_currency(_decimal(money), money.currency, locale=_locale(country))


def shown_about(amount: float, currency: str, country: str = "") -> str:
    """An amount that was typed or divided, to the smallest coin.

    >>> shown_about(9.3333, "EUR"), shown_about(9.3333, "JPY")
    ('€9.33', '¥9')
    """
    return format_currency(Decimal(str(round(amount, 6))), currency, locale=_locale(country))


def to_type(amount: int, currency: str) -> str:
    """An amount as one would type it: "3.50"; nothing for nought."""
    return f"{_decimal(Money(amount, currency)):f}" if amount else ""


def read_amount(text: str, currency: str, what: str = "an amount") -> int:
    """Whole smallest coins of an amount that was typed, with point or comma. Raises EngineError.

    >>> read_amount("3,5", "EUR"), read_amount("350", "JPY")
    (350, 350)
    """
    typed = _TYPED.fullmatch(text.strip())
    if typed is None:
        raise EngineError(f"“{shortened(text)}” is not {what}; write it such as 3.50, without a sign.")
    places = get_currency_precision(currency)
    part = typed["part"] or ""
    if len(part) > places:
        coins = f"{places} places behind the point" if places else "no places behind the point"
        raise EngineError(f"“{shortened(text)}” is not {what}; {currency} has {coins}.")
    amount = int(typed["whole"] + part.ljust(places, "0"))
    if amount > MOST_PRICE:
        raise EngineError(f"“{shortened(text)}” is beyond what is kept.")
    return amount


def read_currency(text: str) -> str:
    """The code of a currency. Raises EngineError for one that is not known."""
    code = text.strip().upper()
    if code not in dict(currencies()):
        raise EngineError(f"“{shortened(text)}” is not the code of a currency; write three letters, such as EUR.")
    return code


@lru_cache(1)
def currencies() -> tuple[tuple[str, str], ...]:
    """The currencies that some country uses today: code, and code with its name in English."""
    today = {code for country, _ in countries() for code in get_territory_currencies(country)}
    return tuple((code, f"{code}, {get_currency_name(code, locale=ENGLISH)}") for code in sorted(today))


@lru_cache(1)
def countries() -> tuple[tuple[str, str], ...]:
    """Countries by their names in English: code (ISO 3166), and the name."""
    named = ENGLISH.territories.items()
    return tuple(
        sorted(
            ((code, name) for code, name in named if _COUNTRY.fullmatch(code) and get_territory_currencies(code)),
            key=lambda country: country[1],
        )
    )


def _decimal(money: Money) -> Decimal:
    return Decimal(money.amount).scaleb(-get_currency_precision(money.currency))


@lru_cache(32)
def _locale(country: str) -> Locale:
    """The language that most people of that country speak, with the country's rules."""
    if not _COUNTRY.fullmatch(country):
        return ENGLISH
    try:
        return Locale.parse(f"und_{country}")
    except (UnknownLocaleError, ValueError):
        return ENGLISH
