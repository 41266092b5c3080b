"""What tells the beads of a chart on paper apart: their colours, or a symbol in each."""

from __future__ import annotations

from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.grains import Pixels
from engine.pattern.old_charts.paper import Paper
from engine.pattern.old_charts.reading import Reading, read_chart
from engine.pattern.old_charts.symbols import read_symbols

COLOURS, SYMBOLS = "colours", "symbols"


def read_marks(pixels: Pixels, paper: Paper, drawn: Drawn, many: int, marks: str) -> Reading:
    """The beads of a chart told apart so, in so many kinds, or as many as there seem to be. Raises EngineError."""
    return (read_symbols if marks == SYMBOLS else read_chart)(pixels, paper, drawn, many)
