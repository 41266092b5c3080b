"""Charts in symbols without fills, as we print them, photographed in simulation and read by the look of their cells."""

import numpy as np
import pytest

from engine.errors import EngineError
from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.fitting import fitted
from engine.pattern.old_charts.paper import Paper
from engine.pattern.old_charts.reading import Reading
from engine.pattern.old_charts.symbols import read_symbols
from engine.pattern.pattern import Pattern
from tests.photographed import in_symbols, photographed, random_rope

LEAST_RIGHT = 0.995


def wrong_beads(pattern: Pattern, reading: Reading) -> set[int]:
    """The beads that stand in a group of which most have another symbol."""
    true, seen = np.frombuffer(pattern.chart, np.uint8), np.frombuffer(reading.beads, np.uint8)
    meant = np.array([np.bincount(true[seen == group]).argmax() for group in range(len(reading.colours))])
    return set(np.flatnonzero(meant[seen] != true).tolist())


@pytest.mark.parametrize(
    ("around", "rows", "symbols", "taken"),
    [
        (12, 40, 16, {"fall": 0.6, "grain": 10, "upright": False}),
        (8, 40, 3, {"fall": 0.6, "grain": 12, "quality": 50, "turn": -15}),
    ],
)
def test_a_photographed_chart_in_symbols_is_read(around, rows, symbols, taken):
    """Told how many symbols there are, and untold: then a symbol may come in two groups, but no group has two."""
    pattern = random_rope(around, rows, symbols, seed=around + rows)
    drawn = Drawn(around, rows, lying=not taken.get("upright", True))
    seen = photographed(in_symbols(pattern), **taken)
    paper = fitted(seen.pixels, Paper(seen.corners), drawn)
    for many in (0, symbols):
        reading = read_symbols(seen.pixels, paper, drawn, many)
        wrong = wrong_beads(pattern, reading)
        assert len(reading.colours) == symbols if many else symbols <= len(reading.colours) <= 2 * symbols
        assert len(wrong) <= (1 - LEAST_RIGHT) * len(pattern.chart)
        assert wrong <= set(reading.doubts)
        assert [reading.beads[bead] for bead in reading.examples] == list(range(len(reading.colours)))
        assert not wrong & set(reading.examples)
    assert len(reading.doubts) < 0.05 * len(pattern.chart)


def test_a_cell_that_was_scribbled_on_is_in_doubt():
    pattern, drawn = random_rope(12, 20, 3, seed=2), Drawn(12, 20)
    taken = photographed(in_symbols(pattern), off_px=0, fall=0)
    pixels, paper = taken.pixels.copy(), Paper(taken.corners)
    x, y = (paper.places(drawn.middles())[100] * pixels.shape[1::-1]).astype(int)
    pixels[y - 9 : y + 10, x - 9 : x] = 30
    assert 100 in read_symbols(pixels, paper, drawn, 3).doubts


def test_cells_too_small_for_symbols_are_refused():
    taken = photographed(in_symbols(random_rope(12, 40, 3, seed=2)), long_px=500)
    with pytest.raises(EngineError, match="pixels there; symbols want at least 14") as refused:
        read_symbols(taken.pixels, Paper(taken.corners), Drawn(12, 40), 3)
    assert refused.value.field == "rows"
