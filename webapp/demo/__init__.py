"""Patterns that a new library begins with, and twelve beads to look round with, of invented makers and shops."""

from __future__ import annotations

from engine.cabinet.bead import Bead
from engine.counting.kinds import KINDS
from engine.pattern.pattern import Pattern
from webapp.exchange import pattern_file
from webapp.exchange.bead_table import read_beads
from webapp.paths import DEMO

FILES = ("meadow-path", "harbour-lights", "twisted-ribbon", "evening-star")


def examples() -> tuple[Pattern, ...]:
    """The demo patterns; the last is made last and so stands first in the library."""
    return tuple(pattern_file.read((DEMO / f"{name}{pattern_file.SUFFIX}").read_bytes()) for name in FILES)


def demo_beads() -> tuple[Bead, ...]:
    """Twelve beads of the invented shop Pier Nine Supplies."""
    return tuple(row.bead for row in read_beads((DEMO / "beads.csv").read_bytes(), KINDS, "EUR").rows)
