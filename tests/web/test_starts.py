"""Starting points as pages, pictures and JSON: what is chosen is what is made."""

from __future__ import annotations

from io import BytesIO

import pytest
from PIL import Image

from engine.pattern.starts.all import STARTS
from webapp.exchange import pattern_file
from webapp.pages.addresses import address
from webapp.storage import finding, patterns


def test_the_ways_to_begin_lead_to_every_start(client):
    text = client.get(address("begin")).text
    assert [key for key in STARTS if f'href="{address("start", start=key)}"' not in text] == []
    assert [name for name in ("blank", "new", "import") if f'href="{address(name)}"' not in text] == []


@pytest.mark.parametrize("start", STARTS)
def test_every_start_shows_what_it_comes_to(client, start):
    text = client.get(address("start", start=start)).text
    assert "A ring closes at every multiple of" in text
    assert text.count("/picture.webp?") == 2


def test_what_is_chosen_becomes_a_pattern_and_opens_in_the_chart(client, app):
    made = client.post(
        address("start", start="rings"),
        data={"around": "5", "rounds": "2A C", "colour": ["#112233", "#445566", "#778899"], "title": "Bands"},
    )
    assert (made.status_code, made.headers["location"]) == (303, address("chart", id=1))
    pattern = patterns.load(app.state.services.database, 1).pattern
    assert (pattern.title, pattern.around, pattern.chart) == ("Bands", 5, bytes([0] * 10 + [2] * 5))
    assert [entry.colour for entry in pattern.palette] == ["#112233", "#445566", "#778899"]


def test_what_is_wrong_is_said_at_its_field_and_nothing_is_made(client, app):
    sent = client.post(address("start", start="zigzag"), data={"high": "900", "across": "3"})
    assert sent.status_code == 422
    assert "Height of a point, in rows: 900 cannot be; expected 1 to 200." in sent.text
    assert 'value="3"' in sent.text
    assert finding.counts(app.state.services.database) == (0, 0)


def test_colours_come_and_go_without_script(client):
    def colours(**asked):
        return client.get(address("start", start="rings", **asked)).text.count('type="color"')

    assert (colours(), colours(do="add"), colours(do="remove"), colours(colour=["#000000"] * 40)) == (2, 3, 1, 12)


def test_the_picture_is_of_what_the_address_says(client):
    def picture(**asked):
        answer = client.get(address("start_picture", start="rings", width=64, **asked))
        return answer.status_code, answer.content

    assert Image.open(BytesIO(picture()[1])).size == (64, 43)
    assert picture() == picture(around=8)
    assert picture()[1] != picture(rounds="A 5B")[1]
    assert picture(rounds="5Z")[0] == 422


def test_a_start_is_given_as_a_pattern_file(client):
    document = client.get("/api/starts/spiral?around=6&repeat=3A+2B&title=Winding").json()
    pattern = pattern_file.to_pattern(document)
    assert (pattern.title, pattern.around, pattern.chart) == ("Winding", 6, bytes([0, 0, 0, 1, 1]))
    assert client.post("/api/patterns", json=document).status_code == 201


def test_the_api_lists_what_each_start_asks_and_refuses_in_a_sentence(client):
    starts = client.get("/api/starts").json()["starts"]
    assert {start["key"]: list(start["asks"]) for start in starts} == {
        key: [ask.key for ask in start.asks] for key, start in STARTS.items()
    }
    refused = client.get("/api/starts/spiral?repeat=3")
    assert (refused.status_code, refused.json()["error"]["field"]) == (422, "repeat")
    assert client.get("/api/starts/polka").json()["error"]["message"].startswith("Start")


def test_symmetric_motifs_lists_and_small_repeats_are_given_over_http(client):
    motif = client.get("/api/starts/symmetric?around=8&group=pm&repeat=4&drawn=BAAB").json()
    assert motif["beads"] == "B 2A B"
    assert client.get("/api/starts/list?text=3A+2B&around=5").json()["beads"] == "2B 3A"
    found = client.get("/api/starts/repeats?around=6&length=4").json()
    assert found == {"repeats": ["3A B", "2A 2B", "A 3B"], "all": True}
    for asked, field in (("symmetric?drawn=Z", "drawn"), ("list?text=3", "text"), ("repeats?length=99", "length")):
        refused = client.get(f"/api/starts/{asked}")
        assert (refused.status_code, refused.json()["error"]["field"]) == (422, field)
