"""A stand-in for the process that prints: the tests' own process, which loads once what every print needs.

Shaded pictures, which take a third of the time of a small booklet, are plain here; those of tests/booklet/test_painter.py,
of the worked examples and of the road through a browser are drawn.
"""

from __future__ import annotations

import pickle
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from threading import Lock

from PIL import Image

from engine.booklet.chapters.opening import Picture
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from webapp.printing.folders import proof_path
from webapp.printing.orders import AnyOrder
from webapp.printing.pictures import Waiting
from webapp.printing.process import Stopped

ONE_AT_A_TIME = Lock()


def plain(pattern: Pattern, wanted: tuple[Picture, ...]) -> Waiting:
    """Pictures of the sizes that are wanted, in which nothing is seen."""
    return lambda: {one.key: _grey(one.width, one.height) for one in wanted}


def _grey(width: int, height: int) -> bytes:
    written = BytesIO()
    Image.new("RGB", (width, height), "grey").save(written, "JPEG")
    return written.getvalue()


class PrintsHere:
    """Prints as webapp.printing.process.WorkerProcess does, to the same files and with the same steps."""

    alive = True

    def print(self, order: AnyOrder, path: Path, step: Callable[[str], None]) -> int:
        with ONE_AT_A_TIME:
            try:
                made = order.carry_out(step, plain)
            except EngineError as problem:
                raise Stopped(str(problem)) from problem
            path.write_bytes(made.pdf)
            proof = order.proof(made, step)
            if proof is not None:
                proof_path(path).write_bytes(pickle.dumps(proof))
            return made.pages

    def kill(self) -> None:
        """There is no process to end."""
