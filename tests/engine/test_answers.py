"""An answer says in one sentence what list and bill say in numbers."""

from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.pattern.pattern import Pattern
from tests.pictures import palette


def test_the_sentence_is_made_of_the_numbers_of_list_and_bill():
    rope = Pattern("Trial", 14, palette("AB"), bytes([0, 0, 1]) * 60)
    found = answer(rope, Question(430.0, "clasp"))
    assert found.sentence == (
        "Trial as a piece of 43.0 cm with a clasp takes about 3,444 beads: 19.13 passes of the chart, "
        "4.82 m of strung beads on 2 threads."
    )
    assert found.materials.beads == found.size.beads == 3444


def test_one_pass_on_one_thread_is_said_in_the_singular():
    rope = Pattern("Trial", 14, palette("AB"), bytes([0, 0, 1]) * 60)
    assert answer(rope, Question()).sentence.endswith(
        "180 beads: 1 pass of the chart, 0.25 m of strung beads on 1 thread."
    )


def test_a_ring_is_measured_inside_and_in_the_units_asked_for():
    rope = Pattern("Trial", 8, palette("AB"), bytes([0, 0, 1]))
    assert answer(rope, Question(200.0, "ring"), units="both").sentence.startswith(
        "Trial as a ring of 20.0 cm (7.9 in) inner girth takes about "
    )
