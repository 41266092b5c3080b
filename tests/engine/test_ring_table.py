"""All rings near a girth that close in colour."""

from math import pi

from hypothesis import given
from hypothesis import strategies as st

from engine.counting.questions import Question
from engine.counting.ring_table import MOST_RINGS, rings_near
from engine.counting.sizes import size
from engine.pattern.pattern import Pattern
from engine.pattern.repeats import closes
from tests.pictures import palette


def made(around=7, chart=bytes([0] * 5 + [1]) * 16, **words):
    return Pattern("Trial", around, palette(), chart, **words)


@given(st.integers(3, 40), st.integers(1, 9), st.floats(60, 900))
def test_every_ring_closes_has_room_inside_and_the_smallest_comes_first(around, repeat, girth):
    pattern = made(around, bytes([0] * repeat + [1]) * 4)
    found = rings_near(size(pattern, Question(girth, "ring")))
    assert found
    assert all(closes(around, pattern.repeat, ring.beads) and ring.girth_mm > 0 for ring in found)
    assert [ring.beads for ring in found] == sorted({ring.beads for ring in found})
    assert len(found) <= MOST_RINGS


@given(st.floats(100, 900))
def test_the_ring_that_a_size_picks_is_among_them(girth):
    asked = Question(girth, "ring")
    assert size(made(), asked).beads in [ring.beads for ring in rings_near(size(made(), asked))]


@given(st.integers(1, 40), st.integers(0, 40))
def test_with_a_start_or_an_end_a_ring_is_whole_passes(start, end):
    pattern = made(start=bytes(start), end=bytes(end))
    assert all(ring.passes == int(ring.passes) >= 1 for ring in rings_near(size(pattern, Question(300.0, "ring"))))


def test_girth_inside_and_diameter_go_together():
    ring = rings_near(size(made(), Question(250.0, "ring")))[0]
    rope = size(made(), Question(250.0)).rope
    assert abs(ring.girth_mm - (ring.beads * rope.bead_mm - pi * rope.thickness_mm)) < 1e-9
    assert rings_near(size(made(), Question(250.0))) == ()
    assert abs(ring.diameter_mm * pi - ring.girth_mm) < 1e-9
