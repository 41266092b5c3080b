"""The chart editor's page, a blank chart, and what becomes of the working copy."""

from __future__ import annotations

import pytest

from tests.examples import harbour
from webapp.exchange import pattern_file
from webapp.pages.forms import all as forms
from webapp.storage import patterns, revisions

BLANK = {
    "title": "Moonlight",
    "around": "6",
    "rounds": "4",
    "colour": "#1D3350",
    "finish": "matte",
    "kind": "8/0 round",
}


@pytest.fixture
def library(app):
    return app.state.services.database


@pytest.fixture
def drawn(client, library):
    """A pattern with something drawn since its first revision."""
    stored = patterns.create(library, harbour())
    document = {**pattern_file.to_document(harbour()), "title": "Drawn on", "sequence": 0}
    client.put(f"/api/patterns/{stored.id}/working", json=document).raise_for_status()
    return stored.id


def test_the_editor_is_told_where_everything_is(client, library):
    number = patterns.create(library, harbour()).id
    text = client.get(f"/patterns/{number}/chart").text
    for address in (f"/api/patterns/{number}", f"/api/patterns/{number}/working", f"/patterns/{number}/chart/left"):
        assert f'"{address}"' in text
    assert text.count("data-symbol=") == 64


def test_there_is_no_editor_for_a_pattern_that_is_not_there(client):
    assert client.get("/patterns/999/chart").status_code == 404


def test_a_blank_chart_is_made_and_opened(client, library):
    made = client.post("/patterns/new/chart", data=BLANK)
    assert (made.status_code, made.headers["location"]) == (303, "/patterns/1/chart")
    pattern = patterns.load(library, 1).pattern
    assert (pattern.title, pattern.around, pattern.chart) == ("Moonlight", 6, bytes(24))
    assert [(entry.code, entry.colour, entry.finish, entry.kind) for entry in pattern.palette] == [
        ("A", "#1d3350", "matte", "8/0 round"),
        ("B", "#f3ecdd", "matte", "8/0 round"),
    ]


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("title", "", "A pattern needs a title."),
        ("around", "2", "2 around does not work; a rope has 3 to 60 beads around."),
        ("rounds", "0", "A chart has at least one round and at most 100,000 beads."),
        ("rounds", "99999", "A chart has at least one round and at most 100,000 beads."),
        ("colour", "teal", "“teal” is not a colour; write # and six digits or letters a to f, such as #2f7f76."),
    ],
)
def test_what_is_wrong_with_a_blank_chart_is_said_beside_its_field(field, typed, sentence):
    form = forms.read_blank({**BLANK, field: typed}.items())
    assert (form.errors, form.pattern) == ({field: sentence}, None)


def test_a_blank_chart_that_is_wrong_keeps_what_was_typed(client):
    answer = client.post("/patterns/new/chart", data={**BLANK, "around": "99"})
    assert answer.status_code == 422
    assert 'value="Moonlight"' in answer.text and 'value="99"' in answer.text


def test_the_ground_of_a_blank_chart_differs_from_the_bead_one_draws_with():
    for colour in ("#f3ecdd", "#F3ECDD", "#2f7f76"):
        pattern = forms.read_blank({**BLANK, "colour": colour}.items()).pattern
        assert pattern.palette[0].colour != pattern.palette[1].colour


def test_leaving_the_editor_makes_an_automatic_revision(client, library, drawn):
    assert client.post(f"/patterns/{drawn}/chart/left").status_code == 204
    stored = patterns.load(library, drawn)
    assert (stored.working, stored.revision, stored.pattern.title) == (False, 2, "Drawn on")
    assert client.post(f"/patterns/{drawn}/chart/left").status_code == 204
    assert patterns.load(library, drawn).revision == 2


def test_a_state_is_kept_under_its_name(client, library, drawn):
    address = f"/patterns/{drawn}/chart/state"
    assert client.post(address, data={"name": "Before the moon"}).json() == {"revision": 2, "kept": True}
    assert revisions.revision(library, drawn, 2).pattern.title == "Drawn on"
    assert client.post(address, data={"name": "Again"}).json() == {"revision": 2, "kept": False}


def test_a_state_needs_a_name(client, drawn):
    assert client.post(f"/patterns/{drawn}/chart/state", data={"name": " "}).status_code == 422
    assert client.post(f"/patterns/{drawn}/chart/state", data={"name": "x" * 121}).status_code == 422
