"""Parts as rows of the editor of words and beads: made of a chart, moved, taken away, read and refused by row."""

from dataclasses import replace

import pytest

from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from tests.pictures import palette
from webapp.pages.forms.editor import editor_of, read_editor
from webapp.pages.forms.parts import TypedPart
from webapp.pages.views.editor import check_part
from webapp.storage import patterns

PARTED = Pattern(
    "Front",
    6,
    palette("AB"),
    in_parts=(Part("Rope", b"\0\0\1", None), Part("Focal", b"\1" * 9, 2), Part("Rope", b"\0\0\1", None)),
)
PALETTE = [("bead_code", "A"), ("bead_code", "B"), ("bead_name", "Sea glass"), ("bead_name", "Candle")]
WORDS = [("title", "Front"), ("around", "6"), *PALETTE]


def rows(*parts):
    return [
        (f"part_{field}", value)
        for part in parts
        for field, value in zip(("name", "times", "beads"), part, strict=True)
    ]


def test_a_pattern_in_parts_fills_the_rows_and_comes_back_the_same(database):
    typed = editor_of(patterns.create(database, PARTED)).typed
    assert typed.parts == (
        TypedPart("Rope", "fill", "2A B"),
        TypedPart("Focal", "2", "9B"),
        TypedPart("Rope", "fill", "2A B"),
    )
    sent = rows(*((part.name, part.times, part.beads) for part in typed.parts))
    assert read_editor([*WORDS, *sent]).pattern.parts == PARTED.parts


def test_start_chart_and_end_become_parts_when_that_is_pressed():
    typed = read_editor([*WORDS, ("beads", "2A B"), ("start", "3B"), ("end", ""), ("add_part", "row")]).typed
    assert typed.parts == (TypedPart("Start", "1", "3B"), TypedPart("Chart", "fill", "2A B"))
    assert read_editor([("add_part", "row")]).typed.parts == (TypedPart("Chart", "fill", ""),)


@pytest.mark.parametrize(
    ("pressed", "names"),
    [
        (("add_part", "row"), ["Head", "Rope", ""]),
        (("move_part", "1"), ["Rope", "Head"]),
        (("move_part", "0"), ["Head", "Rope"]),
        (("remove_part", "0"), ["Rope"]),
        (("remove_part", "7"), ["Head", "Rope"]),
        (("remove_part", "9" * 5000), ["Head", "Rope"]),
    ],
)
def test_rows_are_added_moved_and_taken_away(pressed, names):
    sent = rows(("Head", "1", "3A"), ("Rope", "fill", "2A B"))
    form = read_editor([*WORDS, *sent, pressed])
    assert [part.name for part in form.typed.parts] == names
    assert (form.asked, form.pattern) == ("rows", None)


@pytest.mark.parametrize(
    ("part", "field", "sentence"),
    [
        (("Focal", "often", "3A"), "parts.1.times", "“often” is not a number of times; write 1 to 1,000, or “fill”."),
        (("Focal", "0", "3A"), "parts.1.times", "Part 2 “Focal” is worked 0 times; expected 1 to 1,000, or “fill”."),
        (("Focal", "2", ""), "parts.1.beads", "Part 2 “Focal” has no beads; a part has at least one."),
        (("", "2", "3A"), "parts.1.name", "The name of part 2 is empty; expected 1 to 40 characters."),
        (
            ("Focal", "2", "3Q"),
            "parts.1.beads",
            "Line 1, column 2: “Q” is not a code of the palette; expected one of A, B.",
        ),
    ],
)
def test_what_is_wrong_with_a_part_stands_at_its_row(part, field, sentence):
    form = read_editor([*WORDS, *rows(("Rope", "fill", "2A B"), part)])
    assert (form.pattern, form.errors) == (None, {field: sentence})


def test_parts_may_be_written_in_stringing_order_or_in_rows():
    strung = read_editor([*WORDS, ("written", "strung"), *rows(("Rope", "fill", "2A B"))])
    assert strung.pattern.parts == (Part("Rope", b"\1\0\0", None),)
    drawn = read_editor([*WORDS, ("written", "rows"), *rows(("Rope", "fill", "A B\nA A A A A A B"))])
    assert drawn.pattern.parts == (Part("Rope", bytes([0, 0, 0, 0, 0, 0, 1, 0, 1]), None),)


def test_while_one_types_the_parts_are_told():
    check = check_part(read_editor([*WORDS, *rows(("Rope", "fill", "2A B"), ("Focal", "2", "9B"))]))
    assert check.sentence == (
        "2 parts, 12 beads drawn. “Rope”: 3 beads, 0.5 rounds, repeat 3 beads, drift +3 beads. "
        "A ring closes after whole passes, the seam joins the last part to the first."
    )
    assert [beads for _, beads in check.signs] == [2, 10]


def test_the_page_shows_the_rows_and_keeps_what_was_typed(client, database):
    number = patterns.create(database, PARTED).id
    page = client.get(f"/patterns/{number}/edit").text
    assert page.count("<legend") >= 3 and 'id="part-2-times"' in page
    wrong = client.post(
        f"/patterns/{number}/edit", data={"title": "Front", "around": "6", "part_name": "Solo", "part_times": "no"}
    )
    assert wrong.status_code == 422
    assert 'value="Solo"' in wrong.text and "is not a number of times" in wrong.text
    assert patterns.load(database, number).pattern == PARTED


def test_a_pattern_that_is_drawn_as_one_chart_may_be_saved_in_parts(client, database):
    number = patterns.create(database, replace(PARTED, in_parts=(), chart=b"\0\1")).id
    sent = {
        "title": "Front",
        "around": "6",
        "made_from": "1",
        "bead_code": ["A", "B"],
        "bead_name": ["Sea glass", "Candle"],
        "part_name": ["Head", "Rope"],
        "part_times": ["2", "fill"],
        "part_beads": ["3A", "A B"],
    }
    assert client.post(f"/patterns/{number}/edit", data=sent).status_code == 303
    assert patterns.load(database, number).pattern.parts == (Part("Head", b"\0\0\0", 2), Part("Rope", b"\0\1", None))
