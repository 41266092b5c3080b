"""A cabinet of 5,000 beads: its page, searches, the nearest colours; and codes given out anew."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from pathlib import Path
from random import Random

import httpx

from engine.cabinet.bead import Bead
from engine.cabinet.colourways import matched
from engine.cabinet.nearness import nearest, nearest_apart
from engine.counting.kinds import KINDS
from engine.drawing.telling_apart import told_apart
from engine.pattern.palette import FINISHES, Entry, Palette
from engine.pattern.pattern import Pattern
from tests.bench.figures import Figures, best_ms, ms, p95, taken_ms
from tests.server.servers import serving
from webapp.exchange.bead_table import read_beads, write_beads
from webapp.storage import beads, patterns
from webapp.storage.library import open_library

BEADS, ASKED = 5_000, 200
WORDS = ("sea", "night", "harbour", "plum", "moss", "ivory", "lamp", "slate", "rose", "ink")


def figures() -> Figures:
    """Engine calls as the quickest of several; pages as the 95th percentile of 200, as the browser waits for them."""
    cabinet = many(BEADS)
    others = [f"#{number * 4:02x}{255 - number * 3:02x}80" for number in range(63)]
    yield f"nearest colours among {BEADS:,} beads", ms(best_ms(lambda: nearest("#2f7f76", cabinet, 40))), "50 ms"
    yield (
        "nearest that 63 others are not mistaken for",
        ms(best_ms(lambda: nearest_apart("#2f7f76", cabinet, others), 3)),
        "",
    )
    palette = Palette(tuple(Entry(code, code, others[n * 7]) for n, code in enumerate("ABCDEFGH")))
    yield "a colourway of eight from stock", ms(best_ms(lambda: matched(palette, cabinet, range(8), {}), 5)), ""
    table = write_beads(cabinet)
    yield "the whole table read", ms(best_ms(lambda: read_beads(table, KINDS, "EUR"), 5)), ""
    yield "64 codes and symbols of 40,000 beads given out anew", ms(taken_ms(lambda: told_apart(crowded()))), ""
    yield from _pages(cabinet)


def many(number: int) -> list[Bead]:
    """Beads of every hue, kind and finish, half of them in stock."""
    chance = Random(5)
    return [
        Bead(
            name=f"{chance.choice(WORDS).capitalize()} {place}",
            colour=f"#{chance.randrange(1 << 24):06x}",
            kind=chance.choice(list(KINDS)),
            finish=chance.choice(FINISHES),
            maker_code=f"PN-{place}",
            supplier="Pier Nine Supplies",
            pack_mg=20_000,
            price=350,
            currency="EUR",
            stock_mg=chance.choice((0, 12_500)),
            key=f"k{place}",
        )
        for place in range(number)
    ]


def crowded() -> Pattern:
    """A chart in which 64 beads stand anyhow."""
    chance = Random(6)
    codes = [a + b for a in "ABCDEFGH" for b in "ABCDEFGH"]
    palette = Palette(tuple(Entry(code, code, f"#{chance.randrange(1 << 24):06x}") for code in codes))
    return Pattern("Crowded", 20, palette, bytes(chance.randrange(64) for _ in range(40_000)))


def _pages(cabinet: list[Bead]) -> Figures:
    chance = Random(7)
    with tempfile.TemporaryDirectory() as folder:
        with closing(open_library(Path(folder))) as made:
            beads.save_all(made, (), cabinet)
            palette = Palette(tuple(cabinet[n].entry(code) for n, code in enumerate("ABCDEF")))
            patterns.create(made, replace(crowded(), palette=palette, chart=bytes(n % 6 for n in range(1500))))
        with serving(Path(folder)) as server, httpx.Client(base_url=server.address) as client:
            for what, address, budget in (
                ("the page of the cabinet", lambda: f"/beads?page={chance.randint(1, 80)}", "100 ms"),
                ("a search of two words", lambda: f"/beads?search={chance.choice(WORDS)}+pier", "100 ms"),
                (
                    "beads near a colour",
                    lambda: f"/beads?by_colour=yes&near=%23{chance.randrange(1 << 24):06x}",
                    "100 ms",
                ),
                ("beads by name, in stock", lambda: "/beads?sort=name&stock=in", "100 ms"),
                ("one bead", lambda: f"/beads/k{chance.randrange(BEADS)}/edit", "100 ms"),
                ("the list by the API", lambda: f"/api/beads?search={chance.choice(WORDS)}", "100 ms"),
                ("a bead to be exchanged", lambda: "/patterns/1/colourways/0/beads/A", ""),
                ("colourways with look-alikes", lambda: "/patterns/1/colourways", ""),
            ):
                yield f"{what}, p95 with {BEADS:,} beads", ms(p95(_asked(client, address))), budget


def _asked(client: httpx.Client, address: Callable[[], str]) -> list[float]:
    for _ in range(3):
        client.get(address()).raise_for_status()
    return [taken_ms(lambda: client.get(address()).raise_for_status()) for _ in range(ASKED)]
