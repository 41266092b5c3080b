"""Beads from the side and along their hole, rounds, the wall of a tube, and rope."""

from __future__ import annotations

from collections.abc import Callable, Collection
from math import cos, degrees, hypot, radians, sin
from typing import NamedTuple

from engine.drawing.handwork.curves import grid, polar, superoval, trail, turned
from engine.drawing.handwork.marks import disc, line, oval
from engine.drawing.handwork.parts import (
    ACCENT,
    BOLD,
    FINE,
    GLASS,
    INK,
    LINE,
    PALE,
    THIN,
    TINT,
    WHITE,
    Part,
    Parts,
    Stroke,
)
from engine.drawing.shapes import Point

HELIX = {  # radius, twist, rise of touching spheres
    3: (0.645262, 1.705939, 0.234689),
    4: (0.785611, 1.351143, 0.185982),
    5: (0.932585, 1.116655, 0.153761),
    6: (1.083185, 0.950651, 0.130934),
    7: (1.235999, 0.827174, 0.113946),
    8: (1.390267, 0.731844, 0.100825),
    9: (1.545542, 0.656077, 0.090395),
}
BARREL = 0.70  # how square a bead is from the side


class Look(NamedTuple):
    """How a bead is painted: fill, edge, and the edge's width."""

    fill: str
    edge: str
    width: float


OLD, NEW, THERE = Look(GLASS, INK, FINE), Look(TINT, ACCENT, BOLD), Look(PALE, LINE, FINE)


def toned(fill: str) -> Look:
    """A bead of another colour."""
    return Look(fill, INK, FINE)


def bead(centre: Point, angle: float = 0.0, size: float = 4.0, look: Look = OLD, length: float = 0.74) -> Parts:
    """A bead from the side: `angle` is the way its hole runs; the thread is painted before it."""
    angle = (angle + 90) % 180 - 90  # the light comes from above, whichever way the thread runs
    a, b = size * length / 2, size / 2
    at = grid(centre, a, b, angle)
    body = Stroke(superoval(centre, a, b, angle, BARREL), look.fill, look.edge, look.width)
    mouths = Stroke(
        tuple(
            step
            for side in (-1, 1)
            for step in trail(
                at(0.93 * side, -0.3),
                (at(1.08 * side, -0.2), at(1.08 * side, 0.2), at(0.93 * side, 0.3)),
                (at(0.78 * side, 0.2), at(0.78 * side, -0.2), at(0.93 * side, -0.3)),
                close=True,
            )
        ),
        look.edge,
        "",
        0.0,
    )
    if look == THERE:
        return (body, mouths)
    return (body, mouths, Stroke(trail(at(-0.45, -0.62), (at(-0.1, -0.82), at(0.35, -0.72))), "", WHITE, size * 0.075))


def bead_end(centre: Point, size: float = 4.0, look: Look = OLD, thread: bool = True) -> Parts:
    """A bead seen along its hole, the thread cut across."""
    inside = disc(centre, size * 0.10, look.edge, "") if thread else ()
    return (
        *disc(centre, size / 2, look.fill, look.edge, look.width),
        *disc(centre, size * 0.19, WHITE, look.edge, THIN),
        *inside,
    )


def loose_bead(centre: Point, angle: float, size: float = 4.0, look: Look = OLD) -> Parts:
    """A bead lying free, its hole turned half to the viewer."""
    face = turned((size * 0.10, 0), angle, centre)
    return (
        *oval(centre, size * 0.46, size * 0.5, angle, look.fill, look.edge, look.width),
        *oval(face, size * 0.27, size * 0.38, angle, look.fill, look.edge, THIN),
        *oval(face, size * 0.10, size * 0.16, angle, look.edge, ""),
    )


def ring_of_beads(centre: Point, radius: float, count: int, size: float, start: float = 0.0, look: Look = OLD) -> Parts:
    """A round seen from the working end, holes along the round."""
    bearings = (start - 360 * i / count for i in range(count))
    return tuple(part for way in bearings for part in bead(polar(centre, radius, way), way + 90, size, look))


def wall(
    left: float,
    rows: tuple[tuple[float, float], ...] = ((31.8, 0.6), (35.6, 2.9), (39.4, 0.6)),
    width: float = 18.8,
    size: float = 4.0,
    pitch: float = 4.6,
) -> Parts:
    """The rounds already there, pale, holes along the round; each row is its height on the page and its shift."""
    made: list[Part] = []
    for y, shift in rows:
        made += line((left, y), (left + width, y), ink=LINE, width=0.7)
        places = (left + shift + i * pitch for i in range(int(width / pitch) + 2))
        made += (part for x in places if x < left + width + 1.5 for part in bead((x, y), 0, size, THERE))
    return tuple(made)


class DrawnRope(NamedTuple):
    """A rope that grows the way `angle` from its foot; upright work has angle −90. `phase` turns it, in degrees."""

    foot: Point
    angle: float
    around: int = 8
    size: float = 2.6
    phase: float = 0.0

    def spot(self, k: float) -> tuple[Point, float, float]:
        """Centre of bead k on the page, how near it is (1 nearest, −1 behind), and how far to the side."""
        radius, twist, rise = HELIX[self.around]
        turn = k * twist + radians(self.phase)
        local = (self.size * k * rise, self.size * radius * sin(turn))
        return turned(local, self.angle, self.foot), cos(turn), sin(turn)

    @property
    def twist(self) -> float:
        """Degrees round the rope from bead to bead."""
        return degrees(HELIX[self.around][1])

    @property
    def rise(self) -> float:
        """Millimetres along the rope from bead to bead."""
        return self.size * HELIX[self.around][2]

    @property
    def half(self) -> float:
        """Millimetres from the axis to the middle of a bead."""
        return self.size * HELIX[self.around][0]


def rope(of: DrawnRope, first: int = 0, last: int = 60, look: Callable[[int], Look] = lambda k: OLD) -> Parts:
    """Beads `first` to before `last` from the side, the farthest painted first."""
    seen = sorted((front, k, centre) for k in range(first, last) for centre, front, _ in (of.spot(k),) if front > -0.15)
    made: list[Part] = []
    for front, k, centre in seen:
        half = hypot(0.47 * of.size * front, 0.5 * of.size * (1 - front * front) ** 0.5)
        made.append(Stroke(superoval(centre, half, of.size * 0.5, of.angle + 90, 0.68), *look(k)))
    return tuple(made)


def painted(new: Collection[int], old: Look = OLD) -> Callable[[int], Look]:
    """The look of a rope in which some beads are new."""
    return lambda k: NEW if k in new else old
