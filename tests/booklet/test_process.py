"""Processes of our own: messages arrive whole or not at all, the dead fall silent, and ending is at once."""

from __future__ import annotations

import os
import signal
from collections.abc import Iterator
from io import BytesIO

import pytest

from tests.booklet.test_jobs import gone, until
from webapp.printing.process import Child, received, send


def test_messages_arrive_one_after_the_other_and_then_none() -> None:
    pipe = BytesIO()
    for message in ({"cover": b"\xff\xd8" * 40_000}, ("a", 1)):
        send(pipe, message)
    pipe.seek(0)
    assert [received(pipe), received(pipe), received(pipe)] == [{"cover": b"\xff\xd8" * 40_000}, ("a", 1), None]


@pytest.mark.parametrize("kept", [0, 3, 8, 20])
def test_a_message_that_was_cut_short_is_none(kept: int) -> None:
    pipe = BytesIO()
    send(pipe, "A thread of beads")
    assert received(BytesIO(pipe.getvalue()[:kept])) is None


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
