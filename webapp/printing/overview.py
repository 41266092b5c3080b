"""The whole chart as one small picture for all its sheets, two pixels a bead, so that rows lie half a bead across."""

from __future__ import annotations

import numpy as np

from engine.drawing.beadform import Array
from engine.pattern.chart import Chart
from engine.pattern.pattern import Pattern
from engine.pattern.rgb import rgb

GROUND = (255, 255, 255)


def overview(pattern: Pattern) -> Array:
    """The chart upright, read from the bottom, as (2 × rows, 2 × (N + 1), 3) uint8; mirrored for the left hand."""
    chart = Chart(pattern.around, pattern.main.beads)
    colours = np.array([rgb(entry.colour) for entry in pattern.palette] + [GROUND], np.uint8)
    indices = np.full((chart.rows, 2 * (pattern.around + 1)), len(pattern.palette), np.uint8)
    for row in range(chart.rows):
        beads = np.repeat(np.frombuffer(chart.row(row), np.uint8), 2)
        indices[row, row % 2 : row % 2 + len(beads)] = beads
    seen = np.repeat(indices[::-1], 2, axis=0)
    return np.ascontiguousarray(colours[seen[:, ::-1] if pattern.hand == "left" else seen])
