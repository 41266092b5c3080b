"""A bead as a sign on a page: its colour, and its symbol in the ink that reads on it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from engine.drawing.svg import path_data
from engine.drawing.symbols import assigned
from engine.pattern.palette import Palette, ink_on


@dataclass(frozen=True)
class Sign:
    """One bead of a palette as pages draw it."""

    code: Annotated[str, "Its code."]
    name: Annotated[str, "Its name."]
    colour: Annotated[str, "Its colour, #rrggbb."]
    ink: Annotated[str, "The ink of its symbol, #rrggbb."]
    symbol: Annotated[str, "The symbol's path on a square from −1 to 1."]


def signs(palette: Palette) -> tuple[Sign, ...]:
    """The signs of a palette, in its order."""
    return tuple(
        Sign(
            code=entry.code,
            name=entry.name,
            colour=entry.colour,
            ink=ink_on(entry.colour),
            symbol=path_data(symbol.outline),
        )
        for entry, symbol in zip(palette, assigned(palette), strict=True)
    )
