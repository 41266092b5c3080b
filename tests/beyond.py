"""Whom a browser asks beyond this computer: a proxy stands there, which notes it and lets nobody through."""

from __future__ import annotations

import re
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from socketserver import StreamRequestHandler, ThreadingTCPServer

REFUSAL = b"HTTP/1.1 502 Bad Gateway\r\nContent-Length: 0\r\nConnection: close\r\n\r\n"
LONGEST_LINE = 65_536
# what Chromium asks of its maker by itself, for no page
ITS_OWN = re.compile(r"[A-Z]+ (http://)?[\w.-]+\.(google|googleapis|gstatic|gvt1)\.com[:/]")


class Beyond(ThreadingTCPServer):
    """A proxy for HTTP. A browser asks it for everything but what is on this computer."""

    daemon_threads = True

    def __init__(self) -> None:
        super().__init__(("127.0.0.1", 0), _Refuse)
        self.asked: list[str] = []  # the first lines of requests, such as "GET http://beads.example/ HTTP/1.1"

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.server_address[1]}"


class _Refuse(StreamRequestHandler):
    server: Beyond

    def handle(self) -> None:
        line = self.rfile.readline(LONGEST_LINE).decode("latin-1").strip()
        if line and not ITS_OWN.match(line):
            self.server.asked.append(line)
        self.wfile.write(REFUSAL)


@contextmanager
def standing() -> Iterator[Beyond]:
    """One that answers until the end."""
    with Beyond() as beyond:
        thread = threading.Thread(target=beyond.serve_forever, args=(0.05,), daemon=True)
        thread.start()
        yield beyond
        beyond.shutdown()
        thread.join()
