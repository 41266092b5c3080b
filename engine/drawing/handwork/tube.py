"""The tube as it is held: upright, its open end towards the reader from above, loops at its rim, beads outside."""

from __future__ import annotations

from collections.abc import Iterable
from math import cos, radians, sin
from typing import NamedTuple

from engine.drawing.handwork.beads import OLD, Look, bead
from engine.drawing.handwork.curves import smooth, superoval
from engine.drawing.handwork.marks import oval
from engine.drawing.handwork.parts import LINE, PALE, THIN, WHITE, Part, Parts, Stroke
from engine.drawing.handwork.threads import thread
from engine.drawing.shapes import Point

SQUASH, UP = 0.66, 0.75  # how far a round is foreshortened, and what is left of heights
OUT = 2.6  # mm from the rim to the middle of a bead
THREAD_MM = 0.85


class Tube(NamedTuple):
    """A tube of `around` beads, in mm. Bead 0 is worked into next, bead `around` − 1 was worked last.

    Bearings are degrees from three o'clock, as the work runs: at the far wall from right to left. `first` is that of
    bead 0, `rise` the climb of a round.
    """

    centre: Point
    radius: float = 10.6
    around: int = 8
    first: float = 68.0
    size: float = 8.4
    rise: float = 7.4

    def bearing(self, k: float) -> float:
        """Of bead k."""
        return self.first + k * 360 / self.around

    def at(self, bearing: float, out: float = 0.0, up: float = 0.0) -> Point:
        """The point of the page so far outside the rim and above bead 0."""
        (x, y), radius, turn = self.centre, self.radius + out, radians(bearing)
        return x + radius * cos(turn), y - SQUASH * radius * sin(turn) - UP * up

    def rim(self, k: float, out: float = 0.0, up: float = 0.0) -> Point:
        """A point by the rim at bead k, which has climbed since bead 0."""
        return self.at(self.bearing(k), out, self.rise * k / self.around + up)

    def far(self, k: float) -> bool:
        """Whether bead k stands at the far wall."""
        return sin(radians(self.bearing(k))) > -0.1

    def stands(self, k: float) -> Point:
        """The middle of bead k while it stands upright."""
        return self.rim(k, OUT, self.size * 0.33)


def standing(centre: Point, size: float, look: Look = OLD) -> Parts:
    """A bead that was just worked: it stands upright and turns its hole up."""
    x, y = centre
    top = (x, y - 0.22 * size)
    return (
        Stroke(superoval(centre, size * 0.5, size * 0.44, 0.0, 0.66), look.fill, look.edge, look.width),
        *oval(top, size * 0.34, size * 0.14, 0.0, WHITE, look.edge, THIN),
        *oval(top, size * 0.17, size * 0.07, 0.0, look.edge, ""),
    )


def arch(tube: Tube, k: float) -> list[Point]:
    """The thread that holds bead k: out of its hole, over its far side, down to the rim before the next bead."""
    size, reach = tube.size, min(1.0, tube.around / 8)  # no farther than in a ring of eight
    return [
        tube.rim(k, OUT, size * 0.56),
        tube.rim(k + 0.08 * reach, OUT, size * 0.78),
        tube.rim(k + 0.36 * reach, OUT * 0.7, size * 0.70),
        tube.rim(k + 0.62 * reach, OUT * 0.2, size * 0.30),
        tube.rim(k + 0.68 * reach, -0.5, -size * 0.02),
    ]


def held(tube: Tube, k: float, first: int = 0) -> Parts:
    """The thread that holds bead k, from one of its points on."""
    return thread(arch(tube, k), first, None, THREAD_MM, over=True, halo=0.3)


def upright(tube: Tube, ks: Iterable[int], last: int) -> Parts:
    """Beads that stand at the rim, the far ones first, each with its thread; the thread of the last is on the hook."""
    made: list[Part] = []
    for k in sorted(ks, key=lambda k: -sin(radians(tube.bearing(k)))):
        made += (*standing(tube.stands(k), tube.size), *(held(tube, k) if k < last else ()))
    return tuple(made)


def inside(tube: Tube, first: float, last: float) -> Parts:
    """The far wall of thread as it is seen in the open end, and its rim between two beads."""
    count = round((last - first) * 4)
    edge = [tube.rim(first + (last - first) * i / count, -0.6) for i in range(count + 1)]
    made: list[Part] = [Stroke(smooth([*edge, tube.rim(last + 0.12, -0.6)]), PALE, "", 0.0)]
    for down in (3.0, 5.6, 8.2):
        row = [tube.at(way, -1.2, tube.rise / 2 * (1 - sin(radians(way))) - down) for way in range(26, 155, 8)]
        made.append(Stroke(smooth(row), "", LINE, THIN))
    return (*made, *thread(edge, width=1.1))


def wall_in_front(tube: Tube, rows: int = 2, top: float = 0.36) -> Parts:
    """The rounds below on the near wall, seen from outside: their beads lie flat and hang `top` beads high."""
    deep = tube.size * (0.5 - top) + tube.rise * rows
    edge = [
        *(tube.at(way, 1.0) for way in range(175, 366, 10)),
        *(tube.at(way, 1.0, -deep) for way in range(365, 174, -10)),
    ]
    made: list[Part] = [Stroke(smooth(edge, closed=True), PALE, "", 0.0)]
    for row in range(rows, 0, -1):
        ks = (k + (0.5 if row % 2 else 0.0) for k in range(-1, tube.around + 1))
        for k in sorted(ks, key=lambda k: -sin(radians(tube.bearing(k)))):
            if sin(radians(tube.bearing(k))) < 0.3:
                made += bead(tube.rim(k, OUT, tube.size * top - tube.rise * row), 0.0, tube.size)
    return tuple(made)
