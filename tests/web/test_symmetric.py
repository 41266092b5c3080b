"""Symmetric motifs as a page: groups that the lattice allows, a cell to draw in, a pattern that keeps its symmetry."""

from __future__ import annotations

import re
from html import unescape
from io import BytesIO

import pytest
from PIL import Image

from engine.pattern.starts.symmetry import symmetry_of
from webapp.pages.addresses import address
from webapp.storage import finding, patterns


def test_groups_that_this_number_around_has_are_offered_and_the_others_named(client):
    text = client.get(address("symmetric", around=5)).text
    assert "Glides both ways (pgg)" in text
    assert "p4, p4m, p4g, p31m, p3m1, p6m are not offered" in text
    assert "Not on this number around: p3, p6." in client.get(address("symmetric", around=17)).text


def test_a_bead_that_is_drawn_is_repeated_by_every_move(client, app):
    one = symmetry_of(8, "cmm", 80)
    drawn = "B" + "A" * (len(one.free) - 1)
    sent = {"around": "8", "group": "cmm", "repeat": "80", "drawn": drawn, "title": "Kites"}
    made = client.post(address("symmetric"), data=sent)
    assert made.headers["location"] == address("chart", id=1)
    pattern = patterns.load(app.state.services.database, 1).pattern
    assert [k for k, bead in enumerate(pattern.chart) if bead] == list(one.free[0])
    assert pattern.title == "Kites"


def test_the_cell_has_a_group_for_every_free_bead(client):
    text = client.get(address("symmetric", around=8, group="p3", repeat=73)).text
    assert all(f'class="free free-{number}"' in text for number in range(25))


def test_letters_too_few_are_filled_and_too_many_left_out(client):
    text = client.get(address("symmetric", around=8, group="pm", repeat=4, drawn="BCBCBCBC")).text
    assert 'name="drawn" type="text" value="BCBC"' in " ".join(text.split())
    assert 'value="BAAA"' in client.get(address("symmetric", around=8, group="pm", repeat=4, drawn="b")).text


def test_the_motif_is_shown_as_rope_and_as_ring(client):
    text = client.get(address("symmetric", around=8, group="pm", repeat=4, drawn="BAAB")).text
    rope, ring = (unescape(found).replace("720", "64") for found in re.findall(r'src="([^"]*picture.webp[^"]*)"', text))
    seen = [client.get(picture).content for picture in (rope, ring, rope.replace("BAAB", "BBAB"))]
    assert [Image.open(BytesIO(picture)).size for picture in seen] == [(64, 43)] * 3
    assert len(set(seen)) == 3
    assert client.get(rope.replace("BAAB", "Z")).status_code == 422


@pytest.mark.parametrize(
    ("sent", "sentence"),
    [
        ({"drawn": "AXZ"}, "“X” is not a bead of the palette; expected A, B, C."),
        ({"around": "99"}, "99 around does not work"),
        ({"repeat": "long"}, "“long” is not a whole number"),
        ({"around": "17", "group": "p6"}, "17 around has no repeat with the group p6; choose another group."),
    ],
)
def test_what_cannot_be_is_said_and_nothing_is_made(client, app, sent, sentence):
    answer = client.post(address("symmetric"), data=sent)
    assert answer.status_code == 422
    assert sentence in answer.text
    assert finding.counts(app.state.services.database) == (0, 0)
