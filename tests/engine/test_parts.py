"""The parts of a worked rope: how often each is worked, where it lies, and what hangs in the middle."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.answers import answer
from engine.counting.parts import middle, middle_in_words, parts_between, parts_in_words, worked_parts
from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.stringing import string
from engine.counting.workshop import Workshop
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from tests.pictures import palette

ROPE, FOCAL = Part("Rope", bytes([0, 0, 1]), None), Part("Focal", bytes([2] * 100), 2)
FRONT = Pattern("Front", 8, palette(), in_parts=(ROPE, FOCAL, ROPE))


def test_parts_are_told_with_beads_passes_and_length():
    sized = size(FRONT, Question(400.0))
    found = worked_parts(sized)
    assert [(part.number, part.name, part.beads, part.times) for part in found] == [
        (1, "Rope", 904, pytest.approx(904 / 3)),
        (2, "Focal", 200, 2),
        (3, "Rope", 903, 301),
    ]
    assert sum(part.beads for part in found) == sized.beads
    assert found[-1].begin_mm + found[-1].rope_mm == pytest.approx(sized.rope_mm)
    assert [part.first for part in found] == [0, 904, 1104]
    assert [part.seam and part.seam.before for part in found] == [None, 904, 1104]


def test_the_bill_and_the_answer_count_by_part():
    found = answer(FRONT, Question(400.0))
    assert found.materials.parts == worked_parts(found.size)
    assert "“Rope” 301.33 times, “Focal” 2 times, “Rope” 301 times, " in found.sentence


def test_a_thread_belongs_to_the_parts_it_holds_beads_of():
    parts = worked_parts(size(FRONT, Question(400.0)))
    assert [part.name for part in parts_between(parts, 0, 904)] == ["Rope"]
    assert [part.number for part in parts_between(parts, 903, 1105)] == [1, 2, 3]
    assert parts_between(worked_parts(size(replace(FRONT, in_parts=(ROPE,)), Question(400.0))), 0, 9) == ()
    sized = size(FRONT, Question(400.0), Workshop(longest_mm=1400.0))
    assert [thread.parts for thread in string(sized).threads] == [("Rope",), ("Rope", "Focal"), ("Rope",)]


@given(st.floats(150, 900))
def test_one_fixed_part_between_two_that_fill_hangs_in_the_middle(mm):
    sized = size(FRONT, Question(mm))
    found = middle(sized)
    assert found.part.name == "Focal" and abs(found.off_mm) <= sized.rope.bead_mm / 2 + 1e-9
    assert middle_in_words(sized) == "The middle of the rope lies in “Focal”, which stands right in the middle."


def test_a_motif_off_the_middle_says_by_how_much_and_where():
    head = Pattern("Off", 8, palette(), in_parts=(Part("Head", bytes(200)), ROPE, FOCAL, ROPE))
    words = middle_in_words(size(head, Question(600.0)))
    assert words == "The middle of the rope lies in “Focal”, which stands 19.8 mm off the middle, nearer to the end."
    tail = Pattern("Off", 8, palette(), in_parts=(ROPE, Part("Clasp", bytes(20)), ROPE, Part("Tail", bytes([3] * 600))))
    words = middle_in_words(size(tail, Question(600.0)))
    assert words == (
        "The middle of the rope lies in “Rope”; “Clasp” stands 60.1 mm off the middle, nearer to the beginning."
    )


def test_without_a_motif_the_place_of_the_middle_is_told():
    lariat = Pattern("Lariat", 8, palette(), in_parts=(FOCAL, ROPE))
    assert middle_in_words(size(lariat, Question(400.0))) == (
        "The middle of the rope lies in “Rope”, 16.0 cm from where that part begins."
    )
    assert middle_in_words(size(FRONT, Question(400.0, "ring"))) == ""


def test_how_often_parts_are_worked_in_words():
    short = Pattern("Short", 8, palette(), bytes([0, 0, 1]), end=b"\3")
    assert parts_in_words(size(short, Question())) == "1 pass of the chart"
    assert parts_in_words(size(replace(FRONT, in_parts=(FOCAL, ROPE)), Question())) == "“Focal” 2 times, “Rope” once"
    many = replace(FRONT, in_parts=(FOCAL,) * 6)
    assert parts_in_words(size(many, Question())) == "6 parts"
