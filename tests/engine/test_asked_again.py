"""An answer beside that of today: only what differs is said to differ, with the reason."""

from __future__ import annotations

from dataclasses import replace

import pytest

from engine.counting.answers import answer
from engine.counting.asked_again import Figure, asked_again
from engine.counting.kinds import KINDS
from engine.counting.questions import Question
from engine.counting.rope import Swatch
from engine.counting.workshop import Workshop
from tests.booklets import scattered

WALL, NECKLACE = scattered(12, 240), Question(450.0, "clasp")
THEN = answer(WALL, NECKLACE)
FATTER = {**KINDS, "11/0 round": replace(KINDS["11/0 round"], per_gram=100.0)}


def test_where_nothing_changed_nothing_is_said():
    again = asked_again(THEN, answer(WALL, NECKLACE))
    assert (again.change, again.reasons) == ("", ()) and not any(figure.differs for figure in again.figures)
    assert again.figures[:2] == (Figure("Beads", "3,119", "3,119"), Figure("Finished size", "45.0 cm", "45.0 cm"))


@pytest.mark.parametrize(
    ("now", "reason"),
    [
        (answer(WALL, NECKLACE, Workshop(swatches=(Swatch("11/0 round", 12, "single", 480, 62.0),))), "The rope is"),
        (answer(WALL, NECKLACE, Workshop(kinds=FATTER)), "The measures of the bead kind “11/0 round” have changed."),
        (
            answer(WALL, NECKLACE, Workshop(allowances={"clasp": 40.0})),
            "The closure added 25.0 mm then, and 40.0 mm now.",
        ),
        (answer(WALL, NECKLACE, Workshop(longest_mm=1500.0)), "What a thread may hold has changed in the settings."),
        (answer(WALL, NECKLACE, spare=30.0), "10 % was spared then, and 30 % now."),
        (answer(scattered(12, 252), NECKLACE), "The pattern has changed."),
    ],
    ids=["swatch", "kind", "closure", "longest", "spare", "pattern"],
)
def test_every_change_has_its_one_reason(now, reason):
    again = asked_again(THEN, now)
    assert [each[: len(reason)] for each in again.reasons] == [reason]
    assert any(figure.differs for figure in again.figures)


def test_a_bead_that_is_no_longer_there_is_said_to_be_gone():
    again = asked_again(THEN, answer(scattered(12, 240, 3), NECKLACE))
    (gone,) = (figure for figure in again.figures if figure.name == "Bead D")
    assert gone.now == "not used" and gone.then != "not used"


def test_other_words_of_a_pattern_are_no_change():
    assert asked_again(THEN, answer(replace(WALL, title="Quay", notes="New."), NECKLACE)).reasons == ()
