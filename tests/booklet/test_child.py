"""Processes of our own: spoken to by messages, found dead by their silence, ended at once."""

from __future__ import annotations

import os
import signal
from collections.abc import Iterator

import pytest

from tests.booklet.test_jobs import gone, until
from webapp.printing.child import Child
from webapp.printing.messages import received


@pytest.fixture
def painter() -> Iterator[Child]:
    made = Child("webapp.printing.painter")
    yield made
    made.end()


def test_what_is_sent_is_answered(painter: Child) -> None:
    painter.send((None, ()))
    assert received(painter.output) == {} and painter.alive


def test_ending_waits_until_the_process_is_gone(painter: Child) -> None:
    painter.end()
    assert gone(painter.pid) and not painter.alive
    painter.end()


def test_one_that_died_answers_nothing_and_can_be_spoken_to(painter: Child) -> None:
    os.kill(painter.pid, signal.SIGKILL)
    until(lambda: not painter.alive)
    for _ in range(2):
        painter.send((None, ()))
    assert received(painter.output) is None
