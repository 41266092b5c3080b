"""What patterns earned: fees and copies sold, noted by edition, and the table of them by month."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from engine.cabinet.money import Money, summed
from engine.dates import is_day
from engine.errors import PatternError
from engine.pattern.words import check_line

MOST_COPIES = 1_000_000
MOST_AMOUNT = 1_000_000_000
LONGEST_NOTE = 200


@dataclass(frozen=True)
class Earning:
    """A note of what a pattern earned on a day: so many copies of an edition at a price each, or a fee.

    `edition` is nought where it is of none. `date` is YYYY-MM-DD; `price` and `fee` are in the smallest coin of
    `currency`. Raises PatternError, naming the field.
    """

    pattern: int
    edition: int
    date: str
    copies: int
    price: int
    fee: int
    currency: str
    note: str = ""

    def __post_init__(self) -> None:
        check_line(self.note, "note", LONGEST_NOTE, "note", least=0)
        if not is_day(self.date):
            raise PatternError("Say the day as year, month and day, such as 2026-03-01.", "date")
        if not 0 <= self.copies <= MOST_COPIES:
            raise PatternError(f"Copies sold are 0 to {MOST_COPIES:,}.", "copies")
        for name, what in (("price", "A price"), ("fee", "A fee")):
            if not 0 <= getattr(self, name) <= MOST_AMOUNT:
                raise PatternError(f"{what} is nought or more, and not beyond all measure.", name)
        if not self.copies and not self.fee:
            raise PatternError("Say how many copies were sold, or a fee.", "copies")

    @property
    def month(self) -> str:
        """YYYY-MM."""
        return self.date[:7]

    @property
    def total(self) -> Money:
        return Money(self.copies * self.price + self.fee, self.currency)


@dataclass(frozen=True)
class Month:
    """A month, YYYY-MM: copies sold, and what they and fees came to, by currency."""

    month: str
    copies: int
    sales: tuple[Money, ...]
    fees: tuple[Money, ...]
    total: tuple[Money, ...]


def by_month(earnings: Iterable[Earning]) -> tuple[Month, ...]:
    """The months in which something was earned, the newest first."""
    months: dict[str, list[Earning]] = {}
    for earning in earnings:
        months.setdefault(earning.month, []).append(earning)
    return tuple(
        Month(
            month=month,
            copies=sum(earning.copies for earning in noted),
            sales=summed(Money(earning.copies * earning.price, earning.currency) for earning in noted),
            fees=summed(Money(earning.fee, earning.currency) for earning in noted),
            total=summed(earning.total for earning in noted),
        )
        for month, noted in sorted(months.items(), reverse=True)
    )
