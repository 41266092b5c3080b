"""Draws the pictures of the README: pages of the app as a browser shows them, and pages of a printed booklet."""

from __future__ import annotations

import shutil
import tempfile
from io import BytesIO
from pathlib import Path

import pypdfium2
from PIL import Image
from playwright.sync_api import Page, sync_playwright

from engine.booklet.choices import Choices
from engine.counting.questions import Question
from engine.counting.workshop import Workshop
from tests.conftest import FLAGS
from tests.server.servers import serving
from webapp.demo import examples
from webapp.pages.addresses import address
from webapp.paths import STATIC
from webapp.printing.orders import Order, print_booklet

FOLDER = STATIC / "img"
WIDE, HIGH = 1280, 800
SHOWN = {
    "library": address("library"),
    "editor": address("chart", id=2),
    "answers": address("answers", pattern=3, length="45 cm", closure="clasp"),
}
PAGES = (0, 5, 8)  # cover, chart and list of the booklet that is shown
GROUND, GAP = "#e9e1d1", 24


def main() -> int:
    taken = {name: _saved(name, picture) for name, picture in (*_of_pages(), ("booklet", _of_booklet()))}
    print(f"{len(taken)} pictures, {sum(taken.values()) / 1000:,.0f} kB, in {FOLDER.name}/.")
    return 0


def _of_pages() -> list[tuple[str, Image.Image]]:
    with (
        tempfile.TemporaryDirectory() as folder,
        serving(Path(folder) / "data") as server,
        sync_playwright() as playwright,
    ):
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=list(FLAGS))
        page = browser.new_page(base_url=server.address.rstrip("/"), viewport={"width": WIDE, "height": HIGH})
        taken = [(name, _shown(page, own)) for name, own in SHOWN.items()]
        browser.close()
    return taken


def _shown(page: Page, own: str) -> Image.Image:
    page.goto(own)
    page.wait_for_load_state("networkidle")
    if page.locator("#answer").count():
        page.locator("#answer").evaluate("answer => answer.scrollIntoView()")
    return Image.open(BytesIO(page.screenshot()))


def _of_booklet() -> Image.Image:
    """Pages of the booklet beside each other."""
    harbour = examples()[1]
    order = Order(harbour, Choices(question=Question(450.0, "clasp")), Workshop())
    printed = pypdfium2.PdfDocument(print_booklet(order))
    pages = [printed[number].render(scale=1).to_pil() for number in PAGES]
    wide = sum(page.width for page in pages) + GAP * (len(pages) + 1)
    sheet = Image.new("RGB", (wide, pages[0].height + 2 * GAP), GROUND)
    for place, page in enumerate(pages):
        sheet.paste(page, (GAP + place * (page.width + GAP), GAP))
    return sheet


def _saved(name: str, picture: Image.Image) -> int:
    """Size of the file in bytes."""
    path = FOLDER / f"readme-{name}.jpg"
    picture.convert("RGB").save(path, "JPEG", quality=82, optimize=True)
    return path.stat().st_size
