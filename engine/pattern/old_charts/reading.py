"""Which colour every bead of a chart on paper has, and which of them are in doubt.

The light on a photograph changes from side to side, slowly. It is told from the colours by turns: beads are gathered to
few colours, what all beads of a colour differ from it in is put down to a light that changes as a curved plane, and
with that light taken off they are gathered again.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from engine.pattern.colour import decoded, hex_of
from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.paper import Paper
from engine.pattern.photographs.few_colours import middles_of, nearest_middle
from engine.pattern.photographs.oklab import linear_of_oklab, oklab_of

Array = NDArray[np.float64]

BESIDE = (-0.40, -0.355, -0.31, 0.31, 0.355, 0.40)  # of a bead, from its middle: a symbol's sides, where its ground is
OVER = (-0.41, -0.37, 0.37, 0.41)
CALMER = 3  # how often the half that is most alike is chosen anew
AT_FIRST = 20  # groups that are looked for before those that are alike are put together
ALIKE = 0.035  # in OKLab: middles that are nearer are of one colour (our judgement)
ROUNDS = 8
LIGHTEST = 98  # per cent of a picture that are no lighter than paper (our judgement)
DARK = 1e-3  # linear light below which no camera tells anything
CLEAR = 0.45  # share of the way to the second nearest colour from which on the nearest is in doubt (our judgement)
SMEARED = 0.6  # share of a bead's places that must look like its colour (our judgement)
FITTED = 400  # beads that are looked at while the sheet is fitted
STEPS, TRIES, MOST_OFF = (0.16, 0.08, 0.04, 0.02), 3, 0.45  # in beads
WAYS = ((1, 0), (-1, 0), (0, 1), (0, -1))
EVERY = slice(None)
_LINEAR = decoded(np.arange(256) / 255)


@dataclass(frozen=True)
class Reading:
    """Palette places in working order, the colours "#rrggbb" in even light, and the beads in doubt, worst first."""

    beads: bytes
    colours: tuple[str, ...]
    doubts: tuple[int, ...]


def read_chart(pixels: NDArray[np.uint8], paper: Paper, drawn: Drawn, many: int = 0) -> Reading:
    """The beads of a chart in a picture (height, width, 3), sRGB; in so many colours, or as many as are told apart."""
    grains = _grains(pixels, paper, drawn)
    middles = np.maximum(_grounds(grains), DARK)
    light = _light(middles, drawn.middles(), many)
    lab = oklab_of(middles / light)
    colours = _colours(lab, many)
    groups = nearest_middle(lab, colours)
    order = np.argsort(-np.bincount(groups, minlength=len(colours)), kind="stable")
    doubt = _doubt(lab, oklab_of((np.maximum(grains, DARK) / light[:, None]).reshape(-1, 3)), colours, groups)
    worst = np.argsort(-doubt, kind="stable")
    return Reading(
        beads=bytes(np.argsort(order)[groups].astype(np.uint8)),
        colours=hex_of(np.clip(linear_of_oklab(colours[order]) / _white(pixels), 0, 1)),
        doubts=tuple(worst[doubt[worst] > 1].tolist()),
    )


def fitted(pixels: NDArray[np.uint8], paper: Paper, drawn: Drawn) -> Paper:
    """The sheet moved at its marked points, by less than half a bead each, until beads are as even in colour as can be.

    What a person marks is a few pixels off. Points are tried one after another, in steps that grow smaller.
    """
    some = np.arange(0, len(drawn.middles()), -(-len(drawn.middles()) // FITTED))
    marked = paper.marked
    sizes = np.abs(np.diff(paper.places(np.array([(0.5, 0.5), np.add((0.5, 0.5), drawn.bead())])), axis=0))[0]
    best, at = _unevenness(pixels, paper, drawn, some), marked.copy()
    for step in STEPS:
        for _ in range(TRIES):
            before = best
            for point in range(len(at)):
                for way in WAYS:
                    trial = at.copy()
                    trial[point] += np.multiply(way, sizes.max()) * step
                    if np.abs(trial - marked).max() > MOST_OFF * sizes.max():
                        continue
                    cost = _unevenness(pixels, paper.moved(trial), drawn, some)
                    if cost < best:
                        best, at = cost, trial
            if best == before:
                break
    return paper.moved(at)


def _unevenness(pixels: NDArray[np.uint8], paper: Paper, drawn: Drawn, some: NDArray[np.int64]) -> float:
    coded = np.sqrt(_grains(pixels, paper, drawn, some))
    return float(np.abs(coded - np.median(coded, axis=1, keepdims=True)).mean())


def _grains(pixels: NDArray[np.uint8], paper: Paper, drawn: Drawn, some: NDArray[np.int64] | slice = EVERY) -> Array:
    """Linear RGB (beads, places, 3) of every place that is looked at."""
    within = _looked_at(drawn.lying) * drawn.bead()
    middles = drawn.middles()[some]
    sheet = (middles[:, None] + within[None]).reshape(-1, 2)
    height, width = pixels.shape[:2]
    at = np.floor(paper.places(sheet) * (width, height)).astype(int)
    seen = pixels[np.clip(at[:, 1], 0, height - 1), np.clip(at[:, 0], 0, width - 1)]
    grains: Array = _LINEAR[seen].reshape(len(middles), -1, 3)
    return grains


def _looked_at(lying: bool) -> Array:
    """The places in a bead (m, 2) that are looked at, from its middle: a frame round where symbols stand."""
    sides = [(x, y) for x in BESIDE for y in np.linspace(-0.38, 0.38, 9)]
    ends = [(x, y) for y in OVER for x in np.linspace(-0.26, 0.26, 5)]
    places = np.array(sides + ends)
    return places[:, ::-1] if lying else places


def _grounds(grains: Array) -> Array:
    """The mean (beads, 3) of that half of each bead's places which are most alike: its ground, and not its symbol."""
    coded, half = np.sqrt(grains), grains.shape[1] // 2
    ground = np.median(coded, axis=1)
    for _ in range(CALMER):
        apart = ((coded - ground[:, None]) ** 2).sum(axis=-1)
        alike = np.argpartition(apart, half, axis=1)[:, :half, None]
        ground = np.take_along_axis(coded, alike, axis=1).mean(axis=1)
    mean: Array = np.take_along_axis(grains, alike, axis=1).mean(axis=1)
    return mean


