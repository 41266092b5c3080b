"""One tab for all charts of a file of tests, a pattern of its own for each."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.conftest import Site, Watch, in_browser


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
