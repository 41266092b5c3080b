"""What the maker says once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from engine.counting.closures import usual_allowances
from engine.counting.rope import Swatch


@dataclass(frozen=True)
class MakerSettings:
    """What the maker says once: printed in every booklet and used in every sum. Millimetres; `spare` in percent.

    `longest_m` and `heaviest_g` are the most strung beads that can be handled on a thread; nought means any.
    `allowances` are what closures add to the rope, by their keys. Money is shown by the rules of `country` (a code, or
    empty); `rate` is the maker's own for an hour, as typed, in `currency`. `title_most` and `description_most` are the
    characters that a shop takes.
    """

    maker: str = ""
    contact: str = ""
    licence: str = ""
    units: str = "cm"
    terms: str = "us"
    paper: str = "A4"
    spare: float = 10.0
    look: str = "system"
    greeting: str = ""
    closing: str = ""
    longest_m: float = 0.0
    heaviest_g: float = 0.0
    country: str = ""
    currency: str = "EUR"
    rate: str = ""
    title_most: float = 100.0
    description_most: float = 2000.0
    allowances: Mapping[str, float] = field(default_factory=usual_allowances)


@dataclass(frozen=True)
class KeptSwatch:
    """A swatch with the number it is kept under."""

    id: int
    swatch: Swatch
