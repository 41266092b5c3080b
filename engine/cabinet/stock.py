"""Stock: what a piece takes of each bead, what is missing, what can be made of what there is, and what to buy."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import ceil
from typing import NamedTuple

from engine.cabinet.bead import Bead
from engine.cabinet.cost import packs_for
from engine.cabinet.money import Money
from engine.counting.kinds import Kind
from engine.counting.materials import ColourNeed, Materials
from engine.counting.purchase import grams_at_most, with_spare
from engine.counting.sizes import Size
from engine.counting.stock import Longest, longest
from engine.errors import SizeError
from engine.pattern.palette import Palette


@dataclass(frozen=True)
class Taking:
    """A bead of the cabinet that pieces take: beads, milligrams at most, and what is there and missing, in mg."""

    bead: Bead
    codes: tuple[str, ...]
    kind: Kind
    beads: int
    mg: int

    @property
    def missing_mg(self) -> int:
        return max(0, self.mg - self.bead.stock_mg)


class Alone(NamedTuple):
    """An entry of a palette that no bead of the cabinet stands behind, and the beads that are needed of it."""

    code: str
    name: str
    kind: Kind
    beads: int


@dataclass(frozen=True)
class Take:
    """What so many pieces take of the cabinet, and what stands alone."""

    pieces: int
    takings: tuple[Taking, ...]
    alone: tuple[Alone, ...]

    @property
    def enough(self) -> bool:
        """Whether all of it is in stock."""
        return not self.alone and not any(taking.missing_mg for taking in self.takings)


def take(palette: Palette, bill: Materials, cabinet: Mapping[str, Bead], pieces: int = 1, spare: float = 0.0) -> Take:
    """What so many pieces of that bill take; `cabinet` is by key, `spare` is in percent.

    Two codes that point at one bead are one taking. Milligrams are counted with the fewest beads in a gram.
    """
    needs: dict[str, list[ColourNeed]] = {}
    alone = []
    for entry, need in zip(palette, bill.colours, strict=True):
        if not need.beads:
            continue
        if entry.bead in cabinet:
            needs.setdefault(entry.bead, []).append(need)
        else:
            alone.append(Alone(need.code, need.name, need.kind, with_spare(need.beads * pieces, spare)))
    takings = tuple(_taking(cabinet[key], of, pieces, spare) for key, of in needs.items())
    return Take(pieces, takings, tuple(alone))


def _taking(bead: Bead, needs: list[ColourNeed], pieces: int, spare: float) -> Taking:
    beads = with_spare(sum(need.beads for need in needs) * pieces, spare)
    kind = needs[0].kind
    return Taking(
        bead=bead,
        codes=tuple(need.code for need in needs),
        kind=kind,
        beads=beads,
        mg=mg_of(beads, kind),
    )


def mg_of(beads: int, kind: Kind) -> int:
    """Whole milligrams that so many beads weigh at most."""
    return ceil(grams_at_most(beads, kind) * 1000)


@dataclass(frozen=True)
class Makeable:
    """What the stock makes of a pattern in a size: whole pieces, the bead that runs out first, and the longest rope.

    `longest` is None where the stock makes none.
    """

    pieces: int
    runs_out: Bead
    longest: Longest | None


def makeable(asked: Size, bill: Materials, cabinet: Mapping[str, Bead]) -> Makeable | None:
    """What the stock makes of that pattern; None where some bead of it is not of the cabinet."""
    needed = take(asked.pattern.palette, bill, cabinet)
    if needed.alone or not needed.takings:
        return None
    pieces, runs_out = min(((_held(of) // of.beads, of.bead) for of in needed.takings), key=lambda one: one[0])
    return Makeable(pieces, runs_out, _longest(asked, bill, needed))


def _held(taking: Taking) -> int:
    """Beads in stock of that bead, at least."""
    return taking.bead.beads_in(taking.bead.stock_mg, taking.kind)


def _longest(asked: Size, bill: Materials, needed: Take) -> Longest | None:
    """A bead behind two codes is shared between them as a piece shares it."""
    used = {need.code: need.beads for need in bill.colours}
    held = {code: _held(of) * used[code] // of.beads for of in needed.takings for code in of.codes}
    try:
        return longest(asked, held)
    except SizeError:
        return None


@dataclass(frozen=True)
class ToBuyLine:
    """A line of a shopping list: what is needed, what is in stock, what is missing, and packs and what they cost.

    Without a bead of the cabinet `bead` is None and nothing is in stock.
    """

    name: str
    kind: Kind
    bead: Bead | None
    wanted_for: tuple[str, ...]
    beads: int
    mg: int
    missing_mg: int
    packs: int
    cost: Money | None


def shopping_list(wanted: Iterable[tuple[str, Take]]) -> tuple[ToBuyLine, ...]:
    """What is to be bought for several patterns, each with its title; by kind and name.

    A bead of the cabinet that several take is one line; entries that stand alone are one where kind and name are equal.
    """
    lines: dict[tuple[str, ...], ToBuyLine] = {}
    for title, needed in wanted:
        for taking in needed.takings:
            _add(lines, (taking.bead.key,), _line(title, taking.bead.name, taking.kind, taking.bead, taking.beads))
        for alone in needed.alone:
            key = ("", alone.kind.name, alone.name.casefold())
            _add(lines, key, _line(title, alone.name, alone.kind, None, alone.beads))
    return tuple(sorted(lines.values(), key=lambda line: (line.kind.name, line.name.casefold())))


def _add(lines: dict[tuple[str, ...], ToBuyLine], key: tuple[str, ...], line: ToBuyLine) -> None:
    before = lines.get(key)
    if before is not None:
        titles = dict.fromkeys((*before.wanted_for, *line.wanted_for))
        line = _line("", before.name, before.kind, before.bead, before.beads + line.beads, tuple(titles))
    lines[key] = line


def _line(title: str, name: str, kind: Kind, bead: Bead | None, beads: int, titles: tuple[str, ...] = ()) -> ToBuyLine:
    mg = mg_of(beads, kind)
    held = bead.stock_mg if bead else 0
    missing = max(0, mg - held)
    short = max(0, beads - bead.beads_in(held, kind)) if bead else beads
    packs = packs_for(short, kind, bead) if bead else 0
    return ToBuyLine(
        name=name,
        kind=kind,
        bead=bead,
        wanted_for=titles or (title,),
        beads=beads,
        mg=mg,
        missing_mg=missing,
        packs=packs,
        cost=Money(packs * bead.price, bead.currency) if bead and packs and bead.price else None,
    )
