"""A process of ours that runs one module: started, sent messages (webapp/printing/messages.py), read, ended."""

from __future__ import annotations

import subprocess
import sys
from contextlib import suppress
from typing import IO

from webapp.paths import ROOT
from webapp.printing.messages import send


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
        """To a process that died nothing is sent; it is found out by its silence."""
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
