"""What this computer lacks for printing, and what to type."""

from __future__ import annotations

from webapp.machine import PANGO, Machine, advice, is_there
from webapp.records import MissingLibrary


def missing_libraries() -> MissingLibrary | None:
    """The libraries that cannot be opened, or None where nothing is missing."""
    machine = Machine()
    if is_there(PANGO, machine):
        return None
    return MissingLibrary((PANGO.name,), (("This computer", advice(PANGO, machine)),))
