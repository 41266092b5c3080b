"""Parts of a rope: what is a part, what is none, and which form a pattern keeps."""

import pytest

from engine.errors import EngineError
from engine.pattern.part import Part, quoted, short_form
from engine.pattern.pattern import Pattern, keep_the_picture
from tests.pictures import palette

ROPE, FOCAL = Part("Rope", b"\0\1", None), Part("Focal", b"\2\2\3", 2)


def in_parts(*parts, **words):
    return Pattern(**{"title": "Trial", "around": 6, "palette": palette(), "in_parts": parts, **words})


def test_the_short_form_is_start_once_a_chart_that_fills_and_end_once():
    assert short_form(b"\0", b"\1\2", b"\3") == (Part("Start", b"\0"), Part("Chart", b"\1\2", None), Part("End", b"\3"))
    assert short_form(b"", b"\1\2", b"") == (Part("Chart", b"\1\2", None),)


def test_a_pattern_in_parts_knows_what_is_drawn_what_is_fixed_and_what_fills():
    pattern = in_parts(ROPE, FOCAL, ROPE)
    assert (pattern.beads, pattern.fixed_beads) == (7, 6)
    assert (pattern.fills, pattern.fixed, pattern.main) == ((ROPE, ROPE), (FOCAL,), ROPE)


def test_without_a_part_that_fills_the_one_of_most_beads_stands_for_the_pattern():
    assert in_parts(Part("Head", b"\0"), FOCAL).main == FOCAL


def test_keeping_the_picture_turns_the_rows_of_every_part_from_its_own_first_bead():
    kept = keep_the_picture(in_parts(Part("Rope", bytes([0, 1, 2, 3, 0, 1, 2, 3]), None), FOCAL, around=3))
    assert [part.beads for part in kept.parts] == [bytes([3, 2, 1, 0, 2, 1, 0, 3]), b"\3\2\2"]
    assert [(part.name, part.times) for part in kept.parts] == [("Rope", None), ("Focal", 2)]


def test_names_stand_in_a_row():
    assert quoted([ROPE, FOCAL, ROPE]) == "“Rope”, “Focal” and “Rope”"


@pytest.mark.parametrize(
    ("parts", "sentence", "field"),
    [
        ((FOCAL,) * 13, "A pattern has 1 to 12 parts; this one has 13.", "parts"),
        (
            (FOCAL, ROPE, Part("Tail", b"\0", None)),
            "Part 2 “Rope” and part 3 “Tail” both fill the rope with nothing between them; say of one how often it is "
            "worked, or put such a part between them.",
            "parts.2.times",
        ),
        (
            (ROPE, Part("Focal", b"\2", 0)),
            "Part 2 “Focal” is worked 0 times; expected 1 to 1,000, or “fill”.",
            "parts.1.times",
        ),
        (
            (Part("Focal", b"\2", 1001),),
            "Part 1 “Focal” is worked 1,001 times; expected 1 to 1,000, or “fill”.",
            "parts.0.times",
        ),
        ((ROPE, Part("Focal", b"")), "Part 2 “Focal” has no beads; a part has at least one.", "parts.1.beads"),
        ((Part(" ", b"\0"),), "The name of part 1 is empty; expected 1 to 40 characters.", "parts.0.name"),
        ((ROPE, Part("x" * 41, b"\0")), "The name of part 2 has 41 characters; at most 40 fit.", "parts.1.name"),
        ((ROPE, Part("Focal", b"\x09")), "A bead stands in the chart that the palette does not have.", "parts"),
        (
            (Part("Head", bytes(60_000)), Part("Tail", bytes(40_001))),
            "The pattern has 100,001 beads; at most 100,000 can be kept.",
            "parts",
        ),
        (
            (ROPE, Part("Focal", bytes(101), 1000)),
            "“Focal” alone makes 101,000 beads of rope; at most 100,000 can be kept.",
            "parts",
        ),
    ],
)
def test_parts_that_make_no_rope_are_refused_by_name_and_field(parts, sentence, field):
    with pytest.raises(EngineError) as refused:
        in_parts(*parts)
    assert (refused.value.message, refused.value.field) == (sentence, field)


def test_a_chart_beside_parts_is_refused():
    with pytest.raises(EngineError, match=r"A pattern in parts has no chart, start or end beside them\."):
        in_parts(ROPE, chart=b"\0")


@pytest.mark.parametrize(
    ("parts", "total", "sentence"),
    [
        ((ROPE, FOCAL), 5, "“Focal” alone makes 6 beads; a rope of 5 beads has no room for them."),
        ((FOCAL, ROPE, FOCAL), 5, "“Focal” and “Focal” alone make 12 beads; a rope of 5 beads has no room for them."),
        ((FOCAL, FOCAL), 13, "No part of this rope fills, so it is worked in one size: 12 beads."),
    ],
)
def test_a_rope_that_the_parts_cannot_make_is_refused(parts, total, sentence):
    with pytest.raises(EngineError) as refused:
        in_parts(*parts).worked(total)
    assert (refused.value.message, refused.value.field) == (sentence, "length")
