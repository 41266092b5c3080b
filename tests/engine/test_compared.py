"""Beads ringed on a chart."""

from engine.drawing.charts import cells
from engine.drawing.compared import RING, ringed
from engine.drawing.shapes import Group, Stamp
from engine.drawing.svg import to_svg
from tests.pictures import pattern

ROPE = pattern(
    """
     A B A
    A A C C
    """,
    3,
)


def rings(drawing):
    (group,) = (shape for shape in drawing.shapes if isinstance(shape, Group) and shape.name == "differs")
    return [stamp.places for stamp in group.shapes if isinstance(stamp, Stamp) and stamp.paint.line == RING]


def test_just_the_beads_that_are_marked_are_ringed():
    places = [(cell.x, cell.y) for cell in cells(ROPE, bead_mm=4.0, upright=False)]
    assert rings(ringed(ROPE, {2, 5})) == [(places[2], places[5])]
    assert rings(ringed(ROPE, {2, 5}, first=4)) == [((cells(ROPE, 4, None, 4.0, False)[1])[1:],)]


def test_beads_that_are_marked_carry_their_symbols_and_no_others_do():
    names = [shape.name for shape in ringed(ROPE, {2, 3, 5}).shapes if isinstance(shape, Group)]
    assert names.count("symbol") == 2
    assert "symbol" not in [shape.name for shape in ringed(ROPE, set()).shapes if isinstance(shape, Group)]
    assert rings(ringed(ROPE, set())) == []


def test_the_picture_says_how_many_beads_differ():
    assert "<desc>2 beads that differ are ringed.\n A B A\nA A C C</desc>" in to_svg(ringed(ROPE, {2, 5}))
