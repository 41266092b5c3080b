"""A mistake looked for on its page and over HTTP."""

from __future__ import annotations

import pytest

from tests.examples import harbour
from webapp.exchange import pattern_file
from webapp.pages.addresses import address


@pytest.fixture
def number(client):
    return client.post("/api/patterns", json=pattern_file.to_document(harbour())).json()["id"]


def strung(client, number) -> list[list]:
    return client.get(f"/api/patterns/{number}/stringing").json()["runs"]


def text_of(runs) -> str:
    return " ".join(f"{beads}{code}" for code, beads in runs)


def test_what_was_strung_right_fits_without_a_mistake(client, number):
    text = client.get(address("mistake", id=number, beads=text_of(strung(client, number)))).text
    assert "No mistake. It fits beads 1 to " in text


def test_a_bead_too_many_is_named_with_its_run_and_what_to_do(client, number):
    runs = strung(client, number)
    runs[2][1] += 1
    answer = client.get(f"/api/patterns/{number}/mistakes", params={"beads": text_of(runs)}).json()
    assert [(mistake["kind"], mistake["run"]) for mistake in answer["mistakes"]] == [("too many", 3)]
    page = client.get(address("mistake", id=number, beads=text_of(runs))).text
    assert answer["mistakes"][0]["words"] in page
    assert "eyes covered" in page


def test_what_cannot_be_read_or_fits_nowhere_is_said(client, number):
    assert "Line 1, column 1: there are no beads" in client.get(address("mistake", id=number, beads="3")).text
    text = client.get(address("mistake", id=number, beads="Z Y Z Y Z Y Z Y Z Y")).text
    assert "It fits nowhere in this pattern" in text
    refused = client.get(f"/api/patterns/{number}/mistakes?beads=3A")
    assert (refused.status_code, refused.json()["error"]["field"]) == (422, "stretch")
    assert client.get(f"/api/patterns/{number}/mistakes?beads=9A&read=knitted").status_code == 422


def test_a_thread_is_weighed(client, number):
    text = client.get(address("mistake", id=number, weighs="9")).text
    assert "and weighs 9.0 g: about" in text
    assert "is not what was weighed in grams" in client.get(address("mistake", id=number, weighs="much")).text


def test_the_list_and_the_desk_lead_to_it_with_their_size(client, number):
    desk = client.get(address("answers", pattern=number, length="20 cm")).text
    assert f'href="{address("mistake", id=number, length="20 cm").replace("&", "&amp;")}' in desk
    assert f'href="{address("mistake", id=number)}"' in client.get(address("stringing", id=number)).text
