"""The whole piece over HTTP: how parts lie in a size, as the engine lays them."""

from __future__ import annotations

import pytest

from engine.counting.options import read_question
from engine.counting.sizes import size
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from tests.pictures import palette
from webapp.exchange import pattern_file

MOTIF = Pattern(
    "Heron at dusk",
    8,
    palette("ABC"),
    in_parts=(
        Part("Left", bytes([0, 0, 0, 1] * 17), None),
        Part("Heron", bytes([1, 1, 2] * 34), 3),
        Part("Tail", b"\2"),
    ),
)


@pytest.fixture
def number(client):
    return client.post("/api/patterns", json=pattern_file.to_document(MOTIF)).json()["id"]


def test_parts_lie_as_the_engine_lays_them(client, number):
    answer = client.get(f"/api/patterns/{number}/piece?length=20+cm&closure=clasp").json()
    sized = size(MOTIF, read_question({"length": "20 cm", "closure": "clasp"}))
    assert (answer["beads"], answer["rope_mm"], answer["closes"]) == (sized.beads, sized.rope_mm, sized.closes)
    assert [(part["name"], part["first"], part["beads"]) for part in answer["parts"]] == [
        (laid.part.name, laid.first, laid.beads) for laid in sized.laid
    ]
    left = sized.laid[0]
    begins = answer["parts"][0]["begins"]
    assert left.worked == (left.part.beads * 99)[begins : begins + left.beads]


def test_a_seam_is_told_in_beads_degrees_rounds_and_words(client, number):
    answer = client.get(f"/api/patterns/{number}/piece").json()
    assert [part["seam"] and part["seam"]["beads"] for part in answer["parts"]] == [None, 0.0, 0.0]
    turned = client.get(f"/api/patterns/{number}/piece?length=20+cm&closure=clasp").json()["parts"][1]
    assert turned["seam"]["words"].startswith("turned by ")
    assert (turned["first"] + turned["seam"]["more"] * 8) * 2 % 17 == 0


def test_a_length_that_cannot_be_is_refused_in_a_sentence(client, number):
    refused = client.get(f"/api/patterns/{number}/piece?length=1+cm")
    assert (refused.status_code, refused.json()["error"]["field"]) == (422, "length")
