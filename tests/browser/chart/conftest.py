"""One site and one tab for all charts of a file of tests, a pattern of its own for each."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.conftest import Site, Watch, in_browser, served
from tests.conftest import copied


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory, begun_library: Path, pictures: Path) -> Iterator[Site]:
    with served(copied(begun_library, tmp_path_factory.mktemp("site") / "data"), pictures) as site:
        yield site


@pytest.fixture(scope="module")
def tab(chromium: Browser, site: Site) -> Iterator[Page]:
    context = in_browser(chromium, site)
    yield context.new_page()
    context.close()


@pytest.fixture
def page(tab: Page, watch: Watch) -> Iterator[Page]:
    watch.on(tab.context)
    yield tab
    tab.unroute_all()
    for other in tab.context.pages[1:]:
        other.close()
    watch.off(tab.context)
