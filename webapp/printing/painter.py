"""A process that draws the shaded pictures of a booklet while the one that started it sets the pages.

    in    messages (webapp/printing/process.py): pattern, pictures wanted
    out   a message each: the JPEG bytes of every picture by its key

It ends when its input is closed. Where it dies, the pictures are drawn by whoever waits for them.
"""

from __future__ import annotations

import os
import signal
import sys
from contextlib import suppress
from functools import cache

from engine.booklet.chapters.opening import Picture
from engine.drawing.beadform import depth_pictures
from engine.pattern.pattern import Pattern
from webapp.printing.pictures import Waiting, drawn
from webapp.printing.process import Child, received, send


class Painter:
    """Loads what it needs at once, then draws for one booklet at a time."""

    def __init__(self) -> None:
        self.child = Child("webapp.printing.painter")

    def begin(self, pattern: Pattern, wanted: tuple[Picture, ...]) -> Waiting:
        """Sends the order off; what it gives waits, when it is called, until all are drawn."""
        if not wanted:
            return dict
        self.child.send((pattern, wanted))
        return cache(lambda: self._drawn() or drawn(pattern, wanted))

    def close(self) -> None:
        """Ends the process, whatever it draws."""
        self.child.end()

    def _drawn(self) -> dict[str, bytes]:
        return dict(received(self.child.output) or {})


def main() -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    inbox, out = sys.stdin.buffer, os.fdopen(os.dup(1), "wb")
    os.dup2(2, 1)  # what libraries print goes to the error stream
    depth_pictures()
    with suppress(OSError):  # no one is left who waits for the pictures
        while message := received(inbox):
            send(out, drawn(*message))
    os._exit(0)


if __name__ == "__main__":
    main()
