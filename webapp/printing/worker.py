"""The process that prints one booklet: reads the order from its input, says every step, and leaves the PDF in a file.

    in    a message (webapp/printing/process.py): order, path of the PDF
    out   a line each: "ready", "step NAME", and at last "done PAGES" or "failed SENTENCE"

It ends when its input is closed, so that a server that is killed leaves no print behind.
"""

from __future__ import annotations

import os
import pickle
import signal
import sys
import traceback
from pathlib import Path
from select import select
from threading import Thread
from typing import BinaryIO, TextIO

from engine.errors import EngineError
from webapp.printing.folders import proof_path
from webapp.printing.orders import AnyOrder, rehearse, warm
from webapp.printing.painter import Painter
from webapp.printing.pictures import Begin
from webapp.printing.process import received

BEHIND = 5
UNFORESEEN = "The booklet could not be printed; this should not have happened ({})."


def main() -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    inbox, out = sys.stdin.buffer, _own_output()
    _stand_back()
    painter = Painter()
    try:
        warm()
        if not _asked():
            rehearse(painter.begin)
        _say(out, "ready")
        order, path = _order(inbox)
        Thread(target=_end_with_input, daemon=True).start()
        _print(order, path, out, painter.begin)
    except EngineError as error:
        _say(out, f"failed {error}")
    except Exception as error:
        traceback.print_exc()
        _say(out, f"failed {UNFORESEEN.format(type(error).__name__)}")
    os._exit(0)


def _stand_back() -> None:
    """Pages that are being looked at come before pages that are being printed; the painter inherits this."""
    if hasattr(os, "nice"):
        os.nice(BEHIND)


def _own_output() -> TextIO:
    """The way back to the server; what libraries print to the usual output goes to the error stream instead."""
    out = os.fdopen(os.dup(1), "w", encoding="utf-8")
    os.dup2(2, 1)
    return out


def _asked() -> bool:
    """Whether an order has come already; where that cannot be told, as on Windows, it is taken to have."""
    return os.name == "nt" or bool(select([0], [], [], 0)[0])


def _order(inbox: BinaryIO) -> tuple[AnyOrder, Path]:
    message = received(inbox)
    if message is None:
        os._exit(0)
    order, path = message
    return order, path


def _end_with_input() -> None:
    """The server writes nothing more; when it closes the input, or dies, there is no one left to print for."""
    os.read(0, 1)
    os._exit(1)


def _print(order: AnyOrder, path: Path, out: TextIO, begin: Begin) -> None:
    def step(name: str) -> None:
        _say(out, f"step {name}")

    made = order.carry_out(step, begin)
    path.write_bytes(made.pdf)
    proof = order.proof(made, step)
    if proof is not None:
        proof_path(path).write_bytes(pickle.dumps(proof))
    _say(out, f"done {made.pages}")


def _say(out: TextIO, line: str) -> None:
    out.write(" ".join(line.split()) + "\n")
    out.flush()


if __name__ == "__main__":
    main()
