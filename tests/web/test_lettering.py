"""Letters of the booklet's fonts, drawn for a rope."""

from __future__ import annotations

import pytest

from engine.errors import EngineError
from engine.pattern.notation import parse
from webapp.pictures.lettering import GRAIN, drawn_letters


@pytest.mark.parametrize(
    ("face", "letter"), [("sans", "H"), ("sans", "8"), ("serif", "H"), ("serif", "Ж"), ("serif", "Ω")]
)
def test_capitals_are_as_high_as_asked_for(face, letter):
    (drawn,) = drawn_letters((letter,), face, 10)
    assert abs(len(drawn.rows) - 10 * GRAIN) <= GRAIN
    assert any(max(row) == 255 for row in drawn.rows)


def test_letters_stand_on_one_line_each_as_wide_as_its_ink():
    mark, tail = drawn_letters(("É", "g"), "serif", 10)
    assert len(mark.rows) == len(tail.rows) > 12 * GRAIN
    assert any(mark.rows[0]) and not any(tail.rows[0])
    assert any(tail.rows[-1]) and not any(mark.rows[-1])
    for letter in (mark, tail):
        columns = list(zip(*letter.rows, strict=True))
        assert any(columns[0]) and any(columns[-1])


def test_a_letter_that_the_font_has_not_is_named():
    with pytest.raises(EngineError, match="The font has no “漢”"):
        drawn_letters(("A", "漢"), "sans", 10)


def test_a_start_in_letters_of_a_font_is_made_over_http(client):
    document = client.get("/api/starts/lettering?around=16&text=Rope&letters=serif&high=9").json()
    assert document["beads"].count("B") > 10


def test_letters_of_a_font_stand_as_far_apart_as_asked_for_in_the_hand_that_is_chosen(client):
    asked = "/api/starts/lettering?around=16&text=Rope&letters=serif&high=9&hand="
    right, left = (client.get(asked + hand).json() for hand in ("right", "left"))
    assert (right["hand"], left["hand"]) == ("right", "left")
    wider = client.get(f"{asked}left&spacing=6").json()
    assert len(parse(wider["beads"], "AB")) > len(parse(left["beads"], "AB")) == len(parse(right["beads"], "AB"))
