"""How a piece ends is told once, and everything else follows from it."""

from math import pi

import pytest

from engine.booklet.choices import Choices
from engine.booklet.guides.finishing import PARTS
from engine.counting.answers import answer
from engine.counting.closures import CLOSURES, Closure, closure_named, usual_allowances
from engine.counting.findings import CLOSING, fittings
from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.workshop import Workshop
from engine.errors import ChoiceError
from engine.pattern.pattern import Pattern
from tests.booklets import print_of, scattered, text_of
from tests.pictures import palette

ROPE = Pattern("Trial", 8, palette(), bytes([0, 1]) * 60)
TIE = Closure(
    key="tie",
    label="Sliding tie",
    piece="piece of {} with a sliding tie",
    ending="with a sliding tie",
    short="tie",
    own_length="Take {allowance} for the tie off the length you want.",
    guide_title="For a sliding tie",
    guide=("close the ends", "wear it"),
    findings=("caps",),
    needs="Two caps, {inside}.",
    allowance_mm=40.0,
)


@pytest.mark.parametrize("key", CLOSURES)
def test_every_closure_has_its_findings_and_the_parts_of_its_guide(key):
    closure = CLOSURES[key]
    assert closure.key == key
    assert set(closure.findings) <= set(CLOSING)
    assert closure.guide and set(closure.guide) <= set(PARTS)
    assert all((closure.label, closure.ending, closure.short, closure.own_length, closure.guide_title))
    assert closure.piece.format("45 cm") != closure.piece
    assert (closure.allowance_mm is None) == (not closure.allowance_label)


def test_what_a_closure_adds_comes_off_the_rope():
    for closure in CLOSURES.values():
        sized = size(ROPE, Question(450.0, closure.key))
        taken = -pi * sized.thickness_mm if closure.worked_shut else closure.allowance_mm or 0.0
        assert sized.rope_mm == pytest.approx(450 - taken, abs=sized.rope.bead_mm)
        assert sized.finished_mm == pytest.approx(sized.rope_mm + taken)


def test_the_makers_own_allowance_wins():
    own = Workshop(allowances={**usual_allowances(), "clasp": 40.0})
    assert size(ROPE, Question(450.0, "clasp"), own).closure_mm == 40.0
    assert size(ROPE, Question(450.0, "glued"), own).closure_mm == 15.0


def test_a_closure_that_nobody_knows_is_refused():
    with pytest.raises(ChoiceError, match="expected one of open, clasp, glued, ring"):
        closure_named("knot")


def test_a_new_closure_is_told_in_one_place(monkeypatch):
    monkeypatch.setitem(CLOSURES, "tie", TIE)
    answered = answer(ROPE, Question(450.0, "tie"))
    assert answered.sentence.startswith("Trial as a piece of 45.0 cm with a sliding tie takes about ")
    assert answered.size.rope_mm == pytest.approx(410, abs=answered.size.rope.bead_mm)
    assert "Bead caps, 2" in [fitting.name for fitting in fittings(answered)]


def test_a_new_closure_prints_its_booklet(monkeypatch):
    monkeypatch.setitem(CLOSURES, "tie", TIE)
    text = text_of(print_of(scattered(8, 160), Choices(Question(200.0, "tie"))).pdf)
    assert "For a sliding tie" in text
    assert "Two caps, " in text
    assert "Close the ends" in text and "Wear it" in text
    assert "Take 4.0 cm for the tie off the length you want." in text.replace("\xa0", " ").replace("\n", " ")