def _white(pixels: NDArray[np.uint8]) -> Array:
    """Linear RGB (3,) of the lightest there is in a picture, which mostly is paper."""
    lightest: Array = np.percentile(_LINEAR[pixels[::4, ::4].reshape(-1, 3)], LIGHTEST, axis=0)
    return np.maximum(lightest, DARK)


def _light(middles: Array, places: Array, many: int) -> Array:
    """The light on every bead, linear RGB (m, 3), 1 in the mean."""
    x, y = places.T * 2 - 1
    plane = np.stack([np.ones_like(x), x, y, x * y, x * x, y * y], axis=1)
    light = np.ones_like(middles)
    for _ in range(ROUNDS):
        lab = oklab_of(middles / light)
        groups = nearest_middle(lab, _colours(lab, many))
        off = np.log(middles)
        within = off.copy()
        tilted = plane[:, 1:].copy()
        for group in np.unique(groups):
            own = groups == group
            within[own] -= off[own].mean(axis=0)
            tilted[own] -= plane[own, 1:].mean(axis=0)
        weights = np.linalg.lstsq(tilted, within, rcond=None)[0]
        bent = plane[:, 1:] @ weights
        light = np.exp(bent - bent.mean(axis=0))
    return light


def _colours(lab: Array, many: int) -> Array:
    """The middles of the colours: so many, or of the many at first those put together that are alike."""
    middles = middles_of(lab, AT_FIRST)
    counts = np.bincount(nearest_middle(lab, middles), minlength=len(middles)).astype(float)
    while len(middles) > max(1, many):
        one, other = _most_alike(middles, counts)
        if not many and ((middles[one] - middles[other]) ** 2).sum() > ALIKE**2:
            break
        both = counts[one] + counts[other]
        middles[one] = (counts[one] * middles[one] + counts[other] * middles[other]) / max(both, 1)
        counts[one] = both
        middles, counts = np.delete(middles, other, axis=0), np.delete(counts, other)
    return middles


def _most_alike(middles: Array, counts: Array) -> tuple[int, int]:
    """The two groups that lose least when they become one (Ward 1963)."""
    apart = ((middles[:, None] - middles[None]) ** 2).sum(axis=-1)
    weigh = counts[:, None] * counts[None] / np.maximum(counts[:, None] + counts[None], 1)
    cost = apart * weigh + np.diag(np.full(len(middles), np.inf))
    one, other = divmod(int(cost.argmin()), len(middles))
    return one, other


def _doubt(lab: Array, grains: Array, colours: Array, groups: NDArray[np.int64]) -> Array:
    """How doubtful every bead is; above 1 it is to be looked at."""
    if len(colours) == 1:
        return np.zeros(len(lab))
    apart = np.sqrt(((lab[:, None] - colours[None]) ** 2).sum(axis=-1))
    near = np.sort(apart, axis=1)
    between = near[:, 0] / np.maximum(near[:, 0] + near[:, 1], 1e-9) / (CLEAR / (1 + CLEAR))
    like = (nearest_middle(grains, colours).reshape(len(lab), -1) == groups[:, None]).mean(axis=1)
    doubt: Array = np.maximum(between, (1 - like) / (1 - SMEARED))
    return doubt
