"""Servers to be killed that share one start: a process that has loaded the program splits one off when asked to."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO

from tests.server.servers import PATIENCE, free_port
from webapp.paths import ROOT


class Nursery:
    """The process that has loaded the program."""

    def __init__(self) -> None:
        self._process = subprocess.Popen(
            (sys.executable, "-m", "tests.server.nursery"),
            cwd=ROOT,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            encoding="utf-8",
        )

    @contextmanager
    def serving(self, data: Path) -> Iterator[SplitServer]:
        """A new server on that data folder, gone at the end whatever happens."""
        port = free_port()
        server = SplitServer(self, self.ask("serve", str(data), port), f"http://127.0.0.1:{port}/")
        try:
            yield server
        finally:
            server.kill()

    def ask(self, *order: object) -> int:
        assert self._process.stdin is not None and self._process.stdout is not None
        print(json.dumps(order), file=self._process.stdin, flush=True)
        return int(self._process.stdout.readline())

    def close(self) -> None:
        self._process.communicate(timeout=PATIENCE)


class SplitServer:
    """A server that takes connections."""

    def __init__(self, nursery: Nursery, pid: int, address: str) -> None:
        self.address = address
        self._nursery, self._pid, self._runs = nursery, pid, True

    def kill(self) -> None:
        """Ends it at once, and waits until it is gone."""
        if self._runs:
            os.kill(self._pid, signal.SIGKILL)
            self._nursery.ask("wait", self._pid)
        self._runs = False


def main() -> None:
    """Answers each order with a number: of the process that was split off, or that is gone."""
    import webapp.commands.serve
    import webapp.routes.all  # noqa: F401 - both loaded before any server is split off

    heard: dict[int, IO[str]] = {}
    for line in sys.stdin:
        match json.loads(line):
            case ["serve", data, port]:
                pid, said = _split_off(data, port)
                heard[pid] = said
            case ["wait", pid]:
                os.waitpid(pid, 0)
                heard.pop(pid).close()
        print(pid, flush=True)


def _split_off(data: str, port: int) -> tuple[int, IO[str]]:
    """The number of a server's process that takes connections, and what it says."""
    reading, writing = os.pipe()
    pid = os.fork()
    if pid == 0:
        os.dup2(writing, 1)
        _serve(data, port)
    os.close(writing)
    said = os.fdopen(reading, encoding="utf-8")
    said.readline()
    return pid, said


def _serve(data: str, port: int) -> None:
    from webapp.commands import main as command

    os.dup2(os.open(os.devnull, os.O_RDONLY), 0)
    os._exit(command(["serve", "--no-browser", "--data", data, "--port", str(port)]))


if __name__ == "__main__":
    main()
