"""Chromium with our scripts and fixtures at an address of their own, served from their files without a server."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, Route

from webapp.paths import ROOT, STATIC

FOLDERS = {"static": STATIC, "tests": ROOT / "tests" / "js", "shared": ROOT / "tests" / "shared"}
TYPES = {".js": "text/javascript", ".json": "application/json"}
ADDRESS = "http://scripts.test"


@pytest.fixture(scope="session")
def scripts(chromium: Browser) -> Iterator[Page]:
    """A blank page that can import any of our scripts."""
    page = chromium.new_page()
    page.route(f"{ADDRESS}/**", answer)
    page.goto(f"{ADDRESS}/")
    yield page
    page.close()


def answer(route: Route) -> None:
    folder, _, name = route.request.url.removeprefix(f"{ADDRESS}/").partition("/")
    if not name:
        route.fulfill(body="<!doctype html><title>Scripts</title>", content_type="text/html")
        return
    path = FOLDERS[folder] / name
    route.fulfill(body=path.read_bytes(), content_type=TYPES[path.suffix])
