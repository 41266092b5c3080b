"""Prints of booklets, each in a process of its own."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from engine.booklet.choices import Choices
from engine.counting.sizes import Workshop
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from webapp.records import PrintJob


class PrintError(EngineError):
    """A booklet that could not be printed."""

    code = "print"


@dataclass(frozen=True)
class Order:
    """What is to be printed."""

    pattern: Pattern
    choices: Choices
    workshop: Workshop


def print_booklet(order: Order, step: Callable[[str], None]) -> bytes:
    """The PDF of that booklet."""
    raise PrintError("Printing is not there yet.")


class Jobs:
    """The prints of this server."""

    def of(self, pattern_id: int) -> tuple[PrintJob, ...]:
        return ()

    def find(self, job_id: str) -> PrintJob | None:
        return None

    def close(self) -> None:
        pass
