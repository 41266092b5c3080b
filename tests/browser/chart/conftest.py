"""One tab for all charts of a file of tests, a pattern of its own for each."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page

from tests.browser.conftest import WIDE, Browsers, Site, Watch, cleared


@pytest.fixture(scope="module")
def tab(browsers: Browsers, site: Site) -> Iterator[Page]:
    context = browsers.on(site.address, viewport=WIDE)
    yield context.new_page()
    cleared(context)


@pytest.fixture
def page(tab: Page, watch: Watch) -> Iterator[Page]:
    watch.on(tab.context)
    yield tab
    tab.unroute_all()
    for other in tab.context.pages[1:]:
        if other != tab:
            other.close()
    watch.off(tab.context)
