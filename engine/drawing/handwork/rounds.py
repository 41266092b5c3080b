"""Drawings of rounds: which way the work runs, counting a round, the marker that climbs with it."""

from __future__ import annotations

from functools import partial

from engine.drawing.handwork.beads import HELIX, NEW, OLD, DrawnRope, Look, bead, painted, ring_of_beads, rope, toned
from engine.drawing.handwork.curves import arc, polar, smooth
from engine.drawing.handwork.marks import arrow, beside, disc, sign
from engine.drawing.handwork.parts import DARK, INK, LINE, THIN, WHITE, LineDrawing, Part, Parts, Stroke, clipped
from engine.drawing.handwork.threads import NEW_WIRE, wire

MARKED = 34  # a bead well up the rope, so that its foot is out of sight


def working_way() -> Parts:
    """Into the tube from the working end; and the same rope from outside."""
    centre = (14.2, 24.0)
    inside: list[Part] = [*disc(centre, 4.2, WHITE, LINE, THIN), *disc(centre, 9.0, "", LINE, 0.8)]
    inside += ring_of_beads(centre, 9.0, 8, 6.0, 45.0)
    inside += bead(polar(centre, 9.0, 0.0), 90, 6.0, NEW)
    inside += arrow(*arc(centre, 13.8, 84, -64, 6))
    stands = DrawnRope(foot=(46.4, 50.0), angle=-90, around=8, size=4.6, phase=-DrawnRope((0, 0), 0).twist * 66 - 63)
    outside: list[Part] = [clipped((33, 1, 26, 43), rope(stands, 9, 70, painted(range(66, 70))))]
    ends = [stands.spot(k)[0] for k in (65.4, 67, 68, 69.6)]
    outside += arrow(*((x, y - 5.4) for x, y in ends))
    outside += arrow((34.6, 39), (34.6, 24), ink=INK, halo=False)
    return beside((0.0, 29.5, 60.0), tuple(inside), tuple(outside))


def counting(around: int) -> Parts:
    """A round from outside, and from the working end; the next bead begins the next round above bead 1."""
    first = 4 * around
    stands = DrawnRope(
        foot=(13.8, 46), angle=-90, around=around, size=5.0, phase=-DrawnRope((0, 0), 0, around).twist * first - 6
    )
    new = range(first, first + around)
    beads = rope(stands, -1, int(52 / stands.rise), painted(new))
    outside: list[Part] = [clipped((0.5, 1, 26.5, 43.5), beads)]
    for k in range(first, first + around + 1):
        (x, y), front, side = stands.spot(k)
        outside += sign((x + 0.5 * side, y), str(k - first + 1)) if front > 0.3 else ()
    centre, size, radius = (43.9, 22.6), min(7.2, 46.0 / around), min(10.4, 8.2 + 0.25 * around)
    ring = arc(centre, radius, 90 + around * stands.twist, 90, 4 * around)
    end: list[Part] = [*disc(centre, 4.2, WHITE, LINE, THIN), Stroke(smooth(ring), "", LINE, 0.8)]
    for k in range(around + 1):
        way = 90 - stands.twist * (k - around)
        spot = polar(centre, radius, way)
        end += (*bead(spot, way + 90, size, NEW if k < around else OLD), *sign(spot, str(k + 1)))
    end += arrow(*arc(centre, min(14.5, radius + 4.6), 62, -206, 10))
    return beside((0.0, 27.5, 60.0), tuple(outside), tuple(end), lettered=False)


def marker() -> Parts:
    """A marker hangs in the first bead of a round; a round later it hangs in the first bead of the next."""
    return beside((0.0, 30.0, 60.0), _marked(15.4, 4), _marked(45.4, 12))


def _marked(x: float, worked: int) -> Parts:
    """A rope with that many beads worked since the first mark, the marker in the first bead of its last round."""
    of = DrawnRope(foot=(x, 36.0), angle=-90, around=8, size=5.2, phase=18 - DrawnRope((0, 0), 0).twist * MARKED)
    first, last = MARKED + worked // 8 * 8, MARKED + worked

    def look(k: int) -> Look:
        return NEW if k == first else toned(DARK) if k == MARKED else OLD

    (a, b), _, _ = of.spot(first)
    hangs = arc((a - 2.4, b + 4.0), 3.6, -30, 330, 16)
    return (
        clipped((x - 12, 1, 24, 43.2), rope(of, -20, last + 1, look)),
        *wire(hangs[:-1], width=1.1, cord=NEW_WIRE, over=True, halo=0.2, closed=True),
        *rope(of, first, first + 1, look),
    )


def _counting(around: int) -> LineDrawing:
    return LineDrawing(
        name=f"counting-{around}",
        title="Counting a round",
        words=f"A rope of {around} around. From outside and from the working end: beads 1 to {around} are one round "
        f"along the spiral, not a level ring, and bead {around + 1} begins the next round just above bead 1.",
        draw=partial(counting, around),
        note=f"Bead {around + 1} begins the next rnd.",
    )


DRAWINGS = (
    LineDrawing(
        "working-way",
        "Which way the work runs",
        "a: looking into the tube from the working end, the beads on the outside of the ring; an arrow shows "
        "the next bead added and the way on round the far side from right to left. b: the same rope from "
        "outside with the working end up; there the beads run from left to right and rise.",
        working_way,
    ),
    *(_counting(around) for around in HELIX),
    LineDrawing(
        "marker",
        "The marker in the first bead of a round",
        "a: a marker, a ring of wire, hangs in the first bead of a round, tinted. b: a round later it "
        "hangs in the first bead of the next round, in the row above; the bead it hung in before is dark.",
        marker,
    ),
)
