"""Pieces in work: begun from the list, moved with forms or by the script's small save, and unmoved by what changes later."""

from __future__ import annotations

from dataclasses import replace

import pytest

from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.counting.rope import Swatch
from tests.conftest import flat
from tests.examples import harbour
from webapp.pages.addresses import address
from webapp.records import Counted
from webapp.storage import in_work, patterns, revisions, workshop

ASKED = {"length": "45 cm", "closure": "clasp", "threads": "metres", "metres": "1"}


@pytest.fixture
def database(app):
    return app.state.services.database


@pytest.fixture
def number(database):
    return patterns.create(database, harbour()).id


@pytest.fixture
def piece(client, number):
    """A piece that was begun from the page of the list."""
    begun = client.post(address("pieces", id=number), data={**ASKED, "name": "Collar for Marta"})
    assert begun.headers["location"] == f"/patterns/{number}/pieces/1?said=piece-begun"
    return 1


def page_of(client, number, piece):
    return flat(client.get(address("piece", id=number, piece=piece)).text)


def move(client, number, piece, sequence, **sent):
    """The status of moving the place by a form."""
    place = address("move_piece", id=number, piece=piece)
    return client.post(place, data={"sequence": str(sequence), **sent}).status_code


def test_a_piece_is_listed_and_shown_with_the_list_of_its_first_thread(client, number, piece):
    threads = answer(harbour(), Question(450.0, "clasp"), plan=1.0).stringing.threads
    shown = page_of(client, number, piece)
    assert "Collar for Marta" in shown and f"1: {threads[0].beads} beads" in shown
    assert f"Next: {threads[0].runs[0].beads} {threads[0].runs[0].code}" in shown
    assert "as it was begun" not in shown
    listed = flat(client.get(address("stringing", id=number)).text)
    assert "Collar for Marta</a>" in listed and "thread 1, 0 entries strung; in work" in listed


def test_without_script_the_place_goes_on_and_back_over_the_ends_of_threads(client, database, number, piece):
    entries = len(answer(harbour(), Question(450.0, "clasp"), plan=1.0).stringing.threads[0].runs)
    assert move(client, number, piece, 0, thread="1", strung="3", move="forward") == 303
    assert (in_work.piece(database, number, piece).strung) == 4
    assert move(client, number, piece, 1, move="thread", to="2") == 303
    assert move(client, number, piece, 2, thread="2", strung="0", move="back") == 303
    kept = in_work.piece(database, number, piece)
    assert kept.thread == 1 and 0 < kept.strung <= entries
    assert move(client, number, piece, 3, thread="1", strung=str(kept.strung), move="forward") == 303
    assert (in_work.piece(database, number, piece).thread, in_work.piece(database, number, piece).strung) == (2, 0)


def test_two_pages_do_not_overwrite_one_another(client, number, piece):
    place = address("api_place", id=number, piece=piece)
    assert client.put(place, json={"thread": 1, "strung": 7, "sequence": 0}).json() == {"sequence": 1}
    refused = client.put(place, json={"thread": 1, "strung": 2, "sequence": 0})
    assert refused.status_code == 409 and "changed on another page" in refused.json()["error"]["message"]
    assert move(client, number, piece, 0, thread="1", strung="2", move="forward") == 409
    assert 'data-strung="7"' in page_of(client, number, piece)


@pytest.mark.parametrize(
    ("sent", "sentence"),
    [
        ({"thread": 0, "strung": 1, "sequence": 0}, "“thread” counts from 1"),
        ({"thread": 1, "strung": "x", "sequence": 0}, "expected a whole number"),
        ({"thread": 1, "strung": 1}, "expected a whole number"),
    ],
)
def test_a_place_that_is_none_is_refused_by_name(client, number, piece, sent, sentence):
    refused = client.put(address("api_place", id=number, piece=piece), json=sent)
    assert refused.status_code == 422 and sentence in refused.json()["error"]["message"]


def test_the_list_stays_as_it_was_begun_when_the_pattern_changes(client, database, number, piece):
    before = page_of(client, number, piece)
    chart = bytes([2]) * 25 + harbour().chart
    revisions.save(database, number, replace(harbour(), chart=chart), 1)
    shown = page_of(client, number, piece)
    assert "The pattern has changed since revision 1, of which this piece was begun." in shown
    assert shown.partition('<form class="runs"')[2] == before.partition('<form class="runs"')[2]


def test_a_new_swatch_leaves_it_as_it_was_begun_too(client, database, number, piece):
    workshop.add_swatch(database, Swatch("11/0 round", harbour().around, "single", 240, 31.0, "2026-03-01"))
    assert "counted today the list would be another" in page_of(client, number, piece)


def test_a_piece_is_renamed_finished_taken_up_again_and_removed(client, database, number, piece):
    at = {"id": number, "piece": piece}
    assert client.post(address("rename_piece", **at), data={"name": " "}).status_code == 422
    assert client.post(address("rename_piece", **at), data={"name": "For Ole"}).status_code == 303
    assert client.post(address("remove_piece", **at)).status_code >= 400
    for state in ("finished", "open", "away"):
        assert client.post(address("put_piece", **at), data={"state": state}).status_code == 303
    assert client.post(address("put_piece", **at), data={"state": "lost"}).status_code == 422
    assert "For Ole</a>" in client.get(address("stringing", id=number)).text
    assert client.post(address("remove_piece", **at)).headers["location"].endswith("said=piece-removed")
    assert in_work.pieces(database, number) == ()


@pytest.mark.parametrize(
    ("sent", "sentence"),
    [
        ({**ASKED, "name": ""}, "The name of the piece is empty"),
        ({"length": "45 ells", "name": "x"}, "“ells” is not a unit of length"),
    ],
)
def test_a_piece_without_a_name_or_a_size_is_not_begun(client, database, number, sent, sentence):
    refused = client.post(address("pieces", id=number), data=sent)
    assert refused.status_code == 422 and sentence in flat(refused.text)
    assert in_work.pieces(database, number) == ()


def test_a_piece_whose_list_cannot_be_read_is_answered_in_one_sentence(client, database, number):
    piece = in_work.begin(database, number, "Lost", Counted(harbour(), 1, "{}"), "")
    refused = client.get(address("piece", id=number, piece=piece))
    assert refused.status_code == 422 and "were not kept" in flat(refused.text)


def test_names_leave_in_no_export(client, number, piece):
    assert b"Marta" not in client.get(address("library_zip")).content
    assert (
        "Marta" not in client.get(f"/api/patterns/{number}").text + client.get(address("pattern_file", id=number)).text
    )
