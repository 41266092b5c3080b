"""From the command to the first page, where everything is set up already."""

from __future__ import annotations

import tempfile
from pathlib import Path
from statistics import median

import httpx

from tests.bench.figures import Figures, ms, taken_ms
from tests.server.servers import serving

TIMES = 5


def figures() -> Figures:
    """The middle one of five starts on a library that is there."""
    with tempfile.TemporaryDirectory() as folder:
        yield "a first start, which makes the library", ms(started(Path(folder))), ""
        yield (
            f"start to first page, the middle of {TIMES}",
            ms(median(started(Path(folder)) for _ in range(TIMES))),
            "2 s",
        )


def started(folder: Path) -> float:
    def start() -> None:
        with serving(folder) as server:
            httpx.get(server.address).raise_for_status()

    return taken_ms(start)
