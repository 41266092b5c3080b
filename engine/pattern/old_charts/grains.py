"""What a picture shows of every bead of a chart on paper: places in a frame round where symbols stand."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from engine.pattern.colour import decoded
from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.paper import Paper

Array = NDArray[np.float64]
Pixels = NDArray[np.uint8]  # (height, width, 3), sRGB

BESIDE = (-0.40, -0.355, -0.31, 0.31, 0.355, 0.40)  # of a bead, from its middle: at both sides of a symbol
OVER = (-0.41, -0.37, 0.37, 0.41)
CALMER = 3  # how often the half that is most alike is chosen anew
LINEAR = decoded(np.arange(256) / 255)


def grains(pixels: Pixels, paper: Paper, drawn: Drawn, beads: slice) -> Array:
    """Linear RGB (beads, places, 3) of every place that is looked at; nearest pixels."""
    middles = drawn.middles()[beads]
    sheet = (middles[:, None] + (_frame(drawn.lying) * drawn.bead())[None]).reshape(-1, 2)
    height, width = pixels.shape[:2]
    at = np.floor(paper.places(sheet) * (width, height)).astype(int)
    seen = pixels[np.clip(at[:, 1], 0, height - 1), np.clip(at[:, 0], 0, width - 1)]
    of_beads: Array = LINEAR[seen].reshape(len(middles), -1, 3)
    return of_beads


def grounds(of_beads: Array) -> Array:
    """The mean (beads, 3) of that half of each bead's places which are most alike: its ground, not its symbol."""
    coded, half = np.sqrt(of_beads), of_beads.shape[1] // 2
    ground = np.median(coded, axis=1)
    for _ in range(CALMER):
        apart = ((coded - ground[:, None]) ** 2).sum(axis=-1)
        alike = np.argpartition(apart, half, axis=1)[:, :half, None]
        ground = np.take_along_axis(coded, alike, axis=1).mean(axis=1)
    mean: Array = np.take_along_axis(of_beads, alike, axis=1).mean(axis=1)
    return mean


def bead_px(pixels: Pixels, paper: Paper, drawn: Drawn) -> float:
    """The shorter side of a bead in the middle of the sheet, in pixels."""
    wide, high = drawn.bead()
    sides = paper.places(np.array([(0.5, 0.5), (0.5 + wide, 0.5), (0.5, 0.5 + high)])) * pixels.shape[1::-1]
    return float(np.hypot(*(sides[1:] - sides[0]).T).min())


@lru_cache(2)
def _frame(lying: bool) -> Array:
    """The places (m, 2) that are looked at, in beads from a middle."""
    sides = [(x, y) for x in BESIDE for y in np.linspace(-0.38, 0.38, 9)]
    ends = [(x, y) for y in OVER for x in np.linspace(-0.26, 0.26, 5)]
    places = np.array(sides + ends)
    return places[:, ::-1] if lying else places
