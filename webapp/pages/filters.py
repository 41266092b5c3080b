"""What templates may do to a value: give it as text. Numbers go through the engine's one rule of rounding."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date, datetime
from types import MappingProxyType
from typing import Any

from engine import units
from webapp.pages.addresses import address

MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)


def day(moment: date) -> str:
    """A date in words: "23 November 2026"."""
    return f"{moment.day} {MONTHS[moment.month - 1]} {moment.year}"


def moment(moment: datetime) -> str:
    """Date and time of day on this computer's clock: "23 November 2026, 18:40"."""
    here = moment.astimezone() if moment.tzinfo else moment
    return f"{day(here)}, {here:%H:%M}"


def counted(number: float, one: str, many: str = "") -> str:
    """A count with its noun: "1 bead", "1,500 beads"."""
    return f"{units.count(number)} {one if number == 1 else many or one + 's'}"


def static(file: str) -> str:
    """The address of a file that comes with the app."""
    return address("static", file=file)


FILTERS: Mapping[str, Callable[..., Any]] = MappingProxyType(
    {
        "address": address,
        "static": static,
        "day": day,
        "moment": moment,
        "counted": counted,
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
