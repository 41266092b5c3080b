"""Words on a rope: in pixel letters and letters of a font, along it and upright."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.drawing.charts import cells
from engine.errors import EngineError
from engine.pattern.chart import Chart
from engine.pattern.pattern import Pattern, keep_the_picture, left_handed
from engine.pattern.starts.all import STARTS, stands_straight
from engine.pattern.starts.bitmap import Bitmap
from engine.pattern.starts.lettering import written
from engine.pattern.starts.pixel_letters import HIGH, PIXELS, pixels
from tests.pictures import assert_same_chart
from webapp.pages.forms.starts import read_start

LETTERING = STARTS["lettering"]


def test_upright_letters_stand_over_one_another_the_first_on_top() -> None:
    beads = LETTERING.beads(6, "AB", {"text": "HI", "way": "upright", "gap": "1"})
    assert_same_chart(
        6,
        beads,
        """
     A A A A A A
    A B A B A A A
     A B A B A A
    A B B B A A A
     A B A B A A
    A B A B A A A
     A A A A A A
    A A B A A A A
     A A B A A A
    A A B A A A A
     A A B A A A
    A A B A A A A
""",
    )


def made(around: int, **typed: str) -> Pattern:
    """The pattern of that form, in pixel letters."""
    pattern = read_start(LETTERING, {"around": str(around), **typed}.items()).pattern
    assert pattern
    return pattern


def seen(pattern: Pattern) -> list[tuple[float, float, int]]:
    """Where beads lie on the drawn chart, and their colours."""
    return sorted((round(cell.x, 6), round(cell.y, 6), cell.entry) for cell in cells(pattern, 0, None, 1.0, True))


def test_words_worked_with_the_left_hand_read_as_those_of_the_right_one() -> None:
    right = made(9, text="Fé", hand="right")
    left = made(9, text="Fé", hand="left")
    assert (right.hand, left.hand) == ("right", "left")
    assert left.chart != right.chart
    assert seen(left) == seen(right)
    assert left_handed(right) != left == keep_the_picture(right)


@given(
    words=st.lists(st.text("ABЖΩé7", min_size=1, max_size=3), min_size=1, max_size=3),
    spacing=st.integers(0, 5),
    between=st.integers(0, 9),
)
@settings(max_examples=20)
def test_letters_and_words_stand_as_far_apart_as_asked_for(words: list[str], spacing: int, between: int) -> None:
    """The ink that one sees along the rope is that of the letters and of the gaps between them."""
    drawn = written(
        LETTERING.answers("AB", {"text": " ".join(words), "spacing": str(spacing), "between_words": str(between)}),
        upright=False,
        letters=None,
    )
    letters = [letter for word in words for letter in word]
    wide = sum(len(pixels(letter)[0]) for letter in letters)  # type: ignore[index]
    assert drawn.wide == wide + spacing * (len(letters) - len(words)) + between * (len(words) - 1)


def test_upright_letters_stand_as_far_apart_too() -> None:
    def rows(**typed: str) -> int:
        return len(written(LETTERING.answers("AB", {"text": "I L I", **typed}), upright=True, letters=None).rows)

    assert (rows(between_words="0"), rows(between_words="2"), rows()) == (15, 19, 23)


def test_pixel_letters_are_made_larger_by_whole_beads() -> None:
    small, large = (
        written(LETTERING.answers("AB", {"text": "R", "high": high}), upright=False, letters=None).rows
        for high in ("5", "13")
    )
    assert large == tuple(bytes(bead for bead in row for _ in "ab") for row in small for _ in "ab")


@pytest.mark.parametrize(
    "letters",
    [
        "àâäáãåæçèéêëìíîïñòóôöõøœùúûüýÿßðþąćęłńśźżčďěňřšťůžőűășțşğıİľŕđāēīōūģķļņŗėįų",
        "абвгдеёжзийклмнопрстуфхцчшщъыьэюяґєіїўђћљњџјѓќѕ",
        "αβγδεζηθικλμνξοπρσςτυφχψωάέήίόύώϊϋΐ",
        "0123456789.,:;!?-+&'’–/()=*♥",
    ],
)
def test_every_letter_that_is_promised_is_drawn(letters: str) -> None:
    assert [letter for letter in letters if pixels(letter) is None] == []


def test_along_the_rope_a_column_of_a_letter_is_a_row() -> None:
    beads = LETTERING.beads(6, "AB", {"text": "LI", "gap": "1"})
    rows = [Chart(6, beads).row(row) for row in range(6)]
    assert [row[:5] for row in rows] == [  # in the middle, as far as five rows on six beads can be
        bytes([1, 1, 1, 1, 1]),
        bytes([0, 0, 0, 0, 1]),
        bytes([0, 0, 0, 0, 1]),
        bytes(5),
        bytes([1, 1, 1, 1, 1]),
        bytes(5),
    ]


def test_marks_take_rows_above_and_below_and_other_scripts_their_own_letters() -> None:
    assert pixels("é") == ("..X", "XXX", "X..", "XX.", "X..", "XXX", "...")
    assert pixels("ç") == ("...", ".XX", "X..", "X..", "X..", ".XX", "..X")
    assert pixels("ï") == ("X.X", *[".X."] * 5, "...")
    assert pixels("Ж") == (".....", *PIXELS["Ж"], ".....")
    assert pixels("Α") == pixels("А") == pixels("A")
    assert pixels("漢") is pixels("ả") is None
    assert {len(rows) for rows in PIXELS.values()} == {HIGH}


def test_letters_of_a_font_are_sampled_where_beads_lie() -> None:
    """A bitmap that is inked in its upper half: on the lying chart, beads of the first places are of the letter."""
    half = Bitmap((bytes([255] * 40),) * 32 + (bytes(40),) * 32, 8)
    beads = LETTERING.beads(8, "AB", {"text": "x", "letters": "sans", "high": "8", "gap": "0"}, lambda *asked: (half,))
    assert [Chart(8, beads).row(row)[:8] for row in (0, 2)] == [bytes([1, 1, 1, 1, 0, 0, 0, 0])] * 2


def test_words_stand_straight_along_the_rope() -> None:
    assert stands_straight(7, LETTERING.beads(7, "AB", {"text": "Über"}))


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ({"text": "漢"}, "text", "“漢” is not among the pixel letters; take letters of a font."),
        ({"high": "9"}, "high", "Letters 9 beads high find no room on a rope of 6 around."),
        ({"text": "W" * 61}, "text", "Words: 61 letters are too many; at most 60 are read."),
        ({"text": "Éç"}, "text", "The letters are 7 beads high with their marks and tails; the rope is 6 around."),
        ({"hand": "both"}, "hand", "Worked with: “both” is not known here; expected one of right, left."),
        ({"text": " "}, "text", "There are no words; write a letter or more."),
        ({"spacing": "41"}, "spacing", "Between letters, in beads: 41 cannot be; expected 0 to 40."),
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
    assert "drawn 5 beads high" in LETTERING.note(20, {**typed, "high": "9"})
    assert "the words come out mirrored" in LETTERING.note(12, {**typed, "hand": "left"})
