"""From the command to the first page, where everything is set up already; and to the first booklet."""

from __future__ import annotations

import re
import tempfile
from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import sleep

import httpx

from tests.bench.figures import Figures, ms, taken_ms
from tests.server.servers import serving
from webapp.demo import examples
from webapp.pages.addresses import address

TIMES = 5
CHOOSING_S = 15  # on the booklet's page, before Print is pressed


def figures() -> Figures:
    """The middle one of five starts on a library that is there."""
    with tempfile.TemporaryDirectory() as folder:
        yield "a first start, which makes the library", ms(started(Path(folder))), ""
        yield (
            f"start to first page, the middle of {TIMES}",
            ms(median(started(Path(folder)) for _ in range(TIMES))),
            "2 s",
        )
        beads = len(examples()[0].main.beads)
        for chosen_s, words in ((0, "Print pressed at once"), (CHOOSING_S, f"{CHOOSING_S} s on the booklet's page")):
            first, second = printed_after(Path(folder), chosen_s)
            yield f"first booklet after a start, {beads:,} beads, {words}", ms(first), "2 s" if chosen_s else ""
        yield "  the next booklet", ms(second), ""


def started(folder: Path) -> float:
    def start() -> None:
        with serving(folder) as server:
            httpx.get(server.address).raise_for_status()

    return taken_ms(start)


def printed_after(folder: Path, chosen_s: float) -> tuple[float, float]:
    """From Print to the finished booklet, for the first and the second print of a server, in ms."""
    with serving(folder) as server, httpx.Client(base_url=server.address, timeout=60) as client:
        client.get(address("library"))
        client.get(address("booklet", id=1))
        sleep(chosen_s)
        first = taken_ms(_printing(client))
        sleep(CHOOSING_S)
        return first, taken_ms(_printing(client))


def _printing(client: httpx.Client) -> Callable[[], None]:
    def printing() -> None:
        job = client.post(address("booklet", id=1)).headers["location"]
        while re.search('data-state="(waiting|running)"', client.get(job).text):
            sleep(0.02)

    return printing
