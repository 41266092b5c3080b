"""Booklets: warm time, peak memory and size, against the same with every figure as inline SVG; and pages beside prints."""

from __future__ import annotations

import json
import re
import subprocess
import sys
import tempfile
from contextlib import closing
from io import BytesIO
from pathlib import Path
from resource import RUSAGE_SELF, getrusage
from time import sleep

import httpx
from pypdf import PdfReader

from engine.booklet.choices import Choices
from engine.booklet.compose import Booklet, compose
from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.stringing import string
from engine.counting.workshop import Workshop
from engine.drawing.charts import chart
from engine.drawing.svg import to_svg
from tests.bench.charts import pattern
from tests.bench.figures import Figures, ms, p95, taken_ms
from tests.bench.inline import inline
from tests.server.servers import serving
from webapp.paths import ROOT
from webapp.printing.figures import Figure
from webapp.printing.html import SCHEME, page
from webapp.printing.orders import Order, print_booklet, rehearse
from webapp.printing.painter import Painter
from webapp.printing.pictures import drawn
from webapp.storage import patterns
from webapp.storage.library import open_library

CHARTS = {
    1_500: (20, 4, "1 s"),
    8_000: (24, 4, "3 s"),
    40_000: (40, 5, "12 s, 500 MB"),
}  # around, length of a run, budget
PAGES = (
    "/",
    "/patterns/1",
    "/patterns/1/stringing?length=45+cm",
    "/patterns/1/materials?length=45+cm",
    "/patterns/1/edit",
    "/patterns/1/booklet",
    "/patterns/1/history",
    "/answers?pattern=1&length=45+cm",
    "/settings",
)


def figures() -> Figures:
    """Each booklet in a process of its own, made ready as a worker is; the best of three, taken by turns."""
    for beads, (around, _, budget) in CHARTS.items():
        turns = [(in_process(beads, "own"), in_process(beads, "svg")) for _ in range(3)]
        own, rival = (min(of, key=lambda taken: taken["seconds"]) for of in zip(*turns, strict=True))
        yield (
            f"booklet of {beads:,} beads, {around} around, {own['runs']:,} runs, {own['pages']} pages",
            f"{own['seconds']:.2f} s, {own['peak']:,.0f} MB, {own['kb']:,.0f} kB",
            budget,
            f"{rival['seconds'] / own['seconds']:.1f} × inline SVG (goal 4)",
        )
        yield (
            "  the same with all figures as inline SVG",
            f"{rival['seconds']:.2f} s, {rival['peak']:,.0f} MB, {rival['kb']:,.0f} kB",
        )


def figures_beside() -> Figures:
    """Any page while two large booklets print."""
    with tempfile.TemporaryDirectory() as folder:
        with closing(open_library(Path(folder))) as database:
            patterns.create(database, pattern(1_500))
            large = [patterns.create(database, pattern(40_000, 40, 5, seed)).id for seed in (1, 2)]
        with serving(Path(folder)) as server, httpx.Client(base_url=server.address, timeout=60) as client:
            alone = [taken_ms(lambda address=address: client.get(address)) for _ in range(20) for address in PAGES]
            jobs = [client.post(f"/patterns/{number}/booklet").headers["location"] for number in large]
            beside = while_printing(client, jobs)
            yield "any page, p95, nothing printing", ms(p95(alone)), ""
            yield "any page, p95, two booklets printing", ms(p95(beside)), "100 ms"


def while_printing(client: httpx.Client, jobs: list[str]) -> list[float]:
    taken: list[float] = []
    while any(re.search('data-state="(waiting|running)"', client.get(job).text) for job in jobs):
        for address in PAGES:
            taken.append(taken_ms(lambda address=address: client.get(address)))
            sleep(0.05)
    return taken


def in_process(beads: int, way: str) -> dict[str, float]:
    """What a process of its own measured."""
    done = subprocess.run(
        [sys.executable, "-m", "tests.bench.booklets", str(beads), way], cwd=ROOT, check=True, stdout=subprocess.PIPE
    )
    return json.loads(done.stdout)


def measured(beads: int, way: str) -> dict[str, float]:
    around, run, _ = CHARTS[beads]
    order = Order(pattern(beads, around, run), Choices(plan="whole"), Workshop())
    made: list[bytes] = []
    with closing(Painter()) as painter:
        rehearse(painter.begin)
        taken = taken_ms(
            lambda: made.append(print_booklet(order, begin=painter.begin) if way == "own" else with_svg(order))
        )
    whole = string(size(order.pattern, Question()), "whole")
    return {
        "seconds": taken / 1000,
        "peak": peak_mb(),
        "kb": len(made[0]) / 1000,
        "pages": len(PdfReader(BytesIO(made[0])).pages),
        "runs": len(whole.threads[0].runs),
    }


def peak_mb() -> float:
    """The most memory that this process has held, in MB.

    Linux counts what a process held before it became this program into the usual figure: there, that is the bench itself.
    """
    status = Path("/proc/self/status")
    if status.exists():
        return int(re.search(r"VmHWM:\s*(\d+) kB", status.read_text())[1]) * 1024 / 1_000_000
    return getrusage(RUSAGE_SELF).ru_maxrss / (1_000_000 if sys.platform == "darwin" else 1_000)


def with_svg(order: Order) -> bytes:
    """The same booklet with all its figures as SVG: inline, and as pictures where they lie behind text."""
    from webapp.printing.pdf import write_pdf

    booklet = compose(order.pattern, order.choices, order.workshop)
    text, images = page(booklet, drawn(order.pattern, booklet.pictures))
    svg = {key: inline(image) for key, image in images.items() if isinstance(image, Figure)}
    svg |= {SCHEME + key: sheet for key, sheet in svg_sheets(booklet).items()}
    text = re.sub(r'<img [^>]*?src="(booklet:[^"]+)"[^>]*>', lambda found: svg.get(found[1], found[0]), text)
    return write_pdf(text, images | {key: drawing.encode() for key, drawing in svg.items()}).pdf


def svg_sheets(booklet: Booklet) -> dict[str, str]:
    """Every sheet of the chart by its name, as large as in the booklet itself."""
    sheets = {
        sheet: to_svg(chart(stretch.pattern, sheet.first, sheet.last, sheet.bead))
        for stretch in booklet.charts.stretches
        for sheet in stretch.sheets
    }
    return {
        sheet.figure: re.sub(
            'width="[^"]*" height="[^"]*"', f'width="{sheet.width}mm" height="{sheet.height}mm"', svg, count=1
        )
        for sheet, svg in sheets.items()
    }


if __name__ == "__main__":
    print(json.dumps(measured(int(sys.argv[1]), sys.argv[2])))
