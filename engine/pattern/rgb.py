"""Colours written "#rrggbb", as numbers."""

from __future__ import annotations

from typing import NamedTuple


class Rgb(NamedTuple):
    """Red, green and blue, 0 to 255."""

    red: int
    green: int
    blue: int


def rgb(colour: str) -> Rgb:
    """The numbers of a colour "#rrggbb".

    >>> rgb("#2f7f76")
    Rgb(red=47, green=127, blue=118)
    """
    return Rgb(*(int(colour[at : at + 2], 16) for at in (1, 3, 5)))
