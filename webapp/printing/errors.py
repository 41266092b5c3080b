"""What can go wrong with a print."""

from __future__ import annotations

from engine.errors import EngineError


class PrintError(EngineError):
    """A booklet that could not be printed, in one sentence."""

    code = "print"


class PrintBusy(PrintError):
    """Too many prints are asked for at once."""

    code = "busy"
