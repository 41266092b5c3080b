"""Options as people write them, to engine values and back."""

import pytest
from hypothesis import strategies as st

from engine.counting.options import in_hand, read_longest, read_plan, read_question, read_spare
from engine.counting.questions import Question
from engine.errors import EngineError
from tests.pictures import pattern

lengths = st.integers(1, 99_999).map(float)


def test_options_ask_a_question():
    assert read_question({"length": "52 cm", "closure": "clasp", "kind": " 8/0 round ", "round": "pass"}) == Question(
        520.0, "clasp", "8/0 round", rounding="pass"
    )
    assert read_question({"wrist": "6.5 in", "ease": "0"}) == Question(wrist_mm=165.1, ease_mm=0.0)


def test_options_left_out_or_empty_take_their_defaults():
    assert read_question({"length": None, "closure": "", "stitch": "  "}) == Question()


@pytest.mark.parametrize(
    ("text", "plan"),
    [
        (None, "balanced"),
        ("", "balanced"),
        ("balanced", "balanced"),
        ("whole", "whole"),
        ("chart", "chart"),
        ("4", 4.0),
        ("2,5", 2.5),
        ("3 m", 3.0),
        ("50 cm", 0.5),
    ],
)
def test_a_plan_is_a_word_or_metres(text, plan):
    assert read_plan(text) == plan


@pytest.mark.parametrize("text", ["halves", "0", "-4", "4 ells", "1e9", "nan"])
def test_a_plan_that_is_none_is_refused(text):
    with pytest.raises(EngineError) as refused:
        read_plan(text)
    assert (
        refused.value.message
        == f"“{text}” is not a plan for threads; expected balanced, whole, chart or metres such as 4, or the beads after which a thread is joined: joins 480, 960."
    )


@pytest.mark.parametrize(
    ("text", "joins"),
    [
        ("joins 480, 960", (480, 960)),
        ("joins after 480, 960 and 1440.", (480, 960, 1440)),
        ("Joins 480;960", (480, 960)),
        ("joins 48,96", (48, 96)),
        ("joins 7", (7,)),
    ],
)
def test_a_plan_may_name_the_beads_after_which_a_thread_is_joined(text, joins):
    assert read_plan(text) == joins


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            "joins",
            "“” does not say where threads are joined; expected beads counted from the first one worked, such as 480, 960.",
        ),
        (
            "joins 480, x",
            "“480, x” does not say where threads are joined; expected beads counted from the first one worked, such as 480, 960.",
        ),
        (
            "joins 1,200",
            "“1,200” may be one bead or several; write large numbers without a comma, and a space between joins.",
        ),
    ],
)
def test_joins_that_cannot_be_read_are_refused(text, said):
    with pytest.raises(EngineError) as refused:
        read_plan(text)
    assert (refused.value.message, refused.value.field) == (said, "threads")


def test_spare_is_ten_percent_unless_said():
    assert [read_spare(text) for text in (None, "", "12", "12.5 %", "0")] == [10, 10, 12, 12.5, 0]
    assert read_spare("", 15) == 15
    with pytest.raises(EngineError, match="“lots” is not a spare; expected percent such as 10"):
        read_spare("lots")


def test_the_other_hand_mirrors_or_keeps_the_picture():
    right = pattern(
        """\
         A B C
        A B C D""",
        3,
    )
    assert in_hand(right, None) is in_hand(right, "right") is right
    assert in_hand(right, "left").chart == right.chart
    assert in_hand(right, "left", keep_picture=True).chart != right.chart
    with pytest.raises(EngineError, match="“both” is not known here"):
        in_hand(right, "both")


@pytest.mark.parametrize(
    ("options", "question"),
    [
        ({"length": "45 cm", "closure": "usual"}, Question(450.0, "clasp")),
        ({"wrist": "16 cm", "closure": "usual"}, Question(wrist_mm=160.0, closure="clasp")),
        ({"neck": "36 cm", "closure": "usual"}, Question(girth_mm=360.0, closure="clasp")),
        ({"hand_girth": "20 cm", "closure": "usual"}, Question(200.0, "ring", over_hand=True)),
        ({"closure": "usual"}, Question()),
        ({"length": "45 cm"}, Question(450.0, "open")),
        ({"length": "Opera", "closure": "usual"}, Question(790.0, "clasp")),
        ({"length": "opera", "closure": "open"}, Question(790.0, "open")),
        (
            {"length": "45 cm", "closure": "clasp", "closure_length": "4.5 cm"},
            Question(450.0, "clasp", closure_mm=45.0),
        ),
        ({"length": "45 cm", "closure": "clasp", "closure_length": "0"}, Question(450.0, "clasp", closure_mm=0.0)),
        ({"pass_length": "20 passes measure 36 mm"}, Question(pass_mm=1.8, passes_measured=20)),
        ({"pass_length": "20 x 36 mm"}, Question(pass_mm=1.8, passes_measured=20)),
        ({"pass_length": "61 mm"}, Question(pass_mm=61.0)),
    ],
)
def test_what_is_taken_for_granted_and_what_a_size_is_called_is_understood(options, question):
    assert read_question(options) == question


@pytest.mark.parametrize(
    ("text", "mm"),
    [("1 cm shorter", 440.0), ("2 cm longer", 470.0), ("half an inch less", None), ("1/2 in less", 437.3)],
)
def test_a_length_may_be_told_by_the_last_one(text, mm):
    last = Question(450.0, "glued")
    if mm is None:
        with pytest.raises(EngineError, match="is not a length"):
            read_question({"length": text}, last=last)
        return
    assert read_question({"length": text}, last=last) == Question(mm, "glued")
    assert read_question({"length": text, "closure": "open"}, last=last) == Question(mm, "open")
    with pytest.raises(EngineError, match="ask for a length first"):
        read_question({"length": text})


@pytest.mark.parametrize(("text", "mm"), [(None, None), ("", None), ("4", 4000), ("2,5", 2500), ("300 cm", 3000)])
def test_the_longest_string_is_asked_for_in_metres(text, mm):
    assert read_longest(text) == mm


@pytest.mark.parametrize("text", ["0", "-1", "long", "4 ells"])
def test_a_longest_string_that_is_none_is_refused(text):
    with pytest.raises(EngineError, match="is not how long a string may be; expected metres such as 4") as refused:
        read_longest(text)
    assert refused.value.field == "longest"
