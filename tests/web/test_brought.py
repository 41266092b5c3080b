"""Lists and tables brought along: shown as they are understood, then made."""

from __future__ import annotations

import pytest

from engine.pattern.starts.colour_names import guessed
from webapp.pages.addresses import address
from webapp.storage import finding, patterns


@pytest.mark.parametrize(
    ("written", "text", "chart"),
    [
        ("strung", "3 A 2 B", [1, 1, 0, 0, 0]),
        ("worked", "3 A 2 B", [0, 0, 0, 1, 1]),
        ("table", "A B A\nB B B", [1, 1, 1, 0, 1, 0]),
        ("table-down", "A B A\nB B B", [0, 1, 0, 1, 1, 1]),
    ],
)
def test_what_is_brought_becomes_a_pattern_in_the_order_that_is_said(client, app, written, text, chart):
    looked = client.post(address("bring"), data={"written": written, "text": text, "around": "3"})
    assert f"{len(chart)} beads, 3 around." in looked.text
    made = client.post(address("bring"), data={"written": written, "text": text, "around": "3", "do": "make"})
    assert made.headers["location"] == address("chart", id=1)
    assert patterns.load(app.state.services.database, 1).pattern.chart == bytes(chart)


def test_names_become_colours_where_they_are_known(client, app):
    client.post(address("bring"), data={"text": "3 dark blue, 2 Stormy", "do": "make"})
    palette = patterns.load(app.state.services.database, 1).pattern.palette
    assert [(entry.code, entry.name) for entry in palette] == [("A", "dark blue"), ("B", "Stormy")]
    assert palette[0].colour == guessed("dark blue") == "#1c3963"


def test_what_is_not_understood_is_said_and_nothing_is_made(client, app):
    sent = client.post(address("bring"), data={"text": "3A\n4", "do": "make"})
    assert sent.status_code == 422
    assert "Line 2, column 1: the count 4 has no bead behind it." in sent.text
    assert client.post(address("bring"), data={"do": "make"}).status_code == 422
    assert client.post(address("bring"), data={"text": "3A", "around": "99", "do": "make"}).status_code == 422
    assert finding.counts(app.state.services.database) == (0, 0)
