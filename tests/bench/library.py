"""A library of 10,000 patterns: answers, its pages, a search; asked of a server in a process of its own."""

from __future__ import annotations

import tempfile
from contextlib import closing
from pathlib import Path
from random import Random

import httpx

from tests.bench.charts import PLACES, many, titles_with
from tests.bench.figures import Figures, best_ms, ms, p95, taken_ms, times
from tests.server.servers import serving
from webapp.storage import database, finding, patterns
from webapp.storage.library import open_library

PATTERNS, ASKED = 10_000, 200
AT_A_TIME = 500


def figures() -> Figures:
    """The 95th percentile of 200 requests each, as the browser waits for them."""
    with tempfile.TemporaryDirectory() as folder:
        fill(Path(folder), PATTERNS)
        yield f"patterns found by two words among {PATTERNS:,}", *found(Path(folder), "harbour ferry")
        yield "the same, a page of them", *searched(Path(folder), "harbour ferry")
        with serving(Path(folder)) as server, httpx.Client(base_url=server.address) as client:
            chance = Random(0)
            for what, address, budget in (
                (
                    "an answer by the API",
                    lambda: (
                        f"/api/answers?pattern={chance.randint(1, PATTERNS)}&length={chance.randint(20, 90)}+cm&closure=clasp"
                    ),
                    "30 ms",
                ),
                (
                    "an answer at the desk",
                    lambda: f"/answers?pattern={chance.randint(1, PATTERNS)}&length={chance.randint(20, 90)}+cm",
                    "30 ms",
                ),
                ("library page, the newest", lambda: "/", "40 ms"),
                (
                    "library page, any other",
                    lambda: (
                        f"/?page={chance.randint(2, PATTERNS // 24)}&sort={chance.choice(('changed', 'title', 'around'))}"
                    ),
                    "40 ms",
                ),
                (
                    "library search of two words",
                    lambda: f"/?search={chance.choice(PLACES)}+trial+{chance.randint(0, 96)}",
                    "40 ms",
                ),
                ("library by tag", lambda: f"/?tag=series+{chance.randint(0, 39)}", "40 ms"),
                (
                    "library narrowed by around, kind and beads",
                    lambda: f"/?around={chance.randint(6, 20)}&kind=11/0+round&beads_least=100",
                    "40 ms",
                ),
                (
                    "library by colour nearness",
                    lambda: f"/?by_colour=yes&near=%23{chance.randrange(1 << 24):06x}",
                    "40 ms",
                ),
                (
                    "library as a list, unpublished, one letter typed",
                    lambda: f"/?view=list&published=no&search={chance.choice('abcdefgh')}",
                    "40 ms",
                ),
                ("history of a pattern", lambda: f"/patterns/{chance.randint(1, PATTERNS)}/history", "40 ms"),
                ("the bin", lambda: "/bin", "40 ms"),
                ("search by the API", lambda: f"/api/patterns?search={chance.choice(PLACES)}", "40 ms"),
                ("a pattern's own page", lambda: f"/patterns/{chance.randint(1, PATTERNS)}", ""),
            ):
                yield f"{what}, p95 with {PATTERNS:,} patterns", ms(p95(asked(client, address))), budget


def found(folder: Path, search: str) -> tuple[str, str, str]:
    """How many patterns a search finds, and, with an empty budget between, how many a look at every one."""
    there = titles_with(many(PATTERNS), search.split())
    with closing(open_library(folder)) as library:
        titles = {pattern.title for pattern in finding.find(library, search, per_page=PATTERNS).patterns}
    assert titles == there, f"{search}: {sorted(titles ^ there)[:5]}"
    return f"{len(titles)}", "", f"{len(there)} by a look at every pattern"


def searched(folder: Path, search: str) -> tuple[str, str, str]:
    """How long the search takes, against a look at every pattern that lies in memory already."""
    everything, words = many(PATTERNS), search.split()
    with closing(open_library(folder)) as library:
        own = best_ms(lambda: finding.find(library, search))
    return ms(own), "", times(own, best_ms(lambda: titles_with(everything, words), 3), "a look at every pattern")


def fill(folder: Path, number: int) -> None:
    """Makes a library of that many patterns, without waiting for the disk."""
    kept = database.PRAGMAS["synchronous"]
    database.PRAGMAS["synchronous"] = "OFF"
    try:
        with closing(open_library(folder)) as made:
            wanted = many(number)
            for first in range(0, number, AT_A_TIME):
                with made.writing() as session:
                    for pattern in wanted[first : first + AT_A_TIME]:
                        patterns.put(session, pattern, made.now())
    finally:
        database.PRAGMAS["synchronous"] = kept


def asked(client: httpx.Client, address) -> list[float]:
    for _ in range(5):
        client.get(address()).raise_for_status()
    return [taken_ms(lambda: client.get(address()).raise_for_status()) for _ in range(ASKED)]
