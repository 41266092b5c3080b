"""The cabinet's pages: beads entered, changed, copied, archived, taken in from a table, and coloured from photographs."""

from __future__ import annotations

import csv
import io
import re
from io import BytesIO

import pytest
from PIL import Image

from engine.cabinet.bead import Bead
from tests.conftest import flat
from webapp.demo import demo_beads
from webapp.storage import beads

SENT = {
    "name": "Dusk",
    "colour": "#4A4466",
    "kind": "11/0 round",
    "finish": "matte",
    "maker_code": "LS-12",
    "supplier": "Pier Nine",
    "pack": "20",
    "price": "3,50",
    "currency": "EUR",
    "stock": "12.5",
    "note": "Left of\r\nthe lamps.",
}
KEPT = Bead(
    name="Dusk",
    colour="#4a4466",
    finish="matte",
    maker_code="LS-12",
    supplier="Pier Nine",
    pack_mg=20_000,
    price=350,
    currency="EUR",
    stock_mg=12_500,
    note="Left of\nthe lamps.",
)


@pytest.fixture
def library(app):
    return app.state.services.database


@pytest.fixture
def dusk(client):
    """The address of the bead that was entered."""
    made = client.post("/beads/new", data=SENT)
    assert made.status_code == 303
    return made.headers["location"].partition("?")[0]


def only(library):
    (kept,) = beads.everything(library).values()
    return kept


def without_key(bead):
    return {**vars(bead), "key": ""}


def photograph(size=(400, 200), left="#2f7f76", right="#b23a30"):
    """A photograph of two colours side by side."""
    picture, out = Image.new("RGB", size, left), BytesIO()
    picture.paste(right, (size[0] // 2, 0, *size))
    picture.save(out, "PNG")
    return out.getvalue()


def test_a_bead_is_entered_and_found(client, library, dusk):
    assert without_key(only(library).bead) == vars(KEPT)
    shown = flat(client.get("/beads").text)
    for words in ("Dusk", "11/0 round · matte", "LS-12 · Pier Nine", "20 g · €3.50", "12.5 g"):
        assert words in shown
    assert "Dusk" in client.get("/beads?search=pier+dusk").text
    assert "No bead fits this search" in client.get("/beads?search=harbour").text


def test_what_is_typed_wrong_stays_with_its_sentence(client, library):
    shown = client.post("/beads/new", data={**SENT, "price": "cheap", "stock": "-3", "name": ""})
    assert shown.status_code == 422
    assert "“cheap” is not a price; write it such as 3.50, without a sign." in shown.text
    assert "“-3” is not a stock in grams; write a number such as 12.5." in shown.text
    assert 'value="cheap"' in shown.text
    assert not beads.everything(library)


def test_a_bead_is_changed_and_archived_and_taken_back(client, library, dusk):
    client.post(dusk, data={**SENT, "stock": "9"})
    assert only(library).bead.stock_mg == 9_000
    client.post(dusk.replace("edit", "archive"))
    assert "The cabinet is empty" not in client.get("/beads").text
    assert "Dusk" in client.get("/beads?archived=yes").text
    assert "Dusk" not in client.get("/beads").text
    client.post(dusk.replace("edit", "take-back"))
    assert "Dusk" in client.get("/beads").text
    assert client.post(dusk.replace("edit", "remove")).status_code >= 400
    client.post(dusk.replace("edit", "archive"))
    assert client.post(dusk.replace("edit", "remove")).status_code == 303
    assert "The cabinet is empty" in client.get("/beads").text


def test_a_copy_begins_with_everything_but_the_stock(client, dusk):
    key = dusk.split("/")[2]
    shown = client.get(f"/beads/new?copy={key}").text
    assert 'value="Dusk, another"' in shown and 'value="3.50"' in shown
    assert 'id="stock" name="stock" type="text" value=""' in flat(shown)
    assert client.get("/beads/new?copy=none").status_code == 404


def test_a_changed_bead_says_that_patterns_follow(client, library, dusk, document):
    entry = {**document["palette"][0], "name": "Dusk", "colour": "#4a4466", "bead": dusk.split("/")[2]}
    client.post("/api/patterns", json={**document, "palette": [entry, *document["palette"][1:]]}).raise_for_status()
    assert "Small harbour" in client.get(dusk).text
    assert "bead-followed" in client.post(dusk, data={**SENT, "colour": "#4b4567"}).headers["location"]
    assert client.get("/api/patterns/1").json()["palette"][0]["colour"] == "#4b4567"


def test_a_colour_is_taken_where_the_photograph_is_clicked(client, library, dusk):
    sample = dusk.replace("edit", "colour")
    assert client.post(sample, data={"at.x": "80", "at.y": "80"}).status_code == 404
    sent = client.post(dusk.replace("edit", "picture"), files=[("picture", ("two.png", photograph()))])
    assert sent.headers["location"].endswith("bead-picture")
    taken = {
        place: client.post(sample, data={"at.x": str(place), "at.y": "80", "area": "small"}).headers["location"]
        for place in (80, 240)
    }
    colours = {place: re.search(r"sampled=%23([0-9a-f]{6})", where)[1] for place, where in taken.items()}
    near = {80: (0x2F, 0x7F, 0x76), 240: (0xB2, 0x3A, 0x30)}
    for place, colour in colours.items():
        parts = [int(colour[at : at + 2], 16) for at in (0, 2, 4)]
        assert max(abs(part - wanted) for part, wanted in zip(parts, near[place], strict=True)) <= 2
    shown = client.get(taken[80]).text
    assert f"#{colours[80]}. It counts once you save the bead." in flat(shown)
    assert only(library).bead.colour == "#4a4466"


def test_without_a_pointer_the_place_is_typed_in_percent(client, dusk):
    client.post(dusk.replace("edit", "picture"), files=[("picture", ("two.png", photograph()))])
    typed = {"typed": "yes", "at.x": "0", "at.y": "0", "across": "75", "down": "50", "area": "small"}
    where = client.post(dusk.replace("edit", "colour"), data=typed).headers["location"]
    assert re.search(r"sampled=%23b[0-9a-f]{5}", where)
    for across in ("120", "1" + "0" * 5000, "-1"):
        wrong = client.post(dusk.replace("edit", "colour"), data={**typed, "across": across})
        assert wrong.status_code == 422
        assert "Give the place in whole percent, 0 to 100" in wrong.text


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"not a picture", "“odd.png” cannot be read as a picture"),
        (photograph((9, 9)), "“odd.png” is 9 × 9 pixels; that is too small. At least 16 each way are wanted."),
    ],
)
def test_a_file_that_is_no_photograph_is_refused_in_a_sentence(client, dusk, data, sentence):
    refused = client.post(dusk.replace("edit", "picture"), files=[("picture", ("odd.png", data))])
    assert refused.status_code == 422
    assert sentence in refused.text
    assert client.get(dusk.replace("edit", "picture.jpg")).status_code == 404


