"""The chart editor in Chromium with software graphics: frames, from press to pixels, memory, against bead by bead."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from tests.bench.charts import pattern
from tests.bench.figures import Figures, ms, times
from tests.conftest import FLAGS
from tests.server.servers import serving
from webapp.exchange import pattern_file
from webapp.pages.addresses import address

AROUND, ROUNDS, PRESSES = 40, 1_000, 40
FRAMES = "frames a second, and work at one, 95th percentile"
SCRIPT = (Path(__file__).parent / "chart.js").read_text(encoding="utf-8")


def figures() -> Figures:
    """One chart, panned, zoomed, turned, painted and drawn anew; and the largest there may be, opened."""
    with (
        tempfile.TemporaryDirectory() as folder,
        serving(Path(folder) / "data") as server,
        sync_playwright() as playwright,
    ):
        browser = playwright.chromium.launch(
            executable_path=shutil.which("chromium"), args=[*FLAGS, "--enable-precise-memory-info"]
        )
        page = browser.new_page(base_url=server.address.rstrip("/"), viewport={"width": 1440, "height": 900})
        page.route("**/bench/chart.js", lambda route: route.fulfill(body=SCRIPT, content_type="text/javascript"))
        yield from _figures(page)
        browser.close()


def _figures(page: Page) -> Figures:
    what = f"{AROUND} around × {ROUNDS:,} rounds"
    _open(page, AROUND * ROUNDS)
    for name, budget in (("pan", "60, 16.7 ms"), ("zoom", "60, 16.7 ms"), ("turn", "30, 33 ms")):
        frame = page.evaluate("async name => (await import('/bench/chart.js')).frames(name)", name)
        yield f"{what}, {name}: {FRAMES}", f"{frame['second']:.1f}, {ms(frame['p95'])}", budget
    waited, pixels = _presses(page)
    yield f"{what}, press until it is handled (waits for its frame)", ms(waited), ""
    yield f"{what}, press until the bead is drawn", ms(pixels), "one frame on"
    drawn = page.evaluate("async () => (await import('/bench/chart.js')).redrawing()")
    yield f"{what}, all in sight drawn anew", ms(drawn["map"]), "", times(drawn["map"], drawn["single"], "bead by bead")
    yield f"{what}, JS heap", f"{page.evaluate('performance.memory.usedJSHeapSize') / 1e6:.0f} MB", "100 MB"
    yield _ring(page)
    yield "100,000 beads, until they can be drawn on", ms(_open(page, 100_000)), ""
    _open(page, 900, around=12)
    yield _ring(page)


def _open(page: Page, beads: int, around: int = AROUND) -> float:
    """Makes a chart, opens it, and gives the ms until it is ready."""
    document = pattern_file.to_document(pattern(beads, around, 7))
    made = page.request.post("/api/patterns", data=document).json()
    page.goto(address("chart", id=made["id"]))
    page.wait_for_selector("[data-draw][data-ready]")
    return page.evaluate("performance.now()")


def _ring(page: Page) -> tuple[str, str, str]:
    """The open chart closed to a ring and turned, and whether software had to draw it."""
    ring = page.evaluate("async () => (await import('/bench/chart.js')).ring()")
    frame = page.evaluate("async () => (await import('/bench/chart.js')).frames('ring', 60)")
    software = ", drawn without a graphics card" if "SwiftShader" in ring["renderer"] else ""
    return (
        f"a ring of {ring['beads']} turned{software}: {FRAMES}",
        f"{frame['second']:.1f}, {ms(frame['p95'])}",
        "60, 16.7 ms",
    )


def _presses(page: Page) -> tuple[float, float]:
    page.evaluate("async () => { globalThis.presses = (await import('/bench/chart.js')).listen(); }")
    box = page.locator("[data-chart]").bounding_box()
    for i in range(PRESSES):
        page.mouse.click(box["x"] + 50 + i * 29, box["y"] + 30 + i * 53 % (box["height"] - 60))
        page.wait_for_timeout(60)
    presses = page.evaluate("presses")
    return tuple(sorted(press[name] for press in presses)[len(presses) // 2] for name in ("waited", "pixels"))
