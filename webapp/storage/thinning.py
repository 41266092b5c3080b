"""Which of many dated things are kept as they grow older: the newest of every day, week and month."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping
from datetime import date, datetime, timedelta
from typing import NamedTuple, TypeVar

K = TypeVar("K", bound=Hashable)


class Rule(NamedTuple):
    """Everything of the last `whole` days, and the newest of each of so many days, weeks and months; None: of all.

    So many of the `newest` stay whatever their age. Today, this week and this month are the first of them. Weeks begin
    on Monday.
    """

    whole: int
    days: int
    weeks: int
    months: int | None
    newest: int = 0


REVISIONS = Rule(2, 31, 53, None, newest=10)
BACKUPS = Rule(2, 7, 4, 12, newest=10)


def kept(dated: Mapping[K, datetime], now: datetime, rule: Rule) -> frozenset[K]:
    """The keys of what is kept. Thinning is idempotent: the newest of a period stays while its period counts."""
    today = now.date()
    newest = sorted(dated, key=lambda key: dated[key], reverse=True)[: rule.newest]
    whole = {key for key, moment in dated.items() if (today - moment.date()).days < rule.whole}
    return frozenset(
        whole.union(newest)
        | _newest(dated, today, _day, rule.days)
        | _newest(dated, today, _week, rule.weeks)
        | _newest(dated, today, _month, rule.months)
    )


def _newest(dated: Mapping[K, datetime], today: date, period: Callable[[date], int], most: int | None) -> set[K]:
    newest: dict[int, K] = {}
    for key in sorted(dated, key=lambda key: dated[key]):
        newest[period(dated[key].date())] = key
    return {key for number, key in newest.items() if most is None or period(today) - number < most}


def _day(day: date) -> int:
    return day.toordinal()


def _week(day: date) -> int:
    return (day - timedelta(days=day.weekday())).toordinal() // 7


def _month(day: date) -> int:
    return day.year * 12 + day.month
