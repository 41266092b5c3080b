"""Drawings of other endings: a cone, a button and its loop of beads, the knots of a sliding tie."""

from __future__ import annotations

from engine.drawing.handwork.beads import NEW, THERE, DrawnRope, bead, rope
from engine.drawing.handwork.curves import along, arc
from engine.drawing.handwork.findings import cap, dome, wire_ring
from engine.drawing.handwork.marks import arrow, beside, disc, oval, stacked
from engine.drawing.handwork.parts import FINE, INK, METAL, PALE, LineDrawing, Part, Parts, clipped
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import thread, wire
from engine.drawing.handwork.tools import needle
from engine.drawing.shapes import Point


def cone() -> Parts:
    """A cone threaded on the pin of a closed end; and pushed down over it."""
    return beside((0.0, 30.0, 60.0), _coned(15.5, 21.0, True), _coned(44.5, 36.0, False))


def _coned(x: float, rim: float, coming: bool) -> Parts:
    top = 29.0
    ink: list[Part] = [
        *dome(x, top),
        *wire([(x, 3.0), (x, 14), (x, top - 1.1)], ends="s"),
        *wire_ring((x, top + 1.0), 2.1),
        *cap((x, rim), 17.0, 15.0, new=True),
        *oval((x, rim - 15.0), 1.5, 0.45, 0, INK, ""),
        *wire([(x, 3.0), (x, (rim - 12) / 2), (x, rim - 14.9)], ends="s"),
    ]
    if coming:
        ink += (part for side in (x - 11.4, x + 11.4) for part in arrow((side, 19.0), (side, 28.0)))
    return (clipped((x - 14, 0.5, 28, 44), tuple(ink)),)


def button() -> Parts:
    """A button on its shank, sewn to the closed end of a rope."""
    x, y = 27.0, 22.5
    sewn = [(x - 1.0, y - 1.2), (x + 2.6, y - 2.0), (x + 5.4, y), (x + 2.6, y + 2.0), (x - 1.0, y + 1.2)]
    tail: list[Point] = [(x - 0.6, y + 1.6), (x + 2.0, y + 8.0), (x + 1.0, y + 13.0), (x - 3.0, y + 15.2)]
    return (
        *_lying_rope(x, y),
        *disc((x + 5.4, y), 2.2, "", INK, 1.1),
        *oval((x + 9.4, y), 2.2, 11.0, 0, PALE, INK, FINE),
        *oval((x + 10.6, y), 2.0, 11.0, 0, METAL, INK, FINE),
        *thread(sewn, width=0.9, cord=NEW_THREAD, over=True),
        *thread(tail, width=0.9, cord=NEW_THREAD, over=True),
        *needle((x - 3.6, y + 15.4), 176, 20.0),
    )


def loop() -> Parts:
    """Beads on the tail bent to a loop, and the needle going back into the end."""
    x, y, radius = 22.0, 22.5, 11.0
    centre = (x + 2.0 + radius, y)
    ring = arc(centre, radius, 190, 530, 18)
    ink: list[Part] = [
        *_lying_rope(x, y),
        *thread([(x - 2.0, y), *ring, (x - 1.0, y + 1.6)], width=0.9, cord=NEW_THREAD),
    ]
    for place in range(12):
        (a, b), way = along(ring, (place + 0.5) / 12)
        ink += bead((a, b), way, 6.2, NEW)
    tail: list[Point] = [(x - 1.0, y + 1.6), (x - 1.6, y + 8.6), (x - 2.6, y + 12.4), (x - 5.4, y + 14.6)]
    return (*ink, *thread(tail, width=0.9, cord=NEW_THREAD, over=True), *needle((x - 6.0, y + 14.8), 176, 14.0))


def sliding_tie() -> Parts:
    """Two pairs of cord, each knotted round the other; and drawn shut."""
    return stacked(22.6, _tied(12.4, 14.0), _tied(35.2, 4.0))


def _tied(y: float, apart: float) -> Parts:
    left, right = 30.0 - apart, 30.0 + apart
    ink: list[Part] = [*_lying_rope(8.0, y), *_standing_rope(52.0, y)]
    for up, start, end in ((-0.9, 5.6, right), (0.9, 52.4, left)):
        ink += thread([(start, y + up), ((start + end) / 2, y + up), (end, y + up)], width=1.2, cord=NEW_THREAD)
    for x in (left, right):
        ink += oval((x, y), 2.3, 2.8, 0, "#bfdeda", "#17635c", 0.5)
        ink += thread([(x - 1.2, y - 2.4), (x + 0.4, y), (x - 0.6, y + 2.4)], width=0.5, cord=NEW_THREAD)
    for x, way in ((right, 1), (left, -1)):
        ink += thread(
            [(x + way * 2.0, y), (x + way * 4.4, y + 2.6), (x + way * 7.6, y + 4.0)], width=1.2, cord=NEW_THREAD
        )
    if apart > 8:
        ink += (*arrow((left - 6.0, y - 5.4), (left, y - 5.4)), *arrow((right + 6.0, y - 5.4), (right, y - 5.4)))
    return tuple(ink)


def _lying_rope(x: float, y: float) -> Parts:
    """A closed end that points to the right, its last beads at `x`."""
    lies = DrawnRope((-8.0, y), 0, 8, 2.9)
    return (clipped((0.6, y - 9, x + 2.0, 18), rope(lies, 26, int((x + 6.55) / lies.rise) + 1, lambda k: THERE)),)


def _standing_rope(x: float, y: float) -> Parts:
    """A closed end that points to the left, its first beads at `x`."""
    lies = DrawnRope((x + 1.5, y), 0, 8, 2.9)
    return (clipped((x - 1.5, y - 9, 60.4 - x, 18), rope(lies, 0, 40, lambda k: THERE)),)


DRAWINGS = (
    LineDrawing(
        "cone",
        "Eye pin and cone",
        "a: the eye of the pin holds several threads of the closed end, and a cone is threaded on to its wire. b: the "
        "cone is pushed down until it covers the eye and the end.",
        cone,
    ),
    LineDrawing(
        "button",
        "Sewing on the button",
        "A button stands beside the closed end of the rope; a needle leads the tail through its shank and back into "
        "the end, several times.",
        button,
    ),
    LineDrawing(
        "loop",
        "The loop of beads",
        "Beads on the tail, tinted, are bent to a loop at the closed end; the needle goes back into the end beside the "
        "place where the tail comes out.",
        loop,
    ),
    LineDrawing(
        "sliding-tie",
        "The sliding tie",
        "a: the cords of both ends lie past each other, each tied round the other with a knot; arrows show the knots "
        "slid together. b: drawn shut, the knots close to each other.",
        sliding_tie,
    ),
)
