"""A picture laid round the rope, from the file to the chart, over HTTP."""

from __future__ import annotations

from io import BytesIO

import pytest
from PIL import Image

from engine.cabinet.bead import Bead
from webapp.pages.addresses import address
from webapp.storage import beads, finding, patterns


def a_flag() -> bytes:
    """Three bands, one over the other."""
    picture, out = Image.new("RGB", (120, 60), "#2f7f76"), BytesIO()
    picture.paste("#f3ecdd", (0, 20, 120, 40))
    picture.paste("#a83a2c", (0, 40, 120, 60))
    picture.save(out, "PNG")
    return out.getvalue()


@pytest.fixture
def token(client) -> str:
    sent = client.post(address("photograph_new"), files={"picture": ("flag.png", a_flag(), "image/png")})
    assert sent.status_code == 303
    return sent.headers["location"].rpartition("/")[2]


def test_the_ways_to_begin_lead_there(client):
    assert f'href="{address("photograph_new")}"' in client.get(address("begin")).text
    assert 'type="file"' in client.get(address("photograph_new")).text


@pytest.mark.parametrize(
    ("files", "sentence"),
    [
        ({"picture": ("notes.txt", b"no picture", "text/plain")}, "“notes.txt” cannot be read as a picture"),
        ({}, "Choose a picture first: a JPEG, PNG or WebP file."),
    ],
)
def test_what_is_no_picture_is_refused_in_a_sentence(client, files, sentence):
    refused = client.post(address("photograph_new"), files=files, data={"any": "thing"})
    assert refused.status_code == 422
    assert sentence in refused.text


def test_its_chart_follows_what_is_asked(client, token):
    text = client.get(address("photograph_start", token=token, around=12, many=3)).text
    assert "350 beads in 28 rows, 12 around. It stands straight along the rope." in text
    assert text.count('class="bead') >= 3
    assert "1,250 beads in 100 rows" in client.get(address("photograph_start", token=token, around=12, rows=100)).text


def test_what_is_wrong_is_said_at_its_field_and_nothing_typed_is_lost(client, app, token):
    sent = client.post(
        address("photograph_start", token=token),
        data={"around": "two", "title": "Flag", "left": "60", "right": "40", "tilt": "-90", "many": "99"},
    )
    assert sent.status_code == 422
    for sentence in (
        "“two” is not",
        "Straighten: -90 is too much",
        "How many colours: 99 cannot be; expected 1 to 24.",
    ):
        assert sentence in sent.text
    assert 'value="Flag"' in sent.text and 'value="60"' in sent.text
    assert finding.counts(app.state.services.database) == (0, 0)


def test_what_is_seen_becomes_a_pattern_and_opens_in_the_chart(client, app, token):
    asked = {"around": "12", "many": "3", "title": "Flag", "right": "50", "kind": "8/0 round"}
    made = client.post(address("photograph_start", token=token), data=asked)
    assert (made.status_code, made.headers["location"]) == (303, address("chart", id=1))
    pattern = patterns.load(app.state.services.database, 1).pattern
    assert (pattern.title, pattern.around, len(pattern.chart)) == ("Flag", 12, 175)
    assert {entry.colour for entry in pattern.palette} == {"#2f7f76", "#f3ecdd", "#a83a2c"}
    assert {entry.kind for entry in pattern.palette} == {"8/0 round"}


def test_colours_come_from_the_cabinet_where_there_is_one(client, app, token):
    where = address("photograph_start", token=token, source="cabinet", many=3, around=12)
    assert "There are no beads in your cabinet yet" in client.get(where).text
    database = app.state.services.database
    for name, colour in (("Pine", "#2a7a70"), ("Milk", "#f0ebe0"), ("Rust", "#a0402f"), ("Night", "#101020")):
        beads.add(database, Bead(name, colour))
    client.post(address("photograph_start", token=token), data={"source": "cabinet", "many": "3", "around": "12"})
    palette = patterns.load(database, 1).pattern.palette
    assert {entry.name for entry in palette} == {"Pine", "Milk", "Rust"}
    assert all(entry.bead for entry in palette)


def test_pictures_of_it_are_of_what_the_address_says(client, token):
    def picture(name: str, **asked: object) -> Image.Image:
        answer = client.get(address(name, token=token, **asked))
        assert answer.headers["content-type"] in ("image/webp", "image/png")
        return Image.open(BytesIO(answer.content))

    assert picture("photograph_shown").size == (120, 60)
    assert picture("photograph_shown", turn=90).size == (60, 120)
    assert picture("photograph_shown", right=50, bottom=50).size == (60, 30)
    chart = picture("photograph_chart", around=12, many=3).convert("RGB")
    third = chart.height // 3
    near = [chart.getpixel((chart.width // 2 + 3, third * place + third // 2))[0] for place in range(3)]
    assert near == [0x2F, 0xF3, 0xA8]
    assert picture("photograph_rope", around=12, width=64).size == (64, 26)


def test_a_picture_that_went_is_asked_for_once_more(client):
    gone = client.get(address("photograph_start", token="0" * 32))
    assert gone.status_code == 422
    assert "That picture is not kept any more; hand it in once more." in gone.text


def test_a_picture_is_given_back_as_a_pattern_file(client):
    document = client.post("/api/starts/photograph?around=12&many=3&title=Flag", content=a_flag()).json()
    assert (document["title"], document["around"], len(document["palette"])) == ("Flag", 12, 3)
    assert client.post("/api/patterns", json=document).status_code == 201
    refused = client.post("/api/starts/photograph?contrast=900", content=a_flag())
    assert (refused.status_code, refused.json()["error"]["field"]) == (422, "contrast")
    assert (
        "cannot be read as a picture" in client.post("/api/starts/photograph", content=b"x").json()["error"]["message"]
    )
