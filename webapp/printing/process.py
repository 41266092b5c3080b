"""A worker process as the server sees it: started, given one order, listened to, ended."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from webapp.printing.bounds import Bounds
from webapp.printing.child import Child
from webapp.printing.orders import AnyOrder

DIED = "The print stopped before it was finished; please print again."


class Stopped(Exception):
    """A print that came to nothing, in one sentence."""


class WorkerProcess:
    """Loads what it needs, rehearses a print while no order comes, and waits for its one order."""

    def __init__(self) -> None:
        self.child = Child("webapp.printing.worker")

    @property
    def alive(self) -> bool:
        return self.child.alive

    def print(self, order: AnyOrder, path: Path, step: Callable[[str], None]) -> int:
        """Prints the order into a file and gives its number of pages. Raises Stopped."""
        self.child.send((order, path))
        with Bounds(self.child) as bounds:
            for line in self.child.output:
                word, _, rest = line.decode().strip().partition(" ")
                if word == "step":
                    step(rest)
                elif word == "done":
                    return int(rest)
                elif word == "failed":
                    raise Stopped(rest)
        raise Stopped(bounds.passed or DIED)

    def kill(self) -> None:
        """Ends the process, whatever it does, and waits until it is gone."""
        self.child.end()
