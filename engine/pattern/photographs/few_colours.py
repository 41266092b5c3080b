"""The few colours that stand for many: k-means in OKLab, always begun in the same way, or the nearest at hand."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from engine.pattern.colour import hex_of, lab_of, linear_rgb, pairwise
from engine.pattern.photographs.oklab import linear_of_oklab, oklab_of

Array = NDArray[np.float64]

MOST_FOUND = 24
MOST_STEPS, MOST_ASKED = 16, 4096  # of the colours so many are asked, spread evenly
SAME = 1e-9  # spread (squared, in OKLab) of what is one colour


def few_colours(linear: Array, many: int) -> tuple[str, ...]:
    """At most so many colours "#rrggbb" for linear RGB (m, 3), m ≥ 1; the most frequent first, no two alike."""
    lab = oklab_of(linear)
    asked = lab[:: -(-len(lab) // MOST_ASKED)]
    middles = middles_of(asked, many)
    nearest = nearest_middle(lab, middles)
    counts = np.bincount(nearest, minlength=len(middles))
    order = np.argsort(-counts, kind="stable")
    cores = [_core(lab[nearest == place], middles[place]) for place in order.tolist()]
    found = hex_of(linear_of_oklab(np.array(cores)))
    return tuple(dict.fromkeys(colour for colour, times in zip(found, counts[order], strict=True) if times))


def those_at_hand(colours: Sequence[str], at_hand: Sequence[str]) -> tuple[int, ...]:
    """For each colour the place of the nearest that is at hand (CIEDE2000), none twice, as far as there are any."""
    apart = pairwise(lab_of(linear_rgb(colours))[:, None], lab_of(linear_rgb(at_hand))[None])
    taken: list[int] = []
    for row in apart:
        free = next((place for place in np.argsort(row, kind="stable").tolist() if place not in taken), None)
        taken += [] if free is None else [free]
    return tuple(taken)


def middles_of(lab: Array, many: int) -> Array:
    """The middles (n, 3) of at most so many groups of colours (m, 3) in OKLab, m ≥ 1; a group may be empty."""
    return _settled(lab, _begun(lab, many))


def nearest_middle(lab: Array, middles: Array) -> NDArray[np.int64]:
    """The place (m,) of the middle (n, 3) that is nearest to each of (m, 3), as the crow flies."""
    apart = (middles**2).sum(axis=1) - 2 * lab @ middles.T  # what all have in common is left out
    nearest: NDArray[np.int64] = apart.argmin(axis=1)
    return nearest


def _begun(lab: Array, many: int) -> Array:
    """Middles to begin with: the group that is spread most is cut in two, across its longest way, again and again."""
    groups = [lab]
    while len(groups) < many:
        spread = [float(((group - group.mean(axis=0)) ** 2).sum()) for group in groups]
        widest = int(np.argmax(spread))
        if spread[widest] < SAME:
            break
        groups += _halves(groups.pop(widest))
    return np.array([group.mean(axis=0) for group in groups])


def _halves(group: Array) -> list[Array]:
    off = group - group.mean(axis=0)
    _, ways = np.linalg.eigh(off.T @ off)
    along = off @ ways[:, -1]
    beyond = along > 0 if (along > 0).any() and (along <= 0).any() else along > along.min()
    return [group[~beyond], group[beyond]]


def _settled(lab: Array, middles: Array) -> Array:
    """The middles after each was moved to the mean of what is nearest to it, until none moves."""
    for _ in range(MOST_STEPS):
        nearest = nearest_middle(lab, middles)
        counts = np.bincount(nearest, minlength=len(middles))
        sums = np.stack([np.bincount(nearest, lab[:, part], len(middles)) for part in range(lab.shape[1])], axis=1)
        moved = np.where(counts[:, None] > 0, sums / np.maximum(counts, 1)[:, None], middles)
        if np.allclose(moved, middles, atol=1e-5):
            break
        middles = moved
    return middles


def _core(group: Array, middle: Array) -> Array:
    """The mean of that half of a group which is nearest to its median, so that blurred edges do not stain a colour."""
    if not len(group):
        return middle
    apart = ((group - np.median(group, axis=0)) ** 2).sum(axis=1)
    core: Array = group[apart <= np.median(apart)].mean(axis=0)
    return core
