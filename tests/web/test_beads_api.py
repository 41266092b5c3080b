"""The cabinet as JSON."""

import pytest

SEA = {
    "name": "Sea",
    "colour": "#2F7F76",
    "kind": "11/0 round",
    "finish": "matte",
    "maker_code": "LS-4",
    "supplier": "Pier Nine",
    "pack_grams": 20,
    "price": 350,
    "currency": "EUR",
    "stock_grams": 12.5,
    "note": "",
}


@pytest.fixture
def sea(client):
    """The key of a bead that was sent."""
    made = client.post("/api/beads", json=SEA)
    assert made.status_code == 201
    return made.json()["bead"]


def test_a_bead_comes_back_as_it_was_sent(client, sea):
    assert client.get(f"/api/beads/{sea}").json() == {**SEA, "colour": "#2f7f76", "bead": sea, "archived": False}


def test_the_cabinet_is_listed_and_narrowed_as_its_page_is(client, sea):
    client.post("/api/beads", json={"name": "Lamp", "colour": "#d9932b"}).raise_for_status()
    for query, names in (
        ("", ["Lamp", "Sea"]),
        ("search=pier", ["Sea"]),
        ("stock=out", ["Lamp"]),
        ("near=%2330807a", ["Sea"]),
        ("sort=stock", ["Sea", "Lamp"]),
        ("archived=true", []),
    ):
        listed = client.get(f"/api/beads?{query}").json()
        assert ([bead["name"] for bead in listed["beads"]], listed["total"]) == (names, len(names)), query


def test_patterns_follow_a_bead_that_was_replaced(client, sea, document):
    entry = {**document["palette"][0], "name": "Sea", "colour": "#2f7f76", "bead": sea}
    client.post("/api/patterns", json={**document, "palette": [entry, *document["palette"][1:]]}).raise_for_status()
    answer = client.put(f"/api/beads/{sea}", json={**SEA, "colour": "#2f7f70", "bead": sea})
    assert answer.json() == {"bead": sea, "followed": 1}
    assert client.get("/api/patterns/1").json()["palette"][0]["colour"] == "#2f7f70"


@pytest.mark.parametrize(
    ("sent", "status", "field"),
    [
        ("{", 400, None),
        ("[]", 422, None),
        ({"name": "Sea"}, 422, "colour"),
        ({**SEA, "shelf": 3}, 422, "shelf"),
        ({**SEA, "kind": "13/0"}, 422, "kind"),
        ({**SEA, "currency": "Taler"}, 422, "currency"),
        ({**SEA, "currency": ""}, 422, "currency"),
        ({**SEA, "price": 3.5}, 422, "price"),
        ({**SEA, "pack_grams": -1}, 422, "pack_grams"),
        ({**SEA, "stock_grams": 1e300}, 422, "stock_grams"),
        ({**SEA, "finish": "shiny"}, 422, "finish"),
    ],
)
def test_what_is_no_bead_is_refused_by_its_field(client, sent, status, field):
    how = {"content": sent.encode()} if isinstance(sent, str) else {"json": sent}
    refused = client.post("/api/beads", **how)
    assert refused.status_code == status
    assert refused.json()["error"]["field"] == field
    assert client.get("/api/beads/none").status_code == 404


def test_colours_that_look_alike_are_named_by_their_places(client):
    asked = [("colour", colour) for colour in ("#1d3350", "#f2e8d5", "#203755")]
    answer = client.get("/api/look-alikes", params=asked).json()
    assert answer["threshold"] == 7.0
    assert [(pair["first"], pair["second"], pair["sight"]) for pair in answer["pairs"]] == [(0, 2, "plain")]
    refused = client.get("/api/look-alikes", params=[("colour", "#1d3350"), ("colour", "red")])
    assert (refused.status_code, refused.json()["error"]["field"]) == (422, "colour.1")
    assert client.get("/api/look-alikes?colour=%23000000").status_code == 422
