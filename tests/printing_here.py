"""A stand-in for the process that prints: the tests' own process, which loads once what every print needs."""

from __future__ import annotations

import pickle
from collections.abc import Callable
from pathlib import Path
from threading import Lock

from engine.errors import EngineError
from webapp.printing.folders import proof_path
from webapp.printing.orders import AnyOrder
from webapp.printing.process import Stopped

ONE_AT_A_TIME = Lock()


class PrintsHere:
    """Prints as webapp.printing.process.WorkerProcess does, to the same files and with the same steps."""

    alive = True

    def print(self, order: AnyOrder, path: Path, step: Callable[[str], None]) -> int:
        with ONE_AT_A_TIME:
            try:
                made = order.carry_out(step)
            except EngineError as problem:
                raise Stopped(str(problem)) from problem
            path.write_bytes(made.pdf)
            proof = order.proof(made, step)
            if proof is not None:
                proof_path(path).write_bytes(pickle.dumps(proof))
            return made.pages

    def kill(self) -> None:
        """There is no process to end."""
