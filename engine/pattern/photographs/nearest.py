"""Which colour of a palette every bead takes: the nearest by CIEDE2000, or two of them mixed so that they look like it.

Mixing adds up in linear light, as the eye does that sees beads from afar.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from engine.pattern.colour import lab_of, pairwise
from engine.pattern.photographs.oklab import oklab_of
from engine.pattern.starts.scattered import even_step

Array = NDArray[np.float64]
Places = NDArray[np.int64]

AT_ONCE = 4096
SURE = 4.5  # the rough difference may be so many times another's that is nearer; measured, at most 4.3
CALM = 0.02  # how much a mixture of unlike colours must be nearer to be taken (our judgement)
NEXT, ABOVE = 0.5, 0.25  # shares of what is off that go to the next bead and to each of the two above (our judgement)
FAR = 1.0  # beyond black and white: no more than that is carried on
LEVELS, BLOCK = 32, 4  # of each channel's square root; levels of a block that is matched at once


def nearest(linear: Array, palette: Array) -> Places:
    """Places (m,) in a palette (n, 3) of the colours nearest to (m, 3), both linear RGB."""
    lab, others = lab_of(linear), lab_of(palette)
    return np.concatenate([_nearest(lab[first : first + AT_ONCE], others) for first in range(0, len(lab), AT_ONCE)])


def _nearest(lab: Array, others: Array) -> Places:
    """By a rough difference first, so that the exact one is only asked of what may be nearest."""
    rough = _roughly(lab[:, None], others[None])
    maybe = rough <= rough.min(axis=1, keepdims=True) * SURE
    bead, place = np.nonzero(maybe)
    apart = np.full(rough.shape, np.inf)
    apart[bead, place] = pairwise(lab[bead], others[place])
    nearest: Places = apart.argmin(axis=1)
    return nearest


def _roughly(one: Array, other: Array) -> Array:
    """CIEDE2000 without what turns hues and blues, for Lab colours, the last axis L, a, b."""
    light, chroma = (one[..., 0] + other[..., 0]) / 2, np.hypot(one[..., 1], one[..., 2])
    others = np.hypot(other[..., 1], other[..., 2])
    mean, dc = (chroma + others) / 2, chroma - others
    dh2 = (one[..., 1] - other[..., 1]) ** 2 + (one[..., 2] - other[..., 2]) ** 2 - dc**2
    far = (light - 50) ** 2
    dl = (one[..., 0] - other[..., 0]) / (1 + 0.015 * far / np.sqrt(20 + far))
    apart: Array = np.sqrt(dl**2 + (dc / (1 + 0.045 * mean)) ** 2 + np.maximum(dh2, 0) / (1 + 0.015 * mean) ** 2)
    return apart


def mixed_evenly(around: int, linear: Array, palette: Array) -> Places:
    """As `nearest`, with the colour that mixes best beside it on as many beads as it takes, spread evenly.

    A bead takes the second where its place in an even sequence along the spiral lies below the share of that colour.
    """
    first = nearest(linear, palette)
    second, share = _partner(linear, palette, first)
    even = np.arange(len(linear)) * even_step(around) % 1
    return np.where(even < share, second, first)


def carried_on(around: int, linear: Array, palette: Array) -> Places:
    """As `nearest`, bead after bead along the spiral, with what each is off carried on to those that touch it later."""
    match, told = _Blocks(palette), palette.tolist()
    wanted, taken = linear.tolist(), []
    steps = ((1, NEXT), (around, ABOVE), (around + 1, ABOVE))
    for k in range(len(wanted)):
        red, green, blue = (min(1 + FAR, max(-FAR, value)) for value in wanted[k])
        place = match.place(red, green, blue)
        taken.append(place)
        r, g, b = told[place]
        for step, share in steps:
            if k + step < len(wanted):
                later = wanted[k + step]
                later[0] += (red - r) * share
                later[1] += (green - g) * share
                later[2] += (blue - b) * share
    return np.array(taken)


def _partner(linear: Array, palette: Array, first: Places) -> tuple[Places, Array]:
    """For every colour the palette's place that mixes best with its first, and its share, 0 … 1."""
    best, second, share = np.full(len(linear), np.inf), first.copy(), np.zeros(len(linear))
    own, lab = palette[first], oklab_of(palette)
    for place, colour in enumerate(palette):
        way = colour - own
        part = np.clip(((linear - own) * way).sum(axis=1) / np.maximum((way**2).sum(axis=1), 1e-12), 0, 1)
        off = ((oklab_of(own + part[:, None] * way) - oklab_of(linear)) ** 2).sum(axis=1)
        unlike = ((lab[place] - lab[first]) ** 2).sum(axis=1)
        cost = off + CALM**2 * unlike * (part > 0)
        better = cost < best
        best, second = np.where(better, cost, best), np.where(better, place, second)
        share = np.where(better, part, share)
    return second, share


class _Blocks:
    """The nearest of a palette for one colour after another, each channel to a level; worked out where needed.

    Levels are coarse among the darkest colours, so one that is the palette's own is known as such.
    """

    def __init__(self, palette: Array) -> None:
        self._palette = palette
        self._own = {tuple(colour): place for place, colour in reversed([*enumerate(palette.tolist())])}
        self._known: dict[tuple[int, int, int], list[int]] = {}
        level = np.arange(BLOCK)
        self._within = np.stack(np.meshgrid(level, level, level, indexing="ij"), axis=-1).reshape(-1, 3) + 0.5

    def place(self, red: float, green: float, blue: float) -> int:
        own = self._own.get((red, green, blue))
        return self._by_levels(red, green, blue) if own is None else own

    def _by_levels(self, red: float, green: float, blue: float) -> int:
        r, g, b = (min(LEVELS - 1, int(max(0.0, value) ** 0.5 * LEVELS)) for value in (red, green, blue))
        block = (r // BLOCK, g // BLOCK, b // BLOCK)
        if block not in self._known:
            middles = ((np.array(block) * BLOCK + self._within) / LEVELS) ** 2
            self._known[block] = nearest(middles, self._palette).tolist()
        return self._known[block][(r % BLOCK * BLOCK + g % BLOCK) * BLOCK + b % BLOCK]
