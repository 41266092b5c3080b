"""The lattice fitted to the beads: what a person marks is a few pixels off."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.grains import Pixels, bead_px, grains
from engine.pattern.old_charts.paper import Paper

Array = NDArray[np.float64]

LOOKED_AT = 400  # beads
STEPS, TRIES = (0.16, 0.08, 0.04, 0.02), 3  # in beads; of each step all points are moved at most so often
MOST_OFF = 0.7  # of a bead, by which a marked point is moved at most (our judgement)
WAYS = ((1, 0), (-1, 0), (0, 1), (0, -1))


def fitted(pixels: Pixels, paper: Paper, drawn: Drawn) -> Paper:
    """The sheet moved at its marked points, each by less than a bead, until beads are as even in colour as can be.

    Points are tried one after another, in steps that grow smaller.
    """
    some = slice(0, None, -(-len(drawn.middles()) // LOOKED_AT))
    bead = bead_px(pixels, paper, drawn) / np.array(pixels.shape[1::-1])
    best, at = _unevenness(pixels, paper, drawn, some), paper.marked
    for step in (step for step in STEPS for _ in range(TRIES)):
        for off in _moves(len(at), step * bead):
            if (np.abs(at + off - paper.marked) > MOST_OFF * bead).any():
                continue
            cost = _unevenness(pixels, paper.moved(at + off), drawn, some)
            if cost < best:
                best, at = cost, at + off
    return paper.moved(at)


def _moves(points: int, step: Array) -> Iterator[Array]:
    """Every point moved by a step to every side, one at a time."""
    for point in range(points):
        for way in WAYS:
            off = np.zeros((points, 2))
            off[point] = way * step
            yield off


def _unevenness(pixels: Pixels, paper: Paper, drawn: Drawn, some: slice) -> float:
    coded = np.sqrt(grains(pixels, paper, drawn, some))
    return float(np.abs(coded - np.median(coded, axis=1, keepdims=True)).mean())
