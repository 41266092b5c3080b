"""What is asked about cost: pieces, other material, hours and their rate; patterns on a shopping list; earnings."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace

from engine.cabinet.earnings import Earning
from engine.errors import EngineError
from engine.numbers import decimal_number, whole_number
from webapp.money import currencies, read_amount, to_type
from webapp.pages.forms.sent import Objections, Sent
from webapp.records import MakerSettings

MOST_ON_LIST = 40
MOST_HOURS = 10_000

_CLOCK = re.compile(r"(?P<hours>[0-9]{1,4}):(?P<minutes>[0-5][0-9])")


@dataclass(frozen=True)
class CostForm:
    """What was typed, what is wrong by field, and what it means; money in the smallest coin of the maker's currency."""

    pieces: str
    other: str
    hours: str
    rate: str
    errors: Mapping[str, str]
    pieces_meant: int = 1
    other_meant: int = 0
    minutes: int = 0
    rate_meant: int = 0


@dataclass(frozen=True)
class TypedWanted:
    """A pattern on a shopping list as typed: title or number, pieces, and how long."""

    pattern: str = ""
    pieces: str = "1"
    length: str = ""
    closure: str = "open"


@dataclass(frozen=True)
class TypedEarning:
    """A note of what was earned as typed."""

    pattern: str = ""
    edition: str = ""
    date: str = ""
    copies: str = ""
    price: str = ""
    fee: str = ""
    currency: str = ""
    note: str = ""


@dataclass(frozen=True)
class EarningForm:
    """What was typed, what is wrong by field, and the earning when nothing is; its pattern is put in afterwards."""

    typed: TypedEarning
    errors: Mapping[str, str]
    earning: Earning | None = None

    def refused(self, error: EngineError) -> EarningForm:
        """The form with an objection beside its field."""
        return replace(self, errors={**self.errors, error.field or "pattern": error.message}, earning=None)


def read_cost(pairs: Iterable[tuple[str, object]], settings: MakerSettings) -> CostForm:
    """The cost form of a query; the rate is that of the settings where none is said."""
    sent, wrong = Sent(pairs), Objections()
    pieces, other, hours = sent.one("pieces") or "1", sent.one("other"), sent.one("hours")
    rate = sent.one("rate") or settings.rate
    currency = settings.currency

    def amount(name: str, text: str, what: str) -> int:
        return wrong.read(name, lambda: read_amount(text, currency, what), 0) if text else 0

    return CostForm(
        pieces=pieces,
        other=other,
        hours=hours,
        rate=rate,
        pieces_meant=wrong.read("pieces", lambda: read_pieces(pieces), 1),
        other_meant=amount("other", other, "an amount"),
        minutes=wrong.read("hours", lambda: _minutes(hours), 0) if hours else 0,
        rate_meant=amount("rate", rate, "a rate an hour"),
        errors=wrong.by_field,
    )


def read_pieces(text: str) -> int:
    """Pieces to be made, 1 to 10,000. Raises EngineError."""
    pieces = whole_number(text, "how many pieces, such as 3")
    if not 1 <= pieces <= 10_000:
        raise EngineError("Say 1 to 10,000 pieces.", "pieces")
    return pieces


def read_wanted(pairs: Iterable[tuple[str, object]]) -> tuple[TypedWanted, ...]:
    """The lines of a shopping list; those without a pattern are left out."""
    sent = Sent(pairs)
    columns = {of.name: sent.all(of.name) for of in fields(TypedWanted)}
    usual = TypedWanted()
    lines = [
        TypedWanted(
            **{
                name: (texts[place] if place < len(texts) else "") or getattr(usual, name)
                for name, texts in columns.items()
            }
        )
        for place in range(min(len(columns["pattern"]), MOST_ON_LIST))
    ]
    return tuple(line for line in lines if line.pattern)


def read_bought(pairs: Iterable[tuple[str, object]]) -> dict[str, int]:
    """Packs that were bought, by the key of their bead. Raises EngineError."""
    sent = Sent(pairs)
    return {
        key: whole_number(packs, "how many packs, such as 2")
        for key, packs in zip(sent.all("bead"), sent.all("packs"), strict=False)
        if key and packs
    }


def blank_earning(
    pairs: Iterable[tuple[str, object]], settings: MakerSettings, today: str, pattern: str = ""
) -> EarningForm:
    """The form for a new note; a query may fill it."""
    sent = Sent(pairs)
    usual = TypedEarning(pattern=pattern, date=today, currency=settings.currency)
    filled = {of.name: sent.one(of.name) for of in fields(TypedEarning) if of.name != "pattern"}
    named = sent.one("title") or pattern
    return EarningForm(replace(usual, pattern=named, **{name: text for name, text in filled.items() if text}), {})


def again(earning: Earning, title: str) -> dict[str, str]:
    """What fills the form with a note that was made; `title` names its pattern."""
    return {
        "title": title,
        "edition": str(earning.edition or ""),
        "date": earning.date,
        "copies": str(earning.copies or ""),
        "price": to_type(earning.price, earning.currency),
        "fee": to_type(earning.fee, earning.currency),
        "currency": earning.currency,
        "note": earning.note,
    }


def read_earning(pairs: Iterable[tuple[str, object]]) -> EarningForm:
    """The note that was sent; the number of its pattern is still nought."""
    sent, wrong = Sent(pairs), Objections()
    typed = TypedEarning(**{of.name: sent.one(of.name) for of in fields(TypedEarning)})
    if typed.currency not in dict(currencies()):
        return EarningForm(typed, {"currency": "Choose a currency from the list."})

    def count(name: str, text: str, what: str) -> int:
        return wrong.read(name, lambda: whole_number(text, what), 0) if text else 0

    def amount(name: str, text: str, what: str) -> int:
        return wrong.read(name, lambda: read_amount(text, typed.currency, what), 0) if text else 0

    edition = count("edition", typed.edition, "which edition, such as 1")
    copies = count("copies", typed.copies, "how many copies, such as 3")
    price, fee = amount("price", typed.price, "a price"), amount("fee", typed.fee, "a fee")
    if wrong.by_field:
        return EarningForm(typed, wrong.by_field)
    try:
        earning = Earning(
            pattern=0,
            edition=edition,
            date=typed.date,
            copies=copies,
            price=price,
            fee=fee,
            currency=typed.currency,
            note=typed.note,
        )
    except EngineError as error:
        return EarningForm(typed, {error.field or "copies": error.message})
    return EarningForm(typed, {}, earning)


def _minutes(text: str) -> int:
    """Minutes of hours as typed: "6.5" or "6:30"."""
    clock = _CLOCK.fullmatch(text)
    if clock:
        return 60 * int(clock["hours"]) + int(clock["minutes"])
    hours = decimal_number(text, "how many hours, such as 6.5 or 6:30")
    if hours > MOST_HOURS:
        raise EngineError(f"Say at most {MOST_HOURS:,} hours.", "hours")
    return round(hours * 60)
