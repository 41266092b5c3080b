"""Processes that print: started, sent pickled messages, listened to, ended."""

from __future__ import annotations

import pickle
import subprocess
import sys
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import IO, TYPE_CHECKING, Any

from webapp.paths import ROOT
from webapp.printing.bounds import Bounds

if TYPE_CHECKING:
    from webapp.printing.orders import AnyOrder

DIED = "The print stopped before it was finished; please print again."
LENGTH = 8  # bytes before a message that say how long it is


class Stopped(Exception):
    """A print that came to nothing, in one sentence."""


def send(pipe: IO[bytes], message: object) -> None:
    """Raises OSError where the other side is gone."""
    packed = pickle.dumps(message)
    pipe.write(len(packed).to_bytes(LENGTH) + packed)
    pipe.flush()


def received(pipe: IO[bytes]) -> Any:
    """The next message; None where the other side is gone or was cut short."""
    size = pipe.read(LENGTH)
    if len(size) < LENGTH:
        return None
    packed = pipe.read(int.from_bytes(size))
    return pickle.loads(packed) if len(packed) == int.from_bytes(size) else None


class Child:
    """Runs `python -m MODULE`, which should end when its input is closed."""

    def __init__(self, module: str) -> None:
        self._process = subprocess.Popen(
            (sys.executable, "-m", module), cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE
        )
        assert self._process.stdin is not None and self._process.stdout is not None
        self.input: IO[bytes] = self._process.stdin
        self.output: IO[bytes] = self._process.stdout

    @property
    def pid(self) -> int:
        return self._process.pid

    @property
    def alive(self) -> bool:
        return self._process.poll() is None

    def send(self, message: object) -> None:
        """To a process that died nothing is sent; its silence shows that it did."""
        with suppress(OSError):
            send(self.input, message)

    def kill(self) -> None:
        """Ends the process; whoever reads from it sees the end."""
        self._process.kill()

    def end(self) -> None:
        """Ends the process, whatever it does, and waits until it is gone."""
        self._process.kill()
        self._process.wait()
        for pipe in (self.input, self.output):
            with suppress(OSError):
                pipe.close()


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
