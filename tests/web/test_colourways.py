"""Colourways of a pattern: made, also of what is in stock, exchanged bead by bead, and codes given out anew."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from engine.cabinet.bead import Bead
from engine.pattern.colour import look_alikes
from engine.pattern.palette import Entry, Palette
from tests.conftest import flat
from tests.examples import harbour
from webapp.storage import beads, colourways, patterns

OWN = harbour().palette


@pytest.fixture
def library(app):
    return app.state.services.database


@pytest.fixture
def number(library):
    return patterns.create(library, harbour()).id


@pytest.fixture
def stocked(library):
    """A bead in stock near each bead of the pattern, of colours that all eyes tell apart."""
    for place, entry in enumerate(OWN):
        colour = f"#{min(255, int(entry.colour[1:3], 16) + 3):02x}{entry.colour[3:]}"
        beads.add(library, Bead(f"Mine {entry.code}", colour, stock_mg=20_000 + place, key=f"k{place}"))


def made(client, number, **sent):
    answer = client.post(f"/patterns/{number}/colourways", data={"name": "Dusk", "begins": "drawn", **sent})
    assert answer.status_code == 303
    return answer.headers["location"].partition("?")[0]


def sequence(library, number):
    return str(patterns.load(library, number).sequence)


def test_a_colourway_begins_as_drawn_and_stands_beside_it(client, library, number):
    where = made(client, number)
    assert colourways.of(library, number)[0].colourway.palette == OWN
    shown = client.get(f"/patterns/{number}/colourways").text
    assert "As drawn" in shown and "Dusk" in shown
    assert client.get(f"{where}/picture.webp").headers["content-type"] == "image/webp"
    assert client.get(f"/patterns/{number}/colourways/0/picture.webp").status_code == 200


def test_a_colourway_of_the_stock_points_at_the_nearest_beads(client, library, number, stocked):
    made(client, number, begins="stock")
    (kept,) = colourways.of(library, number)
    assert [entry.bead for entry in kept.colourway.palette] == [f"k{place}" for place in range(len(OWN))]


def test_beads_of_which_too_little_is_there_are_not_taken(client, library, number, stocked):
    made(client, number, begins="stock", length="9 m")
    (kept,) = colourways.of(library, number)
    assert not any(entry.bead for entry in kept.colourway.palette)


def test_what_cannot_be_made_is_refused_with_its_sentence(client, number):
    made(client, number)
    for sent, sentence in (
        ({"name": ""}, "Give it a name of at most 60 characters."),
        ({"name": "dusk"}, "There is a colourway “dusk” already; take another name."),
        ({"name": "Dawn", "begins": "stock", "length": "soon"}, "“soon” is not a length"),
        ({"name": "Dawn", "begins": "stock", "length": "1 mm"}, "No rope"),
    ):
        refused = client.post(f"/patterns/{number}/colourways", data={"begins": "drawn", **sent})
        assert refused.status_code == 422
        if sentence != "No rope":
            assert sentence in refused.text


def test_a_bead_is_exchanged_for_one_of_the_cabinet_or_one_that_stands_alone(client, library, number, stocked):
    where = made(client, number)
    assert "Mine A" in client.get(f"{where}/beads/A").text
    exchanged = client.post(f"{where}/beads/A", data={"bead": "k1"})
    assert "Put Night water back as A" in flat(client.get(exchanged.headers["location"]).text)
    typed = {"name": "Alone", "colour": "#123456", "finish": "pearl", "kind": "8/0 round", "maker_code": "x"}
    assert client.post(f"{where}/beads/B", data=typed).status_code == 303
    (kept,) = colourways.of(library, number)
    assert kept.colourway.palette[0].bead == "k1"
    assert kept.colourway.palette[1] == Entry("B", "Alone", "#123456", "pearl", "8/0 round", OWN[1].symbol, "x")
    assert patterns.load(library, number).pattern.palette == OWN
    wrong = client.post(f"{where}/beads/B", data={**typed, "name": ""})
    assert wrong.status_code == 422 and "is empty; expected 1 to 120 characters." in wrong.text
    assert client.get(f"{where}/beads/Q").status_code == 404


def test_an_exchange_is_undone_with_all_that_the_bead_was(client, library, number, stocked):
    where = made(client, number, begins="stock")
    before = colourways.of(library, number)[0].colourway
    was = {"name": "Mine A", "colour": before.palette[0].colour, "finish": "opaque", "kind": "11/0 round"}
    client.post(f"{where}/beads/A", data={"bead": "k1"})
    client.post(f"{where}/beads/A", data={**was, "maker_code": "", "points": "k0"})
    assert colourways.of(library, number)[0].colourway == before


def test_a_copy_of_a_pattern_has_its_colourways(client, library, number):
    made(client, number)
    copied = client.post(f"/patterns/{number}/copy").headers["location"].partition("?")[0]
    copy = int(copied.rpartition("/")[2])
    assert [kept.colourway for kept in colourways.of(library, copy)] == [
        kept.colourway for kept in colourways.of(library, number)
    ]


def test_the_palette_as_drawn_is_exchanged_in_the_working_copy(client, library, number, stocked):
    own = f"/patterns/{number}/colourways/0"
    assert f'name="sequence" value="{sequence(library, number)}"' in flat(client.get(f"{own}/beads/A").text)
    sent = {"bead": "k1", "sequence": sequence(library, number)}
    assert client.post(f"{own}/beads/A", data=sent).status_code == 303
    stored = patterns.load(library, number)
    assert (stored.working, stored.pattern.palette[0].bead) == (True, "k1")
    stale = client.post(f"{own}/beads/B", data={**sent, "sequence": "0"})
    assert stale.status_code == 409
    assert patterns.load(library, number) == stored


def test_entries_point_at_beads_that_look_the_same_and_say_what_these_do(client, library, number, stocked):
    own = f"/patterns/{number}/colourways/0"
    client.post(f"{own}/link", data={"sequence": sequence(library, number)})
    stored = patterns.load(library, number).pattern.palette
    assert [replace(entry, bead="") for entry in stored] == list(OWN)
    assert [entry.bead for entry in stored] == [f"k{place}" for place in range(len(OWN))]
    assert "differs in name" in flat(client.get(own).text)
    client.post(f"{own}/refresh", data={"sequence": sequence(library, number)})
    assert patterns.load(library, number).pattern.palette[0].name == "Mine A"
    again = client.post(f"{own}/link", data={"sequence": sequence(library, number)})
    assert "colourway-same" in again.headers["location"]


def test_a_colourway_is_renamed_removed_and_taken_back(client, library, number):
    where = made(client, number)
    made(client, number, name="Dawn")
    assert client.post(where, data={"name": "Evening"}).status_code == 303
    assert "There is a colourway “dawn” already" in client.post(where, data={"name": "dawn"}).text
    removed = client.post(f"{where}/remove").headers["location"]
    assert "Take it back" in client.get(removed).text
    client.post(f"{where}/take-back")
    assert {kept.colourway.name for kept in colourways.of(library, number)} == {"Evening", "Dawn"}
    assert client.post(f"/patterns/{number}/colourways/0", data={"name": "x"}).status_code == 404


def test_look_alikes_are_shown_with_their_numbers_and_a_bead_that_helps(client, library, number, stocked):
    twins = Palette((replace(OWN[0], colour="#dfa63b"), *list(OWN)[1:]))
    number = patterns.create(library, replace(harbour(), palette=twins)).id
    shown = flat(client.get(f"/patterns/{number}/colourways").text)
    assert look_alikes(twins)
    for words in (
        "Plain sight",
        "Weak in red",
        "Weak in green",
        "Weak in blue",
        "opaque beside metallic, which helps in the hand",
        "Exchange",
    ):
        assert words in shown
    assert "1 pair looks alike" in shown


def test_codes_and_symbols_are_given_out_anew_as_a_revision(client, library, number):
    where = made(client, number)
    before = patterns.load(library, number)
    assert "Use these" in client.get(f"/patterns/{number}/codes").text
    assert client.post(f"/patterns/{number}/codes", data={"sequence": str(before.sequence)}).status_code == 303
    after = patterns.load(library, number)
    assert (after.revision, after.pattern.main.beads) == (before.revision + 1, before.pattern.main.beads)
    way = colourways.load(library, number, int(where.rpartition("/")[2])).colourway
    assert way.palette.codes == after.pattern.palette.codes
    assert client.post(f"/patterns/{number}/codes", data={"sequence": "0"}).status_code == 409
    assert "nothing would change" in client.get(f"/patterns/{number}/codes").text


def test_a_pattern_file_keeps_what_its_beads_point_at(client, library, number, stocked):
    client.post(f"/patterns/{number}/colourways/0/link", data={"sequence": sequence(library, number)})
    file = json.loads(client.get(f"/patterns/{number}/file").text)
    assert [entry["bead"] for entry in file["palette"]] == [f"k{place}" for place in range(len(OWN))]
    assert client.post("/api/patterns", json=file).status_code == 201
