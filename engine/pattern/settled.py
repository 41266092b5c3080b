"""A model of the rope whose beads differ in size: spheres on the lattice's contacts, settled until they touch.

Bead k is a sphere of its own diameter and touches k + 1, k + N and k + N + 1. What is said again and again along the
rope is one stretch of P beads: bead k + P is bead k turned round the axis by φ and moved along it by t. That leaves as
many unknowns (3 P places, φ and t, less a turn and a move of the whole) as contacts (3 P), so a rope of one kind
settles to the exact helix, and others near to it to where all touch; where they cannot, gaps and overlaps are least.
The steps are Newton's, damped (Levenberg and Marquardt), each solved by conjugate gradients.

Thread, tension and glass that gives are not in the model, nor that beads further off may touch.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from engine.pattern.helix import helix
from engine.pattern.repeats import repeat

Array = NDArray[np.float64]

MOST_SETTLED = 2000  # beads of a stretch; longer ones are not settled
MOST_STEPS, MOST_INNER = 40, 60
TOUCHING = 1e-9  # in mean diameters: contacts that are so near touch
STILL = 0.01  # share by which a step must lessen what is left, or the rope lies still
STIFF, NEAR = 0.01, 0.02  # least damping, so that no bead falls in, until contacts are so near to touching


class Settled(NamedTuple):
    """Measures of a settled rope in mean bead diameters.

    `rise` is the length a bead adds, `thickness` across its largest beads, `channel` the room between the innermost
    ones, `off` by how much contacts fail to touch (root of the mean square). `places` are (x, y, z) of the beads of a
    stretch, the axis along z; `twist` in radians and `move` lead to the next one. `diameters` are those of the beads.
    """

    rise: float
    thickness: float
    channel: float
    off: float
    diameters: tuple[float, ...]
    places: tuple[tuple[float, float, float], ...]
    twist: float
    move: float


def settled(around: int, beads: bytes, diameters: tuple[float, ...]) -> Settled | None:
    """The rope in which a chart is said again and again; `diameters` by palette index, in any unit.

    None where its repeat is longer than MOST_SETTLED.
    """
    stretch = beads[: repeat(beads)]
    if len(stretch) > MOST_SETTLED:
        return None
    sizes = [diameters[bead] for bead in stretch]
    mean = sum(sizes) / len(sizes)
    return _settled(around, tuple(size / mean for size in sizes))


def settled_charts(around: int, charts: Iterable[bytes], diameters: tuple[float, ...]) -> dict[bytes, Settled]:
    """Those charts of a rope whose beads differ in size, settled each by itself; as `settled`.

    The shortest come first, and no more than MOST_SETTLED beads in all, so that nobody waits for more than a second.
    """
    differing = {chart for chart in charts if len({diameters[bead] for bead in set(chart)}) > 1}
    found: dict[bytes, Settled] = {}
    room = MOST_SETTLED
    for chart in sorted(differing, key=lambda chart: (repeat(chart), chart)):
        room -= repeat(chart)
        if room < 0 or (made := settled(around, chart, diameters)) is None:
            break
        found[chart] = made
    return found


@lru_cache(64)
def _settled(around: int, diameters: tuple[float, ...]) -> Settled:
    rope = _Rope.of(around, np.array(diameters))
    state = rope.on_the_helix()
    seen = rope.seen(state)
    damping = STIFF
    for _ in range(MOST_STEPS):
        if seen.off < TOUCHING:
            break
        trial = state + rope.step(seen, damping)
        then = rope.seen(trial)
        if then.off >= seen.off:
            damping *= 8
            continue
        still = seen.off - then.off < STILL * seen.off
        state, seen = trial, then
        damping = max(damping / 8, STIFF if seen.off > NEAR else 0.0)
        if still:
            break
    return rope.measured(state, seen)


class _Seen(NamedTuple):
    """The contacts of a state, (3, P) of them: what is too long in each, its direction from the one bead to the other,
    the same turned back to where the other bead is kept, and how twist and move change it."""

    too_long: Array
    direction: Array
    back: Array
    rim: Array

    @property
    def off(self) -> float:
        return float(np.sqrt((self.too_long**2).mean()))


@dataclass(frozen=True)
class _Rope:
    """The contacts of one stretch: the `other` bead of every bead for the three steps, `ahead` so many stretches.

    A state is x, y, z of every bead, then twist and move from stretch to stretch.
    """

    around: int
    diameters: Array
    other: NDArray[np.intp]
    ahead: NDArray[np.intp]

    @classmethod
    def of(cls, around: int, diameters: Array) -> _Rope:
        beads = len(diameters)
        ahead, other = np.divmod(np.arange(beads) + np.array([[1], [around], [around + 1]]), beads)
        return cls(around, diameters, other, ahead)

    def on_the_helix(self) -> Array:
        """Every bead where it would stand among beads of the mean size."""
        (radius, twist, rise), beads = helix(self.around), len(self.diameters)
        k = np.arange(beads)
        places = np.column_stack([radius * np.cos(k * twist), radius * np.sin(k * twist), k * rise])
        return np.concatenate([places.ravel(), [beads * twist, beads * rise]])

    def seen(self, state: Array) -> _Seen:
        places, (twist, move) = state[:-2].reshape(-1, 3), state[-2:]
        turned = _turned(places[self.other], self.ahead * twist)
        turned[..., 2] += self.ahead * move
        apart = turned - places
        lengths = np.sqrt((apart**2).sum(axis=-1))
        direction = apart / lengths[..., None]
        by_twist = self.ahead * (direction[..., 1] * turned[..., 0] - direction[..., 0] * turned[..., 1])
        return _Seen(
            lengths - (self.diameters + self.diameters[self.other]) / 2,
            direction,
            _turned(direction, -self.ahead * twist),
            np.stack([by_twist, self.ahead * direction[..., 2]], axis=-1),
        )

    def step(self, seen: _Seen, damping: float) -> Array:
        """The damped step towards touching: normal equations, by conjugate gradients scaled to their diagonal."""
        diagonal = self._to_state(seen, np.ones_like(seen.too_long), squared=True) + damping
        left = -self._to_state(seen, seen.too_long)
        found, scaled = np.zeros_like(left), left / diagonal
        way, size = scaled.copy(), float(left @ scaled)
        enough = 1e-20 * size
        for _ in range(MOST_INNER):
            if size <= enough:
                break
            pulled = self._to_state(seen, self._to_contacts(seen, way)) + damping * way
            length = size / float(way @ pulled)
            found += length * way
            left -= length * pulled
            scaled = left / diagonal
            size, before = float(left @ scaled), size
            way = scaled + size / before * way
        return found

    def _to_contacts(self, seen: _Seen, moved: Array) -> Array:
        """How much longer each contact becomes when the state moves so."""
        places = moved[:-2].reshape(-1, 3)
        beads = np.einsum("fki,fki->fk", seen.back, places[self.other]) - np.einsum(
            "fki,ki->fk", seen.direction, places
        )
        return np.asarray(beads + seen.rim @ moved[-2:])

    def _to_state(self, seen: _Seen, pulls: Array, squared: bool = False) -> Array:
        """What pulls along the contacts come to at every bead, and for twist and move."""
        power = 2 if squared else 1
        places = (seen.direction**power * pulls[..., None]).sum(axis=0) * (1 if squared else -1)
        for other, back, pull in zip(self.other, seen.back, pulls, strict=True):
            places[other] += back**power * pull[:, None]
        rim = (seen.rim**power * pulls[..., None]).sum(axis=(0, 1))
        return np.concatenate([places.ravel(), rim])

    def measured(self, state: Array, seen: _Seen) -> Settled:
        places, (twist, move) = state[:-2].reshape(-1, 3), state[-2:]
        out = np.hypot(places[:, 0], places[:, 1])
        return Settled(
            rise=float(move) / len(places),
            thickness=float(2 * (out + self.diameters / 2).max()),
            channel=float(2 * (out - self.diameters / 2).min()),
            off=seen.off,
            diameters=tuple(map(float, self.diameters)),
            places=tuple((float(x), float(y), float(z)) for x, y, z in places),
            twist=float(twist),
            move=float(move),
        )


def _turned(places: Array, angles: Array) -> Array:
    """The places, each turned round the axis by its angle."""
    cos, sin = np.cos(angles), np.sin(angles)
    x, y = places[..., 0], places[..., 1]
    return np.stack([cos * x - sin * y, sin * x + cos * y, places[..., 2]], axis=-1)