def test_the_demo_beads_are_twelve_of_an_invented_shop(client, library):
    assert client.post("/beads/demo").status_code == 303
    kept = [kept.bead for kept in beads.everything(library).values()]
    assert len(kept) == len(demo_beads()) == 12
    assert {bead.supplier for bead in kept} == {"Pier Nine Supplies"}


# tables


def look(client, text):
    return client.post("/beads/import", files=[("file", ("beads.csv", text.encode()))])


def test_a_table_is_looked_at_first_and_then_taken_in(client, library, dusk):
    text = client.get("/beads.csv").text.replace("12.5", "30") + ",Dawn,#f0c0c0,,,,,,,,,\r\nx,Lost,#000000\r\n"
    shown = look(client, text)
    assert "1 bead is new, 1 changed, 0 here as they are, 1 row not taken." in flat(shown.text)
    assert "stock 12.5 g → 30 g" in shown.text
    assert "The row has 3 cells where the first row has 12." in shown.text
    assert only(library).bead.stock_mg == 12_500
    table = re.search(r'name="table" value="([^"]*)"', shown.text)[1]
    assert "Dawn" in table
    assert client.post("/beads/import/take", data={"table": text}).headers["location"] == "/beads?said=beads-taken"
    assert {kept.bead.name: kept.bead.stock_mg for kept in beads.everything(library).values()} == {
        "Dusk": 30_000,
        "Dawn": 0,
    }


def test_the_same_table_a_second_time_changes_nothing(client, library, dusk):
    text = "name,colour,stock_grams\r\nDawn,#f0c0c0,5\r\n"
    client.post("/beads/import/take", data={"table": text})
    before = beads.everything(library)
    shown = look(client, text)
    assert "There is nothing to import." in shown.text
    assert client.post("/beads/import/take", data={"table": text}).headers["location"] == "/beads?said=beads-same"
    assert beads.everything(library) == before


def test_the_table_that_goes_out_holds_what_was_found_and_comes_in_as_the_same(client, dusk):
    client.post("/beads/demo")
    rows = list(csv.DictReader(io.StringIO(client.get("/beads.csv?search=dusk").text)))
    assert [row["name"] for row in rows] == ["Dusk"]
    everything = client.get("/beads.csv").text
    assert "0 beads are new, 0 changed, 13 here as they are." in flat(look(client, everything).text)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("kind\n11/0 round\n", "The first row names no column “name”"),
        ("", "The first row names no column “name”"),
    ],
)
def test_a_table_that_cannot_be_read_is_refused_in_a_sentence(client, text, sentence):
    refused = look(client, text)
    assert refused.status_code == 422
    assert sentence in refused.text
    assert client.post("/beads/import/take", data={"table": text}).status_code == 422


def test_no_file_and_one_that_is_too_large_are_answered_in_a_sentence(client):
    assert "Choose a file first." in client.post("/beads/import", files=[("file", ("", b""))]).text
    large = look(client, "name,colour\n" + "x" * 6_000_000)
    assert "The table is larger than 5 MB" in large.text
    assert look(client, "x" * 30_000_000).status_code == 413


def test_a_cabinet_of_more_beads_than_a_page_holds_is_turned_forth_and_back(client):
    for number in range(61):
        assert client.post("/beads/new", data={**SENT, "name": f"Dusk {number:02}"}).status_code == 303
    first, last = (client.get("/beads", params={"page": page}).text for page in (1, 2))
    assert "Page 1 of 2" in first
    assert "Page 2 of 2" in last
    assert re.findall(r'rel="(prev|next)">([^<]+)', first) == [("next", "Next page")]
    assert re.findall(r'rel="(prev|next)">([^<]+)', last) == [("prev", "Page before")]
