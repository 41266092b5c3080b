"""A worker process as the server sees it: started, given one order, listened to, ended."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from webapp.paths import ROOT
from webapp.printing.messages import send
from webapp.printing.orders import AnyOrder

DIED = "The print stopped before it was finished; please print again."


class Stopped(Exception):
    """A print that came to nothing, in one sentence."""


class WorkerProcess:
    """Loads what it needs at once, then waits for its one order."""

    def __init__(self) -> None:
        self._process = subprocess.Popen(
            (sys.executable, "-m", "webapp.printing.worker"), cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE)

    @property
    def alive(self) -> bool:
        return self._process.poll() is None

    def print(self, order: AnyOrder, path: Path, step: Callable[[str], None]) -> int:
        """Prints the order into a file and gives its number of pages. Raises Stopped."""
        self._send((order, path))
        assert self._process.stdout is not None
        for line in self._process.stdout:
            word, _, rest = line.decode().strip().partition(" ")
            if word == "step":
                step(rest)
            elif word == "done":
                return int(rest)
            elif word == "failed":
                raise Stopped(rest)
        raise Stopped(DIED)

    def kill(self) -> None:
        """Ends the process, whatever it does, and waits until it is gone."""
        self._process.kill()
        self._process.wait()
        for pipe in (self._process.stdin, self._process.stdout):
            if pipe is not None:
                with suppress(OSError):
                    pipe.close()

    def _send(self, message: object) -> None:
        assert self._process.stdin is not None
        with suppress(OSError):  # a worker that died says nothing, and is heard saying so
            send(self._process.stdin, message)
