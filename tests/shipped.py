"""Draws the pictures that come with the app, so that its first pages have theirs at once: python3 -m tests pictures."""

from __future__ import annotations

import re
import shutil
import tempfile
from html import unescape
from pathlib import Path

import anyio.from_thread
import httpx

from webapp.demo import FILES, examples
from webapp.pages.addresses import address
from webapp.paths import DEMO_PICTURES
from webapp.server.app import create_app
from webapp.settings import Settings

PAGES = (address("library"), address("begin"), *(address("pattern", id=number) for number, _ in enumerate(FILES, 1)))


def drawn_for(pages: tuple[str, ...], client: httpx.Client) -> int:
    """Asks for every shaded picture of those pages; how many there are."""
    sources = {
        unescape(source) for page in pages for source in re.findall(r'src="([^"]+\.webp[^"]*)"', client.get(page).text)
    }
    for source in sorted(sources):
        client.get(source).raise_for_status()
    return len(sources)


def main() -> int:
    from tests.conftest import client_of

    shutil.rmtree(DEMO_PICTURES, ignore_errors=True)
    with tempfile.TemporaryDirectory() as folder, anyio.from_thread.start_blocking_portal() as portal:
        settings = Settings(Path(folder) / "data", browser=False)
        with client_of(create_app(settings, examples()), portal) as client:
            many = drawn_for(PAGES, client)
        shutil.copytree(settings.cache, DEMO_PICTURES)
    weight = sum(file.stat().st_size for file in DEMO_PICTURES.iterdir())
    print(f"{many} pictures, {weight / 1000:,.0f} kB, in {DEMO_PICTURES.name}/.")
    return 0
