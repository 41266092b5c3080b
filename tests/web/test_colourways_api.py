"""The colourways of a pattern as JSON."""

import pytest

DUSK = {
    "name": "Dusk",
    "palette": [{"code": "A", "name": "Night", "colour": "#202040", "finish": "matte", "kind": "11/0 round"}],
}


@pytest.fixture
def number(client, document):
    return client.post("/api/patterns", json=document).json()["id"]


def test_a_colourway_comes_back_as_it_was_sent(client, number):
    made = client.post(f"/api/patterns/{number}/colourways", json=DUSK)
    assert (made.status_code, made.json()) == (201, {"id": 1})
    assert client.get(f"/api/patterns/{number}/colourways").json() == {"colourways": [{"id": 1, **DUSK}]}
    assert "Dusk" in client.get(f"/patterns/{number}/colourways").text


@pytest.mark.parametrize(
    ("sent", "status", "field"),
    [
        ("{", 400, None),
        ("[]", 422, None),
        ({"name": "Dusk"}, 422, "palette"),
        ({**DUSK, "name": ""}, 422, "name"),
        ({**DUSK, "palette": []}, 422, "palette"),
        ({**DUSK, "palette": [{**DUSK["palette"][0], "colour": "red"}]}, 422, "palette.0.colour"),
        ({**DUSK, "palette": [{**DUSK["palette"][0], "symbol": "spoon"}]}, 422, "palette.0.symbol"),
        ({**DUSK, "more": 1}, 422, "more"),
    ],
)
def test_what_is_no_colourway_is_refused_by_its_field(client, number, sent, status, field):
    how = {"content": sent.encode()} if isinstance(sent, str) else {"json": sent}
    refused = client.post(f"/api/patterns/{number}/colourways", **how)
    assert (refused.status_code, refused.json()["error"]["field"]) == (status, field)


def test_a_name_stands_once_and_a_pattern_must_be_there(client, number):
    client.post(f"/api/patterns/{number}/colourways", json=DUSK).raise_for_status()
    assert client.post(f"/api/patterns/{number}/colourways", json=DUSK).status_code == 422
    assert client.get("/api/patterns/99/colourways").status_code == 404
    assert client.post("/api/patterns/99/colourways", json=DUSK).status_code == 404
