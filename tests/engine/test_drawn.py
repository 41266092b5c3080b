"""How charts are drawn on paper: the order of beads, the middles of cells, and how many rows a box holds."""

from math import isclose, sqrt

import numpy as np
import pytest

from engine.errors import EngineError
from engine.pattern.old_charts.drawn import BRICKS, HEXAGONS, SHIFTED, SQUARES, STRAIGHT, TURNS, Drawn, rows_in


def order(drawn: Drawn, wide: int, high: int) -> str:
    """The chart as letters, each bead where its middle lies."""
    lines = [[" "] * wide for _ in range(high)]
    for bead, (x, y) in enumerate(drawn.middles().tolist()):
        lines[int(y * high)][int(x * wide)] = "abcdefghijklmnopqrstuvwxyz"[bead]
    return "\n".join("".join(line).rstrip() for line in lines)


@pytest.mark.parametrize(
    ("drawn", "picture"),
    [
        (Drawn(3, 3, TURNS), " h i j k\n  e f g\n a b c d"),
        (Drawn(3, 3, TURNS, inset=True), "  h i j\n d e f g\n  a b c"),
        (Drawn(3, 2, TURNS, backwards=True), "  g f e\n d c b a"),
        (Drawn(3, 3, SHIFTED), " g h i\n  d e f\n a b c"),
        (Drawn(3, 2, SHIFTED, inset=True), " d e f\n  a b c"),
        (Drawn(3, 3, STRAIGHT), " g h i\n d e f\n a b c"),
    ],
)
def test_rows_are_read_from_the_foot(drawn, picture):
    assert order(drawn, round(2 * drawn.across), drawn.rows) == picture


def test_a_lying_chart_is_the_upright_one_turned_by_a_quarter():
    upright, lying = Drawn(5, 7), Drawn(5, 7, lying=True)
    x, y = upright.middles().T
    assert np.allclose(lying.middles(), np.stack([1 - y, x], axis=1))
    assert lying.bead() == upright.bead()[::-1]


def test_hexagons_reach_into_the_rows_beside_them():
    drawn = Drawn(4, 3, shape=HEXAGONS)
    lowest, highest = drawn.middles()[0, 1], drawn.middles()[-1, 1]
    assert isclose(highest, 1 - lowest)
    assert isclose((lowest - highest) / 2, drawn.bead()[1])
    assert isclose(highest / drawn.bead()[1], 2 / 3)  # half of a hexagon's height, which is 4/3 of its pitch


@pytest.mark.parametrize(
    ("across", "shape", "high", "rows"),
    [(10, SQUARES, 40, 40), (10.5, BRICKS, 40 * sqrt(3) / 2, 40), (10.5, HEXAGONS, (40 + 1 / 3) * sqrt(3) / 2, 40)],
)
def test_a_box_holds_as_many_rows_as_its_shape_has_room_for(across, shape, high, rows):
    assert rows_in(across, shape, high / across) == rows


def test_too_many_beads_are_refused():
    with pytest.raises(EngineError, match="So many rows would be more than 100,000 beads"):
        Drawn(60, 5000)
