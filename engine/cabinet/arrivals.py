"""Rows of a table beside the cabinet: which beads are new, which are changed, and which are there as they are."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace
from typing import NamedTuple

from engine.cabinet.bead import Bead

FIELDS = tuple(field.name for field in fields(Bead) if field.name != "key")


class Row(NamedTuple):
    """A row of a table by its number, its bead, and the names of the fields that the table says."""

    number: int
    bead: Bead
    said: frozenset[str]


class Changed(NamedTuple):
    """A bead that the table changes, and the fields in which it does."""

    number: int
    was: Bead
    now: Bead
    fields: tuple[str, ...]


class Clash(NamedTuple):
    """A row that is about the same bead as an earlier one and says something else."""

    number: int
    earlier: int


@dataclass(frozen=True)
class Arrivals:
    """What a table would bring. The same table again brings nothing."""

    new: tuple[Row, ...]
    changed: tuple[Changed, ...]
    same: int
    clashes: tuple[Clash, ...]


def arrivals(rows: Iterable[Row], cabinet: Mapping[str, Bead]) -> Arrivals:
    """The rows beside the beads of a cabinet by key.

    A row is about a bead of that key; else about the one of its kind and supplier with its maker's code, or, without
    such a code, with its name. What the table has no column for tells no bead from another, and stays as it is.
    """
    known = _by_code_and_name(cabinet.values())
    seen: dict[object, tuple[int, Bead]] = {}
    new, changed, same, clashes = [], [], 0, []
    for row in rows:
        was = cabinet.get(row.bead.key) or _meant(row, known)
        now = _changed(was, row) if was else row.bead
        number, before = seen.setdefault(was.key if was else _told_by(row), (row.number, now))
        if number != row.number:
            if before == now:
                same += 1
            else:
                clashes.append(Clash(row.number, number))
        elif was is None:
            new.append(row)
        elif differing := tuple(name for name in FIELDS if getattr(was, name) != getattr(now, name)):
            changed.append(Changed(row.number, was, now, differing))
        else:
            same += 1
    return Arrivals(tuple(new), tuple(changed), same, tuple(clashes))


def _meant(row: Row, known: Mapping[tuple[str, ...], list[Bead]]) -> Bead | None:
    """The bead that a row without a key is about; of several the one that is as the row says, else the first."""
    found = known.get(_sold_as(row.bead), [])
    if "maker_code" in row.said and not row.bead.maker_code:
        found = [bead for bead in found if not bead.maker_code]
    if "supplier" in row.said:
        found = [bead for bead in found if bead.supplier.casefold() == row.bead.supplier.casefold()]
    return next((bead for bead in found if _changed(bead, row) == bead), found[0] if found else None)


def _by_code_and_name(beads: Iterable[Bead]) -> dict[tuple[str, ...], list[Bead]]:
    known: dict[tuple[str, ...], list[Bead]] = {}
    for bead in beads:
        for told in {_sold_as(bead), _named(bead)}:
            known.setdefault(told, []).append(bead)
    return known


def _told_by(row: Row) -> tuple[str, ...]:
    """What tells a new bead from the others of its table."""
    return (*_sold_as(row.bead), row.bead.supplier.casefold())


def _sold_as(bead: Bead) -> tuple[str, ...]:
    if bead.maker_code:
        return (bead.kind.casefold(), "code", bead.maker_code.casefold())
    return _named(bead)


def _named(bead: Bead) -> tuple[str, ...]:
    return (bead.kind.casefold(), "name", bead.name.casefold())


def _changed(bead: Bead, row: Row) -> Bead:
    return replace(bead, **{name: getattr(row.bead, name) for name in row.said})
