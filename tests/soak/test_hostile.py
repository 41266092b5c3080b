"""A short share of the hostile requests of `python3 -m tests soak`."""

from random import Random

from tests.soak.hostile import ask
from tests.soak.rooms import asked_app


def test_three_hundred_hostile_requests_are_answered_in_sentences(tmp_path, portal):
    with asked_app(tmp_path, portal) as (_, client):
        asked = ask(client, Random(14), 300)
    assert asked.wrong == []
    assert (asked.requests, len(asked.routes) > 90) == (300, True)
