"""One process for all servers that are to be killed."""

from __future__ import annotations

import os
from collections.abc import Iterator

import pytest

from tests.server import servers
from tests.server.nursery import Nursery


@pytest.fixture(scope="session")
def nursery() -> Iterator[object]:
    """What starts servers; where processes cannot be split off, each is started by itself."""
    if not hasattr(os, "fork"):
        yield servers
        return
    nursery = Nursery()
    yield nursery
    nursery.close()
