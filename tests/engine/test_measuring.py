"""How a sample is measured: the drawing is true to the sums that read it."""

from itertools import pairwise

import pytest

from engine.counting.kinds import KINDS
from engine.counting.rope import Swatch, beads_of_rows
from engine.drawing.measuring import AROUND, MM, ROWS, measuring
from engine.drawing.shapes import Group, Line, Text


def group(name):
    return next(shape.shapes for shape in measuring().shapes if isinstance(shape, Group) and shape.name == name)


def test_what_the_ruler_reads_is_a_swatch_of_beads_of_their_usual_room():
    ends = sorted(
        {shape.start[0] for shape in group("ruler") if isinstance(shape, Line) and shape.paint.line_mm == 0.6}
    )
    read_mm = (ends[1] - ends[0]) / MM
    swatch = Swatch("11/0 round", AROUND, "slip", beads_of_rows(ROWS, AROUND), read_mm)
    assert swatch.working_mm == pytest.approx(KINDS["11/0 round"].working_mm, abs=1e-4)


def test_the_counted_beads_lie_a_row_apart_along_one_line():
    numbers = [shape for shape in group("counted") if isinstance(shape, Text)]
    assert [shape.text for shape in numbers] == [str(number) for number in range(1, ROWS + 2)]
    steps = {round(later.x - former.x, 6) for former, later in pairwise(numbers)}
    assert len(steps) == 2 and max(shape.y for shape in numbers) - min(shape.y for shape in numbers) < 8


def test_everything_lies_in_the_picture():
    drawing = measuring()
    xs = [step[-2] for name in ("rope", "counted") for shape in group(name) for step in getattr(shape, "places", ())]
    assert drawing.left <= min(xs) and max(xs) <= drawing.left + drawing.width
