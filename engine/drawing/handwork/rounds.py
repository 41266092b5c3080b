"""Drawings of rounds: which way the work runs, counting a round, the marker that climbs with it."""

from __future__ import annotations

from engine.drawing.handwork.beads import NEW, OLD, Rope, bead, painted, ring_of_beads, rope
from engine.drawing.handwork.curves import arc, polar, smooth
from engine.drawing.handwork.marks import arrow, between, disc, sign, step
from engine.drawing.handwork.parts import (
    INK,
    LINE,
    THIN,
    WHITE,
    Clip,
    Frame,
    LineDrawing,
    Part,
    Parts,
    Stroke,
)
from engine.drawing.handwork.threads import NEW_WIRE, wire

FIRST, MARKED = 24, 34  # beads well up the rope, so that its foot is out of sight


def working_way() -> Parts:
    """Into the tube from the working end; and the same rope from outside."""
    centre = (14.6, 23.0)
    inside: list[Part] = [*disc(centre, 4.4, WHITE, LINE, THIN), *disc(centre, 9.6, "", LINE, 0.8)]
    inside += ring_of_beads(centre, 9.6, 8, 6.4, 45.0)
    inside += bead(polar(centre, 9.6, 0.0), 90, 6.4, NEW)
    inside += arrow(arc(centre, 14.4, 84, -64, 14), 0.85, 2.4)
    stands = Rope((44.6, 44.0), -90, 8, 4.1, -Rope((0, 0), 0).twist * 66 - 63)
    outside: list[Part] = [Clip((33, 2, 24, 41), rope(stands, 30, 71, painted(range(66, 70))))]
    ends = [stands.spot(k)[0] for k in (65.4, 67, 68, 69.6)]
    outside += arrow([(x, y - 5.2) for x, y in ends], 1.0, 2.8)
    outside += arrow([(33.4, 37), (33.4, 29), (33.4, 21)], 0.55, 2.0, INK, halo=False)
    return (Frame(0, 29.5, (*inside, *step((3.2, 4.2), "1"))), *between(29.5),
            Frame(29.5, 60, (*outside, *step((32.8, 4.2), "2"))))


def counting() -> Parts:
    """Six beads around: from outside, and from the working end; bead 7 begins the next round above bead 1."""
    stands = Rope((13.8, 46), -90, 6, 4.8, -Rope((0, 0), 0, 6).twist * FIRST - 6)
    outside: list[Part] = [Clip((0, 1, 27, 43.5), rope(stands, -8, 60, painted(range(FIRST, FIRST + 6))))]
    for k in range(FIRST, FIRST + 9):
        (x, y), front, side = stands.spot(k)
        outside += sign((x + 0.5 * side, y), str(k - FIRST + 1), 2.2) if front > 0.3 else ()
    centre = (43.8, 22.8)
    ring = arc(centre, 10.2, 90 + 6 * stands.twist, 90, 24)
    end: list[Part] = [*disc(centre, 4.4, WHITE, LINE, THIN), Stroke(smooth(ring), "", LINE, 0.8)]
    for k in range(7):
        way = 90 - stands.twist * (k - 6.0)
        spot = polar(centre, 10.2, way)
        end += (*bead(spot, way + 90, 7.6, NEW if k < 6 else OLD), *sign(spot, str(k + 1), 2.6))
    end += arrow(arc(centre, 15.4, 62, -212, 14), 0.75, 2.3)
    return (Frame(0, 27.5, tuple(outside)), *between(27.5), Frame(27.5, 60, tuple(end)))


def marker() -> Parts:
    """A marker hangs in the first bead of a round; a round later it hangs in the first bead of the next."""
    return (Frame(0, 30, (*_marked(15.4, 4), *step((3.2, 4.2), "1"))), *between(30.0),
            Frame(30, 60, (*_marked(45.4, 12), *step((33.2, 4.2), "2"))))


def _marked(x: float, worked: int) -> Parts:
    """A rope with that many beads worked since the first mark, the marker in the first bead of its last round."""
    of = Rope((x, 40.0), -90, 8, 5.2, 18 - Rope((0, 0), 0).twist * MARKED)
    first, last = MARKED + worked // 8 * 8, MARKED + worked
    (a, b), _, _ = of.spot(first)
    hangs = arc((a + 2.2, b + 3.4), 3.0, -150, 210, 16)
    ink: list[Part] = [Clip((x - 12, 1, 24, 43.2), rope(of, -24, last + 1, painted({first})))]
    ink += (*wire(hangs[:-1], width=1.1, cord=NEW_WIRE, over=True, closed=True),
            *rope(of, first, first + 1, painted({first})))
    return tuple(ink)


DRAWINGS = (
    LineDrawing("working-way", "Which way the work runs",
                "One: looking into the tube from the working end, the beads on the outside of the ring; an arrow shows "
                "the next bead added and the way on round the far side from right to left. Two: the same rope from "
                "outside with the working end up; there the beads run from left to right and rise.", working_way),
    LineDrawing("counting", "Counting a round",
                "A rope of six around. From outside and from the working end: beads 1 to 6 are one round along the "
                "spiral, not a level ring, and bead 7 begins the next round just above bead 1.",
                counting, "Drawn for 6 around."),
    LineDrawing("marker", "The marker in the first bead of a round",
                "One: a marker, a ring of wire, hangs in the first bead of a round, tinted. Two: a round later it "
                "hangs in the first bead of the next round, in the row above.", marker),
)
