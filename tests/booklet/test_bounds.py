"""A print that takes too long or too much memory is ended with a sentence."""

import os
import sys
import time

import pytest

from webapp.printing import bounds
from webapp.printing.bounds import Bounds, memory_mb


class Hog:
    """Stands for a worker that goes on and on."""

    pid = os.getpid()

    def __init__(self):
        self.killed = False

    def kill(self):
        self.killed = True


def watched():
    hog = Hog()
    with Bounds(hog) as watching:
        end = time.monotonic() + 10
        while not hog.killed and time.monotonic() < end:
            time.sleep(0.01)
    return hog.killed, watching.passed


@pytest.fixture(autouse=True)
def quick(monkeypatch):
    monkeypatch.setattr(bounds, "LOOKS_S", 0.01)


def test_one_that_takes_too_long_is_ended(monkeypatch):
    monkeypatch.setattr(bounds, "MOST_S", 0)
    assert watched() == (True, bounds.TOO_LONG.format(0))


@pytest.mark.skipif(sys.platform != "linux", reason="only Linux says what a process holds in memory")
def test_one_that_takes_too_much_memory_is_ended(monkeypatch):
    monkeypatch.setattr(bounds, "MOST_MB", 1)
    assert watched() == (True, bounds.TOO_LARGE.format("1"))
    assert memory_mb(os.getpid()) > 10


def test_one_that_ends_by_itself_is_let_be():
    hog = Hog()
    with Bounds(hog) as watching:
        pass
    assert (hog.killed, watching.passed) == (False, "")
