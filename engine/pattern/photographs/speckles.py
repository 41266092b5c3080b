"""Single beads, which look like mistakes: taken over by what stands round them."""

from __future__ import annotations

from collections import Counter

import numpy as np

from engine.pattern.lattice import neighbours


def without_speckles(around: int, beads: bytes) -> bytes:
    """The chart in which every bead that touches none of its own colour has the most frequent colour round it.

    The chart is taken as said again and again. It is gone through in working order until no such bead is left, each
    time with more beads that touch their like, so that it comes to an end; once more changes nothing. Of colours that
    are as frequent, that of the bead before or the nearest to it is taken.
    """
    changed = bytearray(beads)
    while alone := _alone(around, changed):
        for k in alone:
            touching = [changed[near] for near in neighbours(around, k, len(changed))]
            if touching and changed[k] not in touching:
                changed[k] = Counter(reversed(touching)).most_common(1)[0][0]
    return bytes(changed)


def _alone(around: int, beads: bytearray) -> list[int]:
    """The beads that touch others, and none of their own colour."""
    if len(beads) < 2:
        return []
    row = np.frombuffer(bytes(beads), np.uint8)
    like = np.zeros(len(row), bool)
    for step in (1, around, around + 1):
        for way in (step, -step):
            like |= (np.roll(row, way) == row) & (step % len(row) != 0)
    return np.flatnonzero(~like).tolist()
