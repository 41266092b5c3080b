"""Which colour every bead of a chart on paper has, and which of them are in doubt.

The light on a photograph changes from side to side, slowly. It is told from the colours by turns: beads are gathered to
few colours, what all beads of a colour differ from it in is put down to a light that changes as a curved plane, and
with that light taken off they are gathered again.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from engine.errors import EngineError
from engine.pattern.colour import hex_of
from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.grains import LINEAR, Pixels, bead_px, grains, grounds
from engine.pattern.old_charts.paper import Paper
from engine.pattern.photographs.few_colours import middles_of, nearest_middle
from engine.pattern.photographs.oklab import linear_of_oklab, oklab_of
from engine.units import plain

Array = NDArray[np.float64]

LEAST_PX = 5  # of a bead's shorter side
AT_ONCE = 8192  # beads
AT_FIRST = 20  # groups that are looked for before those that are alike are put together
ALIKE = 0.035  # in OKLab: middles that are nearer are of one colour (our judgement)
ROUNDS = 8  # of colours and light
LIGHTEST = 98  # per cent of a picture that are no lighter than paper (our judgement)
DARK = 1e-3  # linear light below which no camera tells anything
CLEAR = 0.45  # how near to a colour, beside how near to the second, is in doubt (our judgement)
SMEARED = 0.6  # share of a bead's places that must look like its colour (our judgement)


@dataclass(frozen=True)
class Reading:
    """Palette places in working order, the colours "#rrggbb" in even light, and the beads in doubt, worst first.

    Of a chart in symbols colours are empty, and `examples` are the beads that look most like each symbol.
    """

    beads: bytes
    colours: tuple[str, ...]
    doubts: tuple[int, ...]
    examples: tuple[int, ...] = ()


def read_chart(pixels: Pixels, paper: Paper, drawn: Drawn, many: int = 0) -> Reading:
    """The beads of a chart in a picture; in so many colours, or as many as are told apart.

    Raises EngineError where beads are too small in the picture.
    """
    if (size := bead_px(pixels, paper, drawn)) < LEAST_PX:
        raise EngineError(
            f"A bead has about {plain(size, 1)} pixels there; at least {LEAST_PX} are wanted. Are there so many rows? "
            "If so, photograph the chart nearer, in parts.",
            "rows",
        )
    middles = np.concatenate([grounds(grains(pixels, paper, drawn, block)) for block in _blocks(drawn)])
    light = _light(np.maximum(middles, DARK), drawn.middles(), many)
    lab = oklab_of(np.maximum(middles, DARK) / light)
    colours = _colours(lab, many)
    groups = nearest_middle(lab, colours)
    order = np.argsort(-np.bincount(groups, minlength=len(colours)), kind="stable")
    like = [
        _share_alike(grains(pixels, paper, drawn, block) / light[block, None], colours, groups[block])
        for block in _blocks(drawn)
    ]
    doubt = np.maximum(_between(lab, colours), (1 - np.concatenate(like)) / (1 - SMEARED))
    worst = np.argsort(-doubt, kind="stable")
    return Reading(
        beads=bytes(np.argsort(order)[groups].astype(np.uint8)),
        colours=hex_of(np.clip(linear_of_oklab(colours[order]) / _white(pixels), 0, 1)),
        doubts=tuple(worst[doubt[worst] > 1].tolist()),
    )


def _blocks(drawn: Drawn) -> Iterator[slice]:
    return (slice(first, first + AT_ONCE) for first in range(0, len(drawn.middles()), AT_ONCE))


def _white(pixels: NDArray[np.uint8]) -> Array:
    """Linear RGB (3,) of the lightest there is in a picture, which mostly is paper."""
    lightest: Array = np.percentile(LINEAR[pixels[::4, ::4].reshape(-1, 3)], LIGHTEST, axis=0)
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


def _between(lab: Array, colours: Array) -> Array:
    """How far every bead lies on the way from its colour to the second nearest; above 1 it is in doubt."""
    if len(colours) == 1:
        return np.zeros(len(lab))
    near = np.sort(np.sqrt(((lab[:, None] - colours[None]) ** 2).sum(axis=-1)), axis=1)
    between: Array = near[:, 0] / np.maximum(near[:, 1], 1e-9) / CLEAR
    return between


def _share_alike(even: Array, colours: Array, groups: NDArray[np.int64]) -> Array:
    """The share of every bead's places (beads, places, 3), linear RGB, that look most like its colour."""
    nearest = nearest_middle(oklab_of(even.reshape(-1, 3)), colours).reshape(len(groups), -1)
    share: Array = (nearest == groups[:, None]).mean(axis=1)
    return share
