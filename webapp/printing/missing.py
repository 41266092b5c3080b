"""What this computer lacks for printing."""

from __future__ import annotations

from webapp.records import MissingLibrary


def missing_libraries() -> MissingLibrary | None:
    """Nothing is missing."""
    return None
