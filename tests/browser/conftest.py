"""A real browser on a real server, whose library holds the demo patterns; whatever goes wrong on a page fails the test."""

from __future__ import annotations

import os
import re
import socket
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

import pytest
import uvicorn
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, ViewportSize, WebError

from tests.beyond import Beyond
from tests.conftest import copied
from tests.printing_here import PrintsHere
from webapp.demo import examples
from webapp.exchange.works import Works
from webapp.printing import jobs
from webapp.server.app import create_app
from webapp.server.late import all_routers
from webapp.settings import Settings
from webapp.storage.database import Database
from webapp.storage.library import open_library

# what a browser writes itself when a page comes with such a status; ours come with 404, 409 and 422 on purpose
REFUSED = r"Failed to load resource: the server responded with a status of (404|409|422)"
# and when a busy computer, which draws the ring without a graphics card, keeps it waiting
SLOW = r"\[\.WebGL-\w+\]GL Driver Message \(OpenGL, Performance"
# and of htmx a request that is given up for a newer one; one that fails says htmx:sendError besides
GIVEN_UP = r"htmx:(afterRequest|sendAbort), "
ITS_OWN = re.compile(f"{REFUSED}|{SLOW}|{GIVEN_UP}")
WIDE: ViewportSize = {"width": 1280, "height": 900}


class Site(NamedTuple):
    """A server, the library behind it, and its works that take a while."""

    address: str
    database: Database
    works: Works


class Watch:
    """What a browser reported: errors and refused policies."""

    def __init__(self) -> None:
        self.complaints: list[str] = []

    def on(self, context: BrowserContext) -> None:
        context.on("console", self.heard)
        context.on("weberror", self.failed)

    def off(self, context: BrowserContext) -> None:
        context.remove_listener("console", self.heard)
        context.remove_listener("weberror", self.failed)

    def failed(self, error: WebError) -> None:
        self.complaints.append(str(error.error))

    def heard(self, message: ConsoleMessage) -> None:
        if message.type in ("error", "warning") and not ITS_OWN.match(message.text):
            self.complaints.append(message.text)


class Browsers:
    """Browsers for the site that is asked for, one for each way of having no script, fingers and so on.

    To begin one, or a process for its first page, takes longer than most tests: both are kept, the process by a page
    that rests on a style sheet. What other pages leave there but files that are kept for good is cleared.
    """

    def __init__(self, chromium: Browser) -> None:
        self.chromium = chromium
        self.contexts: dict[tuple[str, str], BrowserContext] = {}

    def on(self, address: str, **options: object) -> BrowserContext:
        """One for the site at that address. Options as of Playwright."""
        key = address, repr(sorted(options.items()))
        if key not in self.contexts:
            self.contexts[key] = self.chromium.new_context(base_url=address, **options)
            self.contexts[key].set_default_timeout(20_000)
            self.contexts[key].new_page().goto(f"{address}/static/css/base.css")
        return self.contexts[key]

    def close(self, address: str) -> None:
        """Closes those for that site, which may then end."""
        for key in [key for key in self.contexts if key[0] == address]:
            self.contexts.pop(key).close()


def cleared(context: BrowserContext) -> None:
    """Closes its pages but the one that rests; whoever opens the next one has never been there."""
    context.clear_cookies()
    for page in context.pages[1:]:
        page.unroute_all()
        if not page.url.startswith("about:"):
            page.evaluate("try { localStorage.clear(); } catch {}")  # one test refuses it
        page.close()


@pytest.fixture(scope="session")
def browsers(chromium: Browser) -> Browsers:
    return Browsers(chromium)


@pytest.fixture(scope="session")
def pictures(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Shaded pictures, named by all that shows in them: drawn once for all sites, also those of tests run beside."""
    own = tmp_path_factory.getbasetemp()
    folder = (own.parent if "PYTEST_XDIST_WORKER" in os.environ else own) / "pictures"
    folder.mkdir(exist_ok=True)
    return folder


@pytest.fixture(scope="session")
def begun_library(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A library as it begins, with the demo patterns: every site has a copy."""
    database = open_library(tmp_path_factory.mktemp("begun"), examples())
    database.close()
    return database.folder


@pytest.fixture(scope="module")
def site(
    tmp_path_factory: pytest.TempPathFactory, begun_library: Path, pictures: Path, browsers: Browsers
) -> Iterator[Site]:
    """One site for all tests of a file: what one leaves there, the next one finds."""
    with begun_site(begun_library, tmp_path_factory.mktemp("site") / "data", pictures, browsers) as site:
        yield site


@contextmanager
def begun_site(begun_library: Path, data: Path, pictures: Path, browsers: Browsers) -> Iterator[Site]:
    """A site on a copy of that library; its prints need no process of their own."""
    with pytest.MonkeyPatch.context() as patches:
        patches.setattr(jobs, "WorkerProcess", PrintsHere)
        with served(copied(begun_library, data), pictures) as site:
            yield site
            browsers.close(site.address)


@contextmanager
def served(data: Path, pictures: Path) -> Iterator[Site]:
    """A site on that data folder, gone at the end."""
    (data / "pictures").symlink_to(pictures)
    all_routers()  # not while the tests go on: what a library warns of on purpose is an error here, in every thread
    app = create_app(Settings(data, browser=False))
    with socket.socket(socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP) as listening:
        listening.bind(("127.0.0.1", 0))
        server = uvicorn.Server(uvicorn.Config(app, log_config=None, timeout_graceful_shutdown=2))
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]}, daemon=True)
        thread.start()
        while not server.started:
            assert thread.is_alive(), "the server did not start"
            time.sleep(0.01)
        yield Site(
            f"http://127.0.0.1:{listening.getsockname()[1]}", app.state.services.database, app.state.services.works
        )
        server.should_exit = True
        thread.join(10)


@pytest.fixture
def watch(beyond: Beyond) -> Iterator[Watch]:
    watch = Watch()
    beyond.asked.clear()
    yield watch
    assert beyond.asked == []
    assert watch.complaints == []


@pytest.fixture
def opened(browsers: Browsers, site: Site, watch: Watch) -> Iterator[Callable[..., Page]]:
    """Opens a page, wide, light and with script unless said otherwise."""
    contexts = set()

    def opened(
        viewport: ViewportSize = WIDE,
        color_scheme: str = "light",
        reduced_motion: str = "no-preference",
        **options: object,
    ) -> Page:
        context = browsers.on(site.address, **options)
        if context not in contexts:
            contexts.add(context)
            watch.on(context)
        page = context.new_page()
        page.set_viewport_size(viewport)
        page.emulate_media(color_scheme=color_scheme, reduced_motion=reduced_motion)
        return page

    yield opened
    for context in contexts:
        watch.off(context)
        cleared(context)


@pytest.fixture
def page(opened: Callable[..., Page]) -> Page:
    return opened()
