"""Letters of the booklet's fonts, drawn for a rope."""

from __future__ import annotations

import pytest

from engine.errors import EngineError
from webapp.pictures.lettering import GRAIN, drawn_letters


@pytest.mark.parametrize(
    ("face", "text"), [("sans", "H"), ("sans", "8"), ("serif", "H"), ("serif", "Ж"), ("serif", "Ω")]
)
def test_capitals_are_as_high_as_asked_for(face, text):
    drawn = drawn_letters(text, face, 10)
    assert abs(len(drawn.rows) - 10 * GRAIN) <= GRAIN
    assert any(max(row) == 255 for row in drawn.rows)


def test_a_letter_that_the_font_has_not_is_named():
    with pytest.raises(EngineError, match="The font has no “漢”"):
        drawn_letters("A漢", "sans", 10)


def test_a_space_is_ground():
    assert not any(map(any, drawn_letters(" ", "serif", 10).rows))


def test_a_start_in_letters_of_a_font_is_made_over_http(client):
    document = client.get("/api/starts/lettering?around=16&text=Rope&letters=serif&high=9").json()
    assert document["beads"].count("B") > 10
