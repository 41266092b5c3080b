"""Palette entries and the beads of the cabinet: which point at one, differ from it, or could point at one."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from engine.cabinet.bead import SHOWN, Bead
from engine.cabinet.nearness import nearest
from engine.pattern.palette import Entry, Palette

SAME = 2.0  # CIEDE2000 under which an entry and a bead of the same kind are taken to be the same bead (our judgement)


def differing(entry: Entry, bead: Bead) -> tuple[str, ...]:
    """The fields in which an entry says something else than the bead that it points at."""
    return tuple(name for name in SHOWN if getattr(entry, name) != getattr(bead, name))


def as_in_cabinet(palette: Palette, cabinet: Mapping[str, Bead]) -> Palette:
    """The palette in which every entry says what its bead does; those that stand alone stay."""
    return Palette(
        tuple(
            cabinet[entry.bead].entry(entry.code, entry.symbol) if entry.bead in cabinet else entry for entry in palette
        )
    )


def linked(palette: Palette, beads: Sequence[Bead], cabinet: Mapping[str, Bead]) -> Palette:
    """The palette in which entries that stand alone point at the nearest bead of their kind that looks the same.

    Of several as near the one of the same finish, then of the same name, is taken; no bead is taken twice, and what an
    entry says stays. `beads` are those that can be pointed at, `cabinet` all by key.
    """
    taken = {entry.bead for entry in palette if entry.bead in cabinet}
    entries = []
    for entry in palette:
        found = None if entry.bead in cabinet else _same(entry, beads, taken)
        entries.append(replace(entry, bead=found.key) if found else entry)
        taken |= {found.key} if found else set()
    return Palette(tuple(entries))


def _same(entry: Entry, beads: Sequence[Bead], taken: set[str]) -> Bead | None:
    near = nearest(entry.colour, [bead for bead in beads if bead.kind == entry.kind and bead.key not in taken], 20)
    alike = [one for one in near if one.difference < SAME]
    best = min(
        alike,
        key=lambda one: (round(one.difference, 3), one.bead.finish != entry.finish, one.bead.name != entry.name),
        default=None,
    )
    return best.bead if best else None
