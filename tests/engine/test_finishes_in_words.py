"""What finishes do for the eye, in words."""

from engine.cabinet.finishes_in_words import finishes_in_words
from engine.pattern.palette import Entry


def test_equal_finishes_do_not_help():
    one, other = Entry("A", "Sea", "#2f7f76", "matte"), Entry("B", "Bay", "#307e77", "matte")
    assert finishes_in_words(one, other) == "both matte, so only the colour tells them apart"


def test_different_finishes_help_in_the_hand_alone():
    one, other = Entry("A", "Sea", "#2f7f76", "matte"), Entry("B", "Bay", "#307e77", "lined")
    assert finishes_in_words(one, other) == "matte beside lined, which helps in the hand but not in print"
