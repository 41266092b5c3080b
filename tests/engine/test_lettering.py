"""Words on a rope: in pixel letters and letters of a font, along it and upright."""

from __future__ import annotations

import pytest

from engine.errors import EngineError
from engine.pattern.chart import Chart
from engine.pattern.starts.all import STARTS, stands_straight
from engine.pattern.starts.bitmap import Bitmap
from engine.pattern.starts.pixel_letters import HIGH, PIXELS, pixels
from tests.pictures import assert_same_chart

LETTERING = STARTS["lettering"]


def test_upright_letters_stand_over_one_another_the_first_on_top() -> None:
    beads = LETTERING.beads(6, "AB", {"text": "HI", "way": "upright", "gap": "1"})
    assert_same_chart(
        6,
        beads,
        """
     A A A A A A
    B A B A A A A
     B A B A A A
    B B B A A A A
     B A B A A A
    B A B A A A A
     A A A A A A
    A B A A A A A
     A B A A A A
    A B A A A A A
     A B A A A A
    A B A A A A A
""",
    )


def test_along_the_rope_a_column_of_a_letter_is_a_row() -> None:
    beads = LETTERING.beads(6, "AB", {"text": "LI", "gap": "1"})
    rows = [Chart(6, beads).row(row) for row in range(6)]
    assert [row[:5] for row in rows] == [
        bytes([1, 1, 1, 1, 1]),
        bytes([0, 0, 0, 0, 1]),
        bytes([0, 0, 0, 0, 1]),
        bytes(5),
        bytes([1, 1, 1, 1, 1]),
        bytes(5),
    ]


def test_marks_take_a_row_above_and_other_scripts_their_own_letters() -> None:
    assert pixels("é") == ("..X", "XXX", "X..", "XX.", "X..", "XXX")
    assert pixels("Ж") == (".....", *PIXELS["Ж"])
    assert pixels("Α") == pixels("А") == pixels("A")
    assert pixels("漢") is None
    assert {len(rows) for rows in PIXELS.values()} == {HIGH}


def test_letters_of_a_font_are_sampled_where_beads_lie() -> None:
    """A bitmap that is inked in its upper half: on the lying chart, beads of the first places are of the letter."""
    half = Bitmap((bytes([255] * 40),) * 32 + (bytes(40),) * 32, 8)
    beads = LETTERING.beads(8, "AB", {"text": "x", "letters": "sans", "high": "8", "gap": "0"}, lambda *asked: half)
    assert [Chart(8, beads).row(row)[:8] for row in (0, 2)] == [bytes([1, 1, 1, 1, 0, 0, 0, 0])] * 2


def test_words_stand_straight_along_the_rope() -> None:
    assert stands_straight(7, LETTERING.beads(7, "AB", {"text": "Über"}))


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ({"text": "漢"}, "text", "“漢” is not among the pixel letters; take letters of a font."),
        ({"high": "9"}, "high", "Letters 9 beads high find no room on a rope of 6 around."),
        ({"text": "W" * 61}, "text", "Words: 61 letters are too many; at most 60 are read."),
        ({"letters": "gothic"}, "letters", "Letters: “gothic” is not known here; expected one of pixel, sans, serif."),
        ({"text": "Щ", "way": "upright", "high": "5"}, "text", ""),
    ],
)
def test_what_cannot_be_lettered_is_refused(typed, field: str, sentence: str) -> None:
    around = 5 if not sentence else 6
    with pytest.raises(EngineError) as refused:
        LETTERING.beads(around, "AB", typed)
    assert refused.value.field == field
    assert not sentence or refused.value.message == sentence


def test_letters_that_are_too_small_or_out_of_sight_are_said() -> None:
    typed = {ask.key: ask.usual for ask in LETTERING.asks}
    assert LETTERING.note(12, typed) == ""
    assert "About 4 beads are seen from one side" in LETTERING.note(8, typed)
    assert "hard to read" in LETTERING.note(20, {**typed, "letters": "serif"})
