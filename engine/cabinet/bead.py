"""A bead of the cabinet: what it is, where it comes from, how it is sold, and how much of it is there."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from engine.counting.kinds import Kind
from engine.counting.stock import Pack
from engine.errors import ChoiceError, PatternError
from engine.pattern.palette import FINISHES, LONGEST_NAME, Entry, check_colour, check_key
from engine.pattern.words import check_line, check_text

LONGEST_NOTE = 2000
MOST_MG = 100_000_000
MOST_PRICE = 100_000_000
SHOWN = ("name", "colour", "finish", "kind", "maker_code")  # what a palette entry says of its bead

_CURRENCY = re.compile(r"[A-Z]{3}")


@dataclass(frozen=True)
class Bead:
    """A bead that one has, or had.

    `pack_mg` and `stock_mg` are whole milligrams; `price` is that of a pack in the smallest coin of its `currency` (a
    code of ISO 4217). Nought means that it is not known, or that none is left. `key` tells it from all others. Raises
    PatternError or ChoiceError, naming the field.
    """

    name: str
    colour: str
    kind: str = "11/0 round"
    finish: str = "opaque"
    maker_code: str = ""
    supplier: str = ""
    pack_mg: int = 0
    price: int = 0
    currency: str = ""
    stock_mg: int = 0
    note: str = ""
    key: str = ""

    def __post_init__(self) -> None:
        check_line(self.name, "name of the bead", LONGEST_NAME, "name")
        check_line(self.kind, "bead kind", LONGEST_NAME, "kind")
        check_line(self.maker_code, "maker's code", LONGEST_NAME, "maker_code", least=0)
        check_line(self.supplier, "supplier", LONGEST_NAME, "supplier", least=0)
        check_text(self.note, "note", LONGEST_NOTE, "note")
        check_colour(self.colour, "colour")
        check_key(self.key, "key")
        if self.finish not in FINISHES:
            raise ChoiceError("Finish", self.finish, FINISHES, "finish")
        _check_amounts(self)

    @property
    def pack(self) -> Pack | None:
        """How it is sold, for counting packs; None where no pack is known."""
        return Pack(self.pack_mg / 1000) if self.pack_mg else None

    def beads_in(self, mg: int, kind: Kind) -> int:
        """Beads that so many milligrams hold at least."""
        return int(Fraction(mg, 1000) * Fraction(str(kind.fewest)))

    def entry(self, code: str, symbol: str = "") -> Entry:
        """The palette entry that points at this bead."""
        return Entry(
            code=code,
            name=self.name,
            colour=self.colour,
            finish=self.finish,
            kind=self.kind,
            symbol=symbol,
            maker_code=self.maker_code,
            bead=self.key,
        )


def followed(entry: Entry, was: Bead, now: Bead) -> Entry:
    """The entry after its bead was changed: what it says as the bead did follows, what it says of its own stays."""
    same = {name: getattr(now, name) for name in SHOWN if getattr(entry, name) == getattr(was, name)}
    return replace(entry, **same)


def _check_amounts(bead: Bead) -> None:
    for name, what, most in (
        ("pack_mg", "A pack", MOST_MG),
        ("stock_mg", "The stock", MOST_MG),
        ("price", "A price", MOST_PRICE),
    ):
        if not 0 <= getattr(bead, name) <= most:
            raise PatternError(f"{what} is nought or more, and not beyond all measure.", name)
    if bead.currency and not _CURRENCY.fullmatch(bead.currency):
        raise PatternError("A currency is three letters, such as EUR.", "currency")
    if bead.price and not bead.currency:
        raise PatternError("A price needs its currency, such as EUR.", "currency")
