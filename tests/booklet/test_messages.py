"""Messages between processes arrive whole or not at all."""

from __future__ import annotations

from io import BytesIO

import pytest

from webapp.printing.messages import received, send


def test_messages_arrive_one_after_the_other_and_then_none() -> None:
    way = BytesIO()
    for message in ({"cover": b"\xff\xd8" * 40_000}, ("a", 1)):
        send(way, message)
    way.seek(0)
    assert [received(way), received(way), received(way)] == [{"cover": b"\xff\xd8" * 40_000}, ("a", 1), None]


@pytest.mark.parametrize("kept", [0, 3, 8, 20])
def test_a_message_that_was_cut_short_is_none(kept: int) -> None:
    way = BytesIO()
    send(way, "A thread of beads")
    assert received(BytesIO(way.getvalue()[:kept])) is None
