"""What tests share: a library in a temporary folder, the app on it, and a client that talks to it without a network."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import anyio.from_thread
import httpx
import hypothesis
import pytest
from playwright.sync_api import Browser, expect, sync_playwright

from engine.pattern.pattern import Pattern
from tests.beyond import Beyond, standing
from tests.examples import harbour
from tests.printing_here import PrintsHere
from webapp.exchange import pattern_file
from webapp.printing import jobs
from webapp.server.app import create_app
from webapp.settings import Settings
from webapp.storage.database import Database
from webapp.storage.library import open_library

FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


# Laws are held however busy the computer is, and by the same few examples each time; python3 -m tests laws looks for new
# ones, many more of them.
hypothesis.settings.register_profile("ropewright", deadline=None, derandomize=True, max_examples=30)
hypothesis.settings.register_profile("searching", deadline=None, max_examples=300)
hypothesis.settings.load_profile("ropewright")


class InProcess(httpx.BaseTransport):
    """Carries requests to the app through a portal, whose loop runs in a thread of its own."""

    def __init__(self, app, portal):
        self.inner = httpx.ASGITransport(app=app, raise_app_exceptions=False)
        self.portal = portal

    def handle_request(self, request):
        async def answer():
            response = await self.inner.handle_async_request(request)
            body = b"".join([part async for part in response.aiter_raw()])
            if response.headers.get("content-type", "").startswith("text/html"):
                body = body.replace("\N{NO-BREAK SPACE}".encode(), b" ")  # it holds numbers and units together
                response.headers["content-length"] = str(len(body))
            return httpx.Response(response.status_code, headers=response.headers, stream=httpx.ByteStream(body))

        return self.portal.call(answer)


@pytest.fixture(scope="session")
def portal():
    with anyio.from_thread.start_blocking_portal() as portal:
        yield portal


@contextmanager
def client_of(app, portal) -> Iterator[httpx.Client]:
    """A client of that app."""
    with (
        portal.wrap_async_context_manager(app.router.lifespan_context(app)),
        httpx.Client(transport=InProcess(app, portal), base_url="http://127.0.0.1:8620") as client,
    ):
        yield client


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    return Settings(tmp_path / "data", browser=False)


@pytest.fixture
def prints_here(monkeypatch):
    """Prints need no process of their own; those of test_jobs and of the road through a browser have one."""
    monkeypatch.setattr(jobs, "WorkerProcess", PrintsHere)


@pytest.fixture(scope="session")
def empty_library(tmp_path_factory) -> Path:
    """A library of the newest schema with nothing in it: most tests begin with a copy, which is made much faster."""
    database = open_library(tmp_path_factory.mktemp("library"))
    database.close()
    return database.folder


def copied(library: Path, folder: Path) -> Path:
    """The folder, which holds a copy of that library unless it holds one already: app and database may share it."""
    if not folder.exists():
        shutil.copytree(library, folder)
    return folder


@pytest.fixture
def app(settings, empty_library, prints_here):
    copied(empty_library, settings.data)
    return create_app(settings)


@pytest.fixture
def client(app, portal) -> Iterator[httpx.Client]:
    with client_of(app, portal) as client:
        yield client


@pytest.fixture
def database(tmp_path: Path, empty_library: Path) -> Iterator[Database]:
    database = open_library(copied(empty_library, tmp_path / "data"))
    yield database
    database.close()


def flat(text: str) -> str:
    """A page's text with every stretch of white space as one space, as a browser shows it."""
    return " ".join(text.split())


@pytest.fixture
def document() -> dict:
    """A small pattern as the document of its file."""
    return pattern_file.to_document(harbour())


@pytest.fixture
def pattern() -> Pattern:
    return harbour()


@pytest.fixture(scope="session")
def beyond() -> Iterator[Beyond]:
    with standing() as beyond:
        yield beyond


@pytest.fixture(scope="session")
def chromium(beyond: Beyond) -> Iterator[Browser]:
    found = shutil.which("chromium")
    assert found, "Chromium is not installed: apt-get install chromium"
    expect.set_options(timeout=20_000)
    with sync_playwright() as playwright:
        # a test is over before scripts that are made fast beside it, by another thread, would gain anything
        flags = [*FLAGS, "--js-flags=--no-opt", f"--proxy-server={beyond.address}"]
        browser = playwright.chromium.launch(executable_path=found, args=flags)
        yield browser
        browser.close()
