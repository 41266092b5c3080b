"""Thread on a hook: a loop that stands round its shaft, thread laid over it, each in part behind it, in part before."""

from __future__ import annotations

from math import copysign
from typing import NamedTuple

from engine.drawing.handwork.curves import Points, turned
from engine.drawing.handwork.parts import Parts
from engine.drawing.handwork.threads import OLD, Cord, thread
from engine.drawing.handwork.tools import Hook
from engine.drawing.shapes import Point


class Hooked(NamedTuple):
    """What lies behind the hook and what lies before it, and the whole line, for beads on it."""

    behind: Parts
    before: Parts
    route: Points


def loop_round(hook: Hook, u: float, foot: Point, width: float, cord: Cord = OLD, spread: float = 0.55) -> Hooked:
    """A loop round the shaft, `u` thicknesses from the tip, that comes up out of its foot."""
    _, v = turned((foot[0] - hook.tip[0], foot[1] - hook.tip[1]), -hook.angle)
    side = copysign(1.0, v)
    far, near = (turned((s * spread, 0), hook.angle, foot) for s in (1, -1))
    route = (
        far,
        hook.at(u + 0.62, 1.0 * side),
        hook.at(u + 0.42, 0.0),
        hook.at(u, -0.85 * side),
        hook.at(u - 0.42, 0.0),
        hook.at(u - 0.62, 1.0 * side),
        near,
    )
    return Hooked(
        thread(route, 0, 3, width, cord, over=True, halo=0.28, ends="s"),
        thread(route, 3, 6, width, cord, over=True, halo=0.28, ends="e"),
        route,
    )


def laid_over(hook: Hook, u: float, come: Points, go: Points, width: float, cord: Cord) -> Hooked:
    """Thread that comes up behind the hook, turns over its back, and goes on before it on the throat's side."""
    route = (
        *come,
        hook.at(u + 0.26, 1.0),
        hook.at(u + 0.2, 0.0),
        hook.at(u, -0.9),
        hook.at(u - 0.2, 0.0),
        hook.at(u - 0.26, 1.0),
        *go,
    )
    turn = len(come) + 2
    return Hooked(thread(route, 0, turn, width, cord), thread(route, turn, None, width, cord, over=True), route)
