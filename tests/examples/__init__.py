"""Patterns of our own that tests work with."""

from __future__ import annotations

from pathlib import Path

from engine.pattern.pattern import Pattern
from webapp.exchange import pattern_file

FOLDER = Path(__file__).parent


def example(name: str) -> Pattern:
    """The pattern of a file beside this one."""
    return pattern_file.read((FOLDER / f"{name}{pattern_file.SUFFIX}").read_bytes())


def harbour() -> Pattern:
    """12 around, 50 beads, three colours, tags and notes."""
    return example("small-harbour")
