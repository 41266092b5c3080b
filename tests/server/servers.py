"""Servers as processes of their own, started as a person starts them."""

from __future__ import annotations

import os
import re
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from webapp.paths import ROOT

COMMAND = (sys.executable, "-c", "import sys; from webapp.commands import main; sys.exit(main(sys.argv[1:]))")
PATIENCE = 60


class Server:
    """A started server; `address` is known when it answers."""

    def __init__(self, data: Path, *options: str) -> None:
        self.process = subprocess.Popen(
            [*COMMAND, "serve", "--no-browser", "--data", str(data), *options],
            cwd=ROOT,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            encoding="utf-8",
            env={**os.environ, "PYTHONIOENCODING": "utf-8"},
        )
        self.said = self.process.stdout.readline()
        found = re.search(r"http://\S+", self.said)
        assert found, self.process.communicate()[1]
        self.address = found.group()
        self.said += self.process.stdout.readline()

    @property
    def port(self) -> int:
        return int(self.address.rstrip("/").rpartition(":")[2])

    def stop(self, how: int = signal.SIGINT) -> tuple[int, str, str]:
        """Exit status, and all that it said on stdout and stderr."""
        self.process.send_signal(how)
        out, error = self.process.communicate(timeout=PATIENCE)
        return self.process.returncode, self.said + out, error

    def kill(self) -> None:
        self.process.kill()
        self.process.communicate(timeout=PATIENCE)


@contextmanager
def serving(data: Path, *options: str) -> Iterator[Server]:
    """A server on that data folder, gone at the end whatever happens."""
    server = Server(data, *(options or ("--port", str(free_port()))))
    try:
        yield server
    finally:
        if server.process.poll() is None:
            server.kill()


def free_port() -> int:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return free.getsockname()[1]
