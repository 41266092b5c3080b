"""How figures grow: lists and booklets with the beads of a pattern, pages with the patterns of a library."""

from __future__ import annotations

import tempfile
from pathlib import Path
from random import Random

import httpx

from engine.counting.materials import materials
from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.stringing import string
from tests.bench.charts import PLACES, pattern
from tests.bench.figures import Figures, ms, p95, taken_ms
from tests.bench.library import fill
from tests.server.servers import serving
from webapp.pages.addresses import address

BEADS = (1_000, 10_000, 100_000)
PATTERNS = (100, 1_000, 10_000, 100_000)
ASKED = 60


def figures() -> Figures:
    """Every size in one line."""
    lists, bills = zip(*(_counted(beads) for beads in BEADS), strict=True)
    yield f"stringing list of {_in_words(BEADS)} beads", " · ".join(map(ms, lists)), "20 ms at 40,000"
    yield f"bill of {_in_words(BEADS)} beads", " · ".join(map(ms, bills)), "5 ms for ten"
    pages = zip(*(_pages(number) for number in PATTERNS), strict=True)
    for (what, budget), taken in zip(ASKING, pages, strict=True):
        yield f"{what}, p95, {_in_words(PATTERNS)} patterns", " · ".join(map(ms, taken)), budget


ASKING = (
    ("library page, the newest", "40 ms at 10,000"),
    ("library search of two words", "40 ms at 10,000"),
    ("library by colour nearness", "40 ms at 10,000"),
    ("an answer at the desk", "30 ms at 10,000"),
)


def _in_words(numbers: tuple[int, ...]) -> str:
    return " · ".join(f"{number:,}" for number in numbers)


def _counted(beads: int) -> tuple[float, float]:
    fresh = [pattern(beads, 30, 4, seed) for seed in range(5)]
    sized = [size(one, Question()) for one in fresh]
    listed = min(taken_ms(lambda one=one: string(one)) for one in sized)
    return listed, min(taken_ms(lambda one=one: materials(one, string(one))) for one in sized)


def _pages(patterns: int) -> list[float]:
    """The 95th percentile of every page of ASKING with so many patterns."""
    chance = Random(patterns)
    with tempfile.TemporaryDirectory() as folder:
        fill(Path(folder), patterns)
        with serving(Path(folder)) as server, httpx.Client(base_url=server.address, timeout=60) as client:
            ways = (
                lambda: address("library"),
                lambda: address("library", search=f"{chance.choice(PLACES)} trial {chance.randint(0, 96)}"),
                lambda: address("library", by_colour="yes", near=f"#{chance.randrange(1 << 24):06x}"),
                lambda: address("answers", pattern=chance.randint(1, patterns), length=f"{chance.randint(20, 90)} cm"),
            )
            _asked(client, address("settings"))  # answered when all is loaded
            return [p95([_asked(client, way()) for _ in range(ASKED)][5:]) for way in ways]


def _asked(client: httpx.Client, own: str) -> float:
    return taken_ms(lambda: client.get(own).raise_for_status())
