"""How sure a length is, and why, said in words."""

from engine.counting.questions import Question
from engine.counting.rope import Swatch
from engine.counting.sizes import size
from engine.counting.sure import how_sure
from engine.counting.workshop import Workshop
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern
from tests.pictures import palette

ROPE = Pattern("Trial", 12, palette("AB"), bytes([0, 1, 1]) * 20)
SWATCH = Swatch("11/0 round", 12, "single", 480, 66.0)


def said(*swatches, rope=ROPE, **asked):
    own = Workshop(swatches=swatches)
    return how_sure(size(rope, Question(450.0, **asked), own))


def test_a_swatch_is_as_good_as_the_ruler_it_was_read_from():
    assert said(SWATCH) == "Read to the nearest millimetre it is good to ±0.8 %, as long as the tension stays the same."


def test_a_swatch_of_another_width_is_said_to_be_carried_over():
    assert said(Swatch("11/0 round", 8, "single", 480, 100.0)) == (
        "Read to the nearest millimetre it is good to ±0.5 %. It was worked at 8 around and is carried to 12 by the sum of "
        "the rope; one at 12 around would be surer."
    )


def test_without_a_swatch_that_fits_it_is_said_why():
    assert said() == "No swatch of 11/0 round beads is kept."
    assert said(SWATCH, kind="8/0 round") == "No swatch of 8/0 round beads is kept."
    assert said(SWATCH, Swatch("11/0 round", 14, "single", 480, 60.0), stitch="slip") == (
        "The swatches of 11/0 round beads, at 12 and 14 around, are in single crochet; a swatch is never carried to slip "
        "stitch."
    )


def test_mixed_kinds_are_to_be_measured_together():
    mixed = Palette((Entry("A", "Small", "#1d3350"), Entry("B", "Large", "#f2e8d5", kind="8/0 round")))
    rope = Pattern("Mixed", 6, mixed, bytes([0, 0, 1]) * 20)
    assert said(SWATCH, rope=rope) == (
        "11/0 round and 8/0 round are worked together; a swatch tells of one kind alone, so work and measure a piece."
    )
    assert said(SWATCH, rope=rope, kind="8/0 round") == "No swatch of 8/0 round beads is kept."


def test_a_pass_of_ones_own_is_as_good_as_it_was_read():
    assert said(pass_mm=61.0) == (
        "A pass read to the nearest millimetre is good to ±0.8 %; several passes measured at once are surer."
    )
