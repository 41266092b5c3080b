"""What a customer may have meant is asked, gently."""

from math import pi

import pytest

from engine.counting.doubts import about_bead_size, doubts
from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.pattern.pattern import Pattern
from tests.pictures import palette

ROPE = Pattern("Trial", 8, palette(), bytes([0, 1]) * 60)


def asked(**words):
    question = Question(**words)
    return doubts(size(ROPE, question))


@pytest.mark.parametrize(
    "words",
    [
        {"length_mm": 450.0, "closure": "clasp"},
        {"wrist_mm": 165.0},
        {"length_mm": 200.0, "closure": "ring"},
        {},
        {"length_mm": 180.0},
        {"girth_mm": 360.0, "closure": "clasp"},
        {"length_mm": 600.0, "closure": "ring"},
        {"length_mm": 210.0, "closure": "ring", "over_hand": True},
        {"length_mm": 1100.0, "closure": "glued"},
    ],
)
def test_a_likely_size_is_not_doubted(words):
    assert asked(**words) == ()


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        ({"length_mm": 75.0, "closure": "clasp"}, "7.5 cm is short. Were inches meant: 7.5 in (19.1 cm)?"),
        (
            {"length_mm": 180.0, "closure": "clasp"},
            "Is 18.0 cm the finished length? If it is the wrist, ask for the wrist: ease and thickness come on top; if inches were "
            "meant, it is 18 in (45.7 cm).",
        ),
        ({"length_mm": 4500.0}, "450.0 cm is longer than ropes are usually worn. Was another unit meant?"),
        ({"wrist_mm": 65.0}, "A wrist of 6.5 cm is small. Were inches meant: 16.5 cm?"),
        (
            {"wrist_mm": 450.0},
            "A wrist of 45.0 cm is wide. Is it the neck, or the length of a necklace? Then ask for that.",
        ),
        (
            {"length_mm": 65.0, "closure": "ring"},
            "A ring of 6.5 cm inner girth does not go over a hand. Was its inner diameter meant? Then the girth is 20.4 cm.",
        ),
        (
            {"length_mm": 160.0, "closure": "ring"},
            "A ring of 16.0 cm inner girth goes over a small hand only. Was the wrist measured? A bangle needs the girth of the hand "
            "at its widest, thumb tucked in.",
        ),
        (
            {"wrist_mm": 150.0, "closure": "ring"},
            "A ring of 16.5 cm inner girth is worked for a wrist of 15.0 cm, but the hand has to pass and is wider. Ask for the "
            "girth of the hand at its widest, thumb tucked in.",
        ),
        (
            {"length_mm": 450.0, "closure": "ring"},
            "A ring of 45.0 cm inner girth is wide for a hand and goes over no head, which measures 52 cm and more. Is the length "
            "right?",
        ),
        (
            {"length_mm": pi * 210.0, "closure": "ring", "girth_of": "inner"},
            "An inner diameter of 21.0 cm is more than bangles have. Is 21.0 cm the girth, of a hand say?",
        ),
        ({"girth_mm": 150.0, "closure": "clasp"}, "A neck of 15.0 cm is small. Were inches meant: 38.1 cm?"),
        (
            {"girth_mm": 700.0, "closure": "clasp"},
            "A neck of 70.0 cm is wide. Is it the length of the piece? Then ask for the length.",
        ),
    ],
)
def test_a_typical_mistake_is_asked_about(words, sentence):
    assert asked(**words) == (sentence,)


def test_a_rope_that_is_hardly_longer_than_thick_is_asked_about():
    wide = Pattern("Wide", 30, palette(), bytes(40))
    assert "The rope would be hardly longer than it is thick. Is the length right?" in doubts(size(wide, Question()))


def test_millimetres_taken_for_a_size_are_asked_about():
    assert about_bead_size("5 mm").startswith("Beads of 5 mm are not “size 5”:")
    assert about_bead_size("11/0 round") == ""
