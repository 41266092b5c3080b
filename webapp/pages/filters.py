"""What templates may do to a value: give it as text. Numbers go through the engine's one rule of rounding."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date, datetime
from types import MappingProxyType
from typing import Any

from engine import units
from engine.dates import day_of
from webapp.pages.addresses import address
from webapp.pages.static import static


def day(moment: date) -> str:
    """A date in words: "23 November 2026"."""
    return day_of(moment.isoformat()[:10])


def moment(moment: datetime) -> str:
    """Date and time of day on this computer's clock: "23 November 2026, 18:40"."""
    here = moment.astimezone() if moment.tzinfo else moment
    return f"{day(here)}, {here:%H:%M}"


FILTERS: Mapping[str, Callable[..., Any]] = MappingProxyType(
    {
        "address": address,
        "static": static,
        "day": day,
        "moment": moment,
        "counted": units.counted,
        "count": units.count,
        "grams": units.grams,
        "as_length": units.length,
        "metres": units.metres,
        "millimetres": units.millimetres,
        "degrees": units.degrees,
        "percent": units.percent,
        "fixed": units.fixed,
        "plain": units.plain,
    }
)
