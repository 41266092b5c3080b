"""Beads of the cabinet found by words, kind, stock and nearness of colour, in an order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from engine.cabinet.bead import Bead
from engine.cabinet.nearness import differences_from

NEAR = 12.0  # CIEDE2000 within which a bead counts as near a colour that is sought (our judgement)
STOCKS = ("in", "out")
SORTS = ("hue", "name", "kind", "stock", "near")


@dataclass(frozen=True)
class WantedBeads:
    """What the cabinet is narrowed to; whatever is empty does not narrow.

    Every word of `search` must begin a word of name, maker's code, supplier, finish or note. `stock` is one of STOCKS,
    `near` a colour "#rrggbb".
    """

    search: str = ""
    kind: str = ""
    stock: str = ""
    near: str = ""


def find_beads(beads: Sequence[Bead], wanted: WantedBeads, sort: str = "hue") -> tuple[Bead, ...]:
    """The beads that are wanted, in an order of SORTS; "near" without a colour is the order of hues.

    `beads` are given in the order of their hues, which they keep unless another is asked for.
    """
    words = [f" {word}" for word in wanted.search.casefold().split()]
    listed = [bead for bead in beads if _fits(bead, wanted) and _says(bead, words)]
    if wanted.near and listed:
        apart = differences_from(wanted.near, [bead.colour for bead in listed]).tolist()
        near = sorted(zip(apart, range(len(listed)), strict=True))
        if sort == "near":
            return tuple(listed[place] for difference, place in near if difference <= NEAR)
        listed = [bead for bead, difference in zip(listed, apart, strict=True) if difference <= NEAR]
    return _sorted(listed, sort)


def _fits(bead: Bead, wanted: WantedBeads) -> bool:
    if wanted.kind and bead.kind != wanted.kind:
        return False
    return not wanted.stock or (bead.stock_mg > 0) == (wanted.stock == "in")


def _says(bead: Bead, words: Sequence[str]) -> bool:
    if not words:
        return True
    text = _text(bead)
    return all(word in text for word in words)


def _text(bead: Bead) -> str:
    return f" {bead.name} {bead.maker_code} {bead.supplier} {bead.finish} {bead.note}".casefold()


def _sorted(beads: Sequence[Bead], sort: str) -> tuple[Bead, ...]:
    match sort:
        case "name":
            return tuple(sorted(beads, key=lambda bead: (bead.name.casefold(), bead.kind, bead.key)))
        case "kind":
            return tuple(sorted(beads, key=lambda bead: (bead.kind, bead.name.casefold(), bead.key)))
        case "stock":
            return tuple(sorted(beads, key=lambda bead: (-bead.stock_mg, bead.name.casefold(), bead.key)))
        case _:
            return tuple(beads)
