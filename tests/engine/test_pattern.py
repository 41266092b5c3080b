"""A pattern, the rope that is worked from it, and the same for the other hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.errors import EngineError
from engine.pattern.pattern import Pattern, keep_the_picture, left_handed
from tests.pictures import assert_same_chart, palette, pattern

stretches = st.binary(max_size=60).map(lambda some: bytes(bead % 4 for bead in some))
charts = stretches.filter(bool)


def made(around=6, chart=b"\0\1", **words):
    return Pattern(**{"title": "Trial", "around": around, "palette": palette(), "chart": chart, **words})


@given(charts, stretches, stretches, st.integers(0, 200))
def test_the_worked_rope_is_start_then_passes_then_end_and_its_last_seam_is_as_drawn(chart, start, end, between):
    rope = made(chart=chart, start=start, end=end).worked(len(start) + between + len(end))
    assert len(rope) == len(start) + between + len(end)
    assert rope.startswith(start)
    assert rope.endswith(end)
    behind = 0 if start or not end else -between % len(chart)
    assert all(rope[len(start) + k] == chart[(behind + k) % len(chart)] for k in range(between))


def test_a_rope_too_short_for_start_and_end_is_refused():
    with pytest.raises(
        EngineError, match="“Start” and “End” alone make 4 beads; a rope of 3 beads has no room for them"
    ):
        made(start=b"\0\0", end=b"\1\1").worked(3)


def test_narrow_ropes_are_worked_in_slip_stitch_unless_the_pattern_says_otherwise():
    assert [made(around=around).stitch_worked for around in (6, 10, 11, 20)] == ["slip", "slip", "single", "single"]
    assert made(around=6, stitch="single").stitch_worked == "single"


def test_the_other_hand_works_the_same_string_and_sees_the_mirror_image():
    right = pattern("A B B C\n", 3)
    left = left_handed(right)
    assert (left.hand, left.chart) == ("left", right.chart)
    assert left_handed(left) == right


def test_keeping_the_picture_turns_every_drawn_row():
    kept = keep_the_picture(
        pattern(
            """\
         A B C
        A B C D""",
            3,
        )
    )
    assert kept.hand == "left"
    assert_same_chart(
        3,
        kept.chart,
        """\
         C B A
        D C B A""",
    )


@given(st.integers(3, 12), charts, stretches)
def test_keeping_the_picture_twice_gives_the_pattern(around, chart, start):
    right = made(around=around, chart=chart, start=start)
    assert keep_the_picture(keep_the_picture(right)) == right


@pytest.mark.parametrize(
    ("words", "sentence", "field"),
    [
        ({"around": 2}, "2 around does not work; a rope has 3 to 60 beads around.", "around"),
        ({"around": 61}, "61 around does not work; a rope has 3 to 60 beads around.", "around"),
        ({"title": " "}, "The title is empty; expected 1 to 120 characters.", "title"),
        ({"title": "x" * 121}, "The title has 121 characters; at most 120 fit.", "title"),
        ({"hand": "both"}, "Hand: “both” is not known here; expected one of right, left.", "hand"),
        ({"stitch": "knit"}, "Stitch: “knit” is not known here; expected one of slip, single.", "stitch"),
        ({"chart": b""}, "The chart has no beads; a chart has at least one.", "beads"),
        ({"chart": b"\x09"}, "A bead stands in the chart that the palette does not have.", "beads"),
        (
            {"chart": b"\0" * 60_000, "start": b"\0" * 40_001},
            "The pattern has 100,001 beads; at most 100,000 can be kept.",
            "beads",
        ),
        ({"tags": ("",)}, "The tag is empty; expected 1 to 40 characters.", "tags.0"),
        ({"notes": "a\x1bb"}, "A character in the notes cannot be printed; please type it anew.", "notes"),
    ],
)
def test_a_pattern_that_no_rope_can_have_is_refused_by_field(words, sentence, field):
    with pytest.raises(EngineError) as refused:
        made(**words)
    assert (refused.value.message, refused.value.field) == (sentence, field)
