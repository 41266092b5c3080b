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
    such a code, with its name. What the table has no column for stays as it is.
    """
    known = {identity(bead): bead for bead in reversed([*cabinet.values()])}
    seen: dict[object, tuple[int, Bead]] = {}
    new, changed, same, clashes = [], [], 0, []
    for row in rows:
        was = cabinet.get(row.bead.key) or known.get(identity(row.bead))
        now = replace(was, **{name: getattr(row.bead, name) for name in row.said}) if was else row.bead
        number, before = seen.setdefault(was.key if was else identity(row.bead), (row.number, now))
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


def identity(bead: Bead) -> tuple[str, ...]:
    """What tells a bead from others where it has no key."""
    sold = (bead.kind.casefold(), bead.supplier.casefold())
    return (*sold, "code", bead.maker_code.casefold()) if bead.maker_code else (*sold, "name", bead.name.casefold())
