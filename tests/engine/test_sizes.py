"""A question to its size, for the four closures."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.closures import CLOSURES
from engine.counting.finished import named
from engine.counting.questions import Question
from engine.counting.rope import Swatch, helix
from engine.counting.sizes import size
from engine.counting.workshop import Workshop
from engine.errors import EngineError
from engine.pattern.pattern import Pattern
from tests.pictures import palette


def made(around=12, chart=bytes([0, 1, 2]) * 100, **words):
    return Pattern("Trial", around, palette(), chart, **words)


def test_without_a_length_one_pass_is_meant():
    found = size(made(start=b"\0\0", end=b"\1"), Question())
    assert (found.beads, found.passes) == (303, 1)
    assert found.length_mm == found.finished_mm == found.rope_mm == pytest.approx(303 * helix(12).rise * 1.97628)


def test_each_closure_takes_its_share_of_the_length():
    wanted = {closure: size(made(), Question(450.0, closure)) for closure in CLOSURES}
    bead = wanted["open"].rope.bead_mm
    thick = wanted["open"].thickness_mm
    assert wanted["open"].beads == round(450 / bead)
    assert wanted["clasp"].beads == round((450 - 25) / bead)
    assert wanted["glued"].beads == round((450 - 15) / bead)
    assert wanted["ring"].beads == 3 * round((450 + pi * thick) / bead / 3)
    assert all(found.length_mm == pytest.approx(450) for found in wanted.values())
    assert all(abs(found.finished_mm - 450) <= 2 * bead for found in wanted.values())


def test_a_bracelet_that_lies_close_adds_what_its_thickness_takes():
    found = size(made(), Question(wrist_mm=160, ease_mm=12, closure="clasp"))
    assert found.rope_mm == pytest.approx(160 + 12 + pi * found.thickness_mm - 25, abs=found.rope.bead_mm)


@given(st.integers(3, 40), st.integers(1, 12), st.floats(60, 1200))
def test_a_ring_always_closes_in_colour(around, repeat, girth):
    pattern = made(around, bytes(range(4))[:repeat] * 3 if repeat <= 4 else bytes([0] * (repeat - 1) + [1]) * 2)
    found = size(pattern, Question(girth, "ring"))
    assert found.closes
    assert found.beads % pattern.repeat == 0
    assert found.beads >= 2 * around + 3


def test_a_ring_with_a_start_joins_end_to_start_after_whole_passes():
    found = size(made(start=bytes(7), end=bytes(5)), Question(200.0, "ring"))
    assert (found.beads - 12) % 300 == 0
    assert found.joins_end_to_start
    assert found.closes


def test_whole_passes_are_the_nearest():
    exact = size(made(), Question(450.0))
    whole = size(made(), Question(450.0, rounding="pass"))
    assert whole.beads % 300 == 0
    assert abs(whole.beads - exact.beads) <= 150


def test_the_makers_allowances_and_swatches_count():
    own = Workshop(swatches=(Swatch("11/0 round", 12, "single", 480, 66.0),), allowances={"clasp": 30.0})
    found = size(made(), Question(450.0, "clasp"), own)
    assert found.beads == round(420 / (66 / 480))
    assert found.rope.measured


def test_another_kind_and_stitch_take_the_place_of_the_patterns_own():
    found = size(made(), Question(450.0, kind="8/0 round", stitch="slip"))
    assert (found.stitch, found.rope.working_mm, found.rope.source) == ("slip", 2.75, "estimate ±15 %")


@pytest.mark.parametrize(
    ("question", "sentence", "field"),
    [
        (Question(1.0), "That leaves 0.1 cm of rope, less than one round (0.2 cm); ask for a longer piece.", "length"),
        (
            Question(20.0, "clasp"),
            "That leaves 0.0 cm of rope, less than one round (0.2 cm); ask for a longer piece.",
            "length",
        ),
        (Question(100_000.0), "That is a rope of 733,965 beads; at most 200,000 are counted.", "length"),
        (
            Question(450.0, kind="12/0 square"),
            "Bead kind: “12/0 square” is not known here; expected one of 15/0 round, "
            "11/0 round, 10/0 round, 8/0 round, 6/0 round, 11/0 cylinder.",
            "kind",
        ),
    ],
)
def test_a_size_that_cannot_be_worked_is_refused_in_one_sentence(question, sentence, field):
    with pytest.raises(EngineError) as refused:
        size(made(), question)
    assert (refused.value.message, refused.value.field) == (sentence, field)


def test_a_size_shorter_than_start_and_end_is_refused():
    with pytest.raises(EngineError, match=r"Start and end alone make 5\.4 cm of rope"):
        size(made(start=bytes(200), end=bytes(200)), Question(30.0))


def test_one_pass_too_short_for_a_ring_is_refused():
    with pytest.raises(EngineError, match=r"A ring of 30 beads has no room inside"):
        size(made(chart=bytes(30)), Question(closure="ring"))


@pytest.mark.parametrize(
    ("words", "field"),
    [
        ({"closure": "knot"}, "closure"),
        ({"stitch": "knit"}, "stitch"),
        ({"rounding": "inch"}, "round"),
        ({"length_mm": 1.0, "wrist_mm": 1.0}, "wrist"),
        ({"ease_mm": 1.0}, "ease"),
    ],
)
def test_a_question_that_cannot_be_meant_is_refused(words, field):
    with pytest.raises(EngineError) as refused:
        Question(**words)
    assert refused.value.field == field


def test_the_named_can_be_worked_in_every_width():
    for around in (3, 12, 60):
        for usual in named():
            found = size(made(around), usual.question)
            assert found.beads > around
            assert found.finished_mm > 0


def test_the_named_grow():
    beads = [size(made(), usual.question).beads for usual in named()]
    assert beads == sorted(beads)
