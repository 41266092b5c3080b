"""The three patterns that a new library begins with, by the invented maker Lantern Street Beads."""

from __future__ import annotations

from engine.pattern.pattern import Pattern
from webapp.exchange import pattern_file
from webapp.paths import DEMO

FILES = ("meadow-path", "harbour-lights", "twisted-ribbon")


def examples() -> tuple[Pattern, ...]:
    """The demo patterns; the last is made last and so stands first in the library."""
    return tuple(pattern_file.read((DEMO / f"{name}{pattern_file.SUFFIX}").read_bytes()) for name in FILES)
