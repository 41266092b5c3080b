"""What patterns earned: the notes, and the table of them by month."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from engine.cabinet.earnings import by_month
from engine.cabinet.money import Money, summed
from engine.dates import MONTHS
from engine.units import counted
from webapp.money import currencies, shown, to_type
from webapp.pages.addresses import address
from webapp.pages.forms.cost import EarningForm
from webapp.pages.views.cost import amounts
from webapp.pages.views.frame import Frame
from webapp.records import KeptEarning, MakerSettings

COLUMNS = ("date", "pattern", "edition", "copies", "price", "fee", "total", "currency", "note")
LISTED = 100


@dataclass(frozen=True)
class MonthLine:
    """What was earned in a month."""

    month: Annotated[str, "The month in words."]
    copies: Annotated[int, "Copies sold."]
    sales: Annotated[str, "What they came to; may be empty."]
    fees: Annotated[str, "Fees; may be empty."]
    total: Annotated[str, "Both together."]


@dataclass(frozen=True)
class NoteLine:
    """A note of what was earned."""

    id: Annotated[int, "Its number."]
    date: Annotated[str, "The day, YYYY-MM-DD."]
    title: Annotated[str, "The pattern's title then."]
    pattern: Annotated[int, "The pattern's number."]
    words: Annotated[str, "Edition, copies, price, fee and note."]
    total: Annotated[str, "What it came to."]


@dataclass(frozen=True)
class EarningsPage:
    """What was earned at `/earnings`."""

    frame: Frame
    form: Annotated[EarningForm, "A new note as typed, and what is wrong."]
    currencies: Annotated[tuple[tuple[str, str], ...], "The currencies to choose from."]
    months: Annotated[tuple[MonthLine, ...], "What was earned by month, the newest first."]
    total: Annotated[str, "What was earned in all."]
    notes: Annotated[tuple[NoteLine, ...], "The newest notes."]
    more: Annotated[int, "How many notes there are besides."]
    of: Annotated[str, "The title of the pattern whose earnings these are; empty for all."]
    table: Annotated[str, "Address of the notes as CSV."]


def earnings_page(
    frame: Frame, form: EarningForm, noted: Sequence[KeptEarning], maker: MakerSettings, pattern: int = 0, of: str = ""
) -> EarningsPage:
    """The notes of one pattern, or of all."""
    earned = [kept.earning for kept in noted]
    return EarningsPage(
        frame=frame,
        form=form,
        currencies=currencies(),
        months=tuple(
            MonthLine(
                month=f"{MONTHS[int(month.month[5:]) - 1]} {month.month[:4]}",
                copies=month.copies,
                sales=amounts(month.sales, maker),
                fees=amounts(month.fees, maker),
                total=amounts(month.total, maker),
            )
            for month in by_month(earned)
        ),
        total=amounts(summed(earning.total for earning in earned), maker),
        notes=tuple(_note(kept, maker) for kept in noted[:LISTED]),
        more=max(0, len(noted) - LISTED),
        of=of,
        table=address("earnings_table", pattern=pattern or ""),
    )


def earnings_rows(noted: Sequence[KeptEarning]) -> list[list[object]]:
    """The notes as rows of a table, under COLUMNS; amounts in the currency of their row."""
    rows: list[list[object]] = []
    for kept in noted:
        earning = kept.earning
        sums = (earning.price, earning.fee, earning.total.amount)
        rows.append(
            [
                earning.date,
                kept.title,
                earning.edition or "",
                earning.copies,
                *(to_type(amount, earning.currency) for amount in sums),
                earning.currency,
                earning.note,
            ]
        )
    return rows


def _note(kept: KeptEarning, maker: MakerSettings) -> NoteLine:
    earning = kept.earning
    price = shown(Money(earning.price, earning.currency), maker.country)
    fee = shown(Money(earning.fee, earning.currency), maker.country)
    copies = f"{counted(earning.copies, 'copy', 'copies')} at {price}" if earning.copies else ""
    words = (f"edition {earning.edition}" if earning.edition else "", copies, f"fee {fee}" if earning.fee else "")
    return NoteLine(
        id=kept.id,
        date=earning.date,
        title=kept.title,
        pattern=earning.pattern,
        words=" · ".join(filter(None, (*words, earning.note))),
        total=shown(earning.total, maker.country),
    )
