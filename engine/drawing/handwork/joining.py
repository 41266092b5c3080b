"""Drawings of joins: a new thread, a tail hidden in the wall, the seam of a ring."""

from __future__ import annotations

from itertools import pairwise

from engine.drawing.handwork.beads import OLD, DrawnRope, Look, bead, ring_of_beads, rope, toned, wall
from engine.drawing.handwork.curves import along, arc, polar, trail
from engine.drawing.handwork.hooked import loop_round
from engine.drawing.handwork.marks import arrow, beside, callout, disc, line
from engine.drawing.handwork.parts import (
    ACCENT,
    DARK,
    FINE,
    INK,
    LINE,
    PALE,
    THIN,
    LineDrawing,
    Part,
    Parts,
    Stroke,
    clipped,
)
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import thread
from engine.drawing.handwork.tools import Hook, needle


def new_thread() -> Parts:
    """A loop of the new thread caught through the last loop of the old one; then the old one closed round it."""
    caught = (clipped((0.6, 0.5, 28.6, 44), _caught()), *callout((24.6, 31.3), "1"), *callout((16.8, 3.2), "2"))
    tight = (clipped((30.6, 0.5, 28.6, 44), _tightened()), *callout((56.6, 31.2), "1"), *callout((56.6, 25.2), "2"))
    return beside((0.0, 30.0, 60.0), caught, tight)


def _caught() -> Parts:
    hook = Hook((4.0, 12.0), 36, 2.0)
    old = [
        (10.0, 35.6),
        (10.8, 31),
        (11.6, 26),
        hook.at(6.7, 0.95),
        hook.at(6.5, 0.0),
        hook.at(6.8, -0.85),
        hook.at(7.8, -0.3),
        hook.at(8.7, 0.95),
        (15.6, 27.4),
        (14.8, 30.0),
        (16.6, 31.8),
        (19.6, 32.0),
        (22.0, 31.8),
    ]
    fold = [
        (14.0, 2.6),
        (11.0, 6.0),
        hook.at(1.6, -1.2),
        hook.at(1.15, 0.0),
        hook.at(1.5, 1.1),
        hook.at(2.5, 1.2),
        hook.at(3.3, 0.3),
        (14.6, 13.0),
        (20.6, 8.6),
        (25.5, 6.6),
        (30.4, 5.8),
    ]
    ink: list[Part] = [
        *thread(old, 5, None, ends="e"),
        *thread(fold, 4, None, cord=NEW_THREAD),
        *hook.drawn(42),
        *thread(fold, 0, 5, cord=NEW_THREAD, over=True, ends="s"),
        *thread(old, 0, 5, over=True),
    ]
    ink += (part for share in (0.72, 0.84) for part in bead(*along(fold, share), 3.9))
    return (*ink, *_low_wall(-0.2), *arrow(hook.at(9.8), hook.at(13.4), halo=False))


def _tightened() -> Parts:
    hook = Hook((36.8, 13.4), 12, 2.0)
    old = [
        (40.4, 36),
        (39.4, 31.8),
        (40.0, 28.0),
        (43.6, 25.6),
        (47.0, 28.0),
        (47.4, 30.4),
        (49.2, 31.8),
        (51.6, 31.8),
        (54.0, 31.3),
    ]
    new = [
        (54.0, 25.2),
        (50.8, 26.6),
        (48.6, 29.2),
        (46.6, 30.4),
        (45.4, 29.4),
        (45.2, 26.4),
        (45.4, 22.6),
        *(hook.at(*at) for at in ((4.6, 0.95), (4.3, 0), (3.9, -0.85), (3.5, 0.0), (3.3, 0.95))),
        (41.8, 22.6),
        (42.0, 26.4),
        (41.7, 29.2),
        (40.6, 30.4),
        (38.8, 29.8),
        (36.0, 26.6),
        (34.2, 18),
        (37.8, 7.6),
        (43, 1),
    ]
    ink: list[Part] = [
        *thread(new, 0, 4, cord=NEW_THREAD, ends="s"),
        *thread(new, 14, None, cord=NEW_THREAD),
        *thread(old, ends="e", over=True),
        *thread(new, 7, 9, cord=NEW_THREAD),
        *hook.drawn(38),
        *thread(new, 4, 7, cord=NEW_THREAD, over=True),
        *thread(new, 9, 14, cord=NEW_THREAD, over=True),
    ]
    ink += (part for share in (0.87, 0.94) for part in bead(*along(new, share), 3.9))
    return (*ink, *_low_wall(29.8))


def _low_wall(left: float) -> Parts:
    return wall(left, ((35.6, 0.8), (39.5, 3.1), (43.4, 0.8)), 31)


def hiding_tail() -> Parts:
    """The rope cut across: a tail goes through the thread wall one way, then back; the channel stays open."""
    centre = (24.6, 22.5)
    ink: list[Part] = [
        *disc(centre, 16.2, "", LINE, 0.9),
        *ring_of_beads(centre, 16.4, 13, 7.4, 28),
        *disc(centre, 13.0, PALE, INK, FINE),
    ]
    ink += (
        Stroke(trail(polar(centre, 12.4, way), (polar(centre, 10.6, way + 6), polar(centre, 8.8, way))), "", LINE, THIN)
        for way in range(0, 360, 8)
    )
    ink += disc(centre, 8.2)
    route = [
        polar(centre, 21.6, 127),
        polar(centre, 17.6, 125),
        polar(centre, 13.8, 117),
        *arc(centre, 11.8, 104, -114, 8),
        polar(centre, 11.1, -126),
        polar(centre, 10.2, -126),
        *arc(centre, 9.5, -112, -10, 5),
        polar(centre, 9.8, 9),
    ]
    ink += thread(route, width=0.95, cord=NEW_THREAD, over=True, ends="s")
    for radius, start, stop in ((11.8, 80, 40), (9.5, -100, -52)):
        ink += arrow(*arc(centre, radius, start, stop, 4), halo=False)
    return (*ink, *needle(polar(centre, 10.4, 14.2), 14.2, 23))


JOIN = 28  # the bead at the seam; the last round before it is dark


def ends_meet() -> Parts:
    """The ends face each other across a gap, the loop still on the hook; one is rolled until the colours go on."""
    whole, gap = _seam(26.0), 8.4
    first = whole._replace(foot=(whole.foot[0] + gap, whole.foot[1]))
    (x, y), _, _ = whole.spot(JOIN - 0.4)
    hook = Hook((x + 2.6, y - 1.4), -46, 1.6)
    loop = loop_round(hook, 3.4, (x - 0.4, y + 1.0), 0.9)
    ink: list[Part] = [
        clipped((1.2, 6, 25.6, 34), rope(whole, -20, JOIN, _striped)),
        clipped((32.6, 6, 26.2, 34), rope(first, JOIN, JOIN + 60, _striped)),
        *loop.behind,
        *hook.drawn(15.0),
        *loop.before,
    ]
    ink += arrow((44.0, 36.4), (47.6, 38.8), (51.0, 36.4), (52.0, 32.4))
    return (*ink, *arrow((52.0, 10.6), (47.0, 10.6), slim=True))


def _striped(k: int) -> Look:
    return toned(DARK) if k % 7 < 2 else OLD


def ring_join() -> Parts:
    """The ends sewn together bead by bead; and pulled tight, the seam between two arrows."""
    return beside((0.0, 30.2, 60.0), _apart(), _together())


def _seam(x: float) -> DrawnRope:
    of = DrawnRope(foot=(0, 23.5), angle=0, around=6, size=4.6, phase=150)
    return of._replace(foot=(x - JOIN * of.rise, 23.5))


def _apart() -> Parts:
    last, gap = _seam(13.0), 5.6
    first = last._replace(foot=(last.foot[0] + gap, last.foot[1]))
    near = sorted((k for k in range(JOIN - 6, JOIN) if last.spot(k)[1] > 0.05), key=lambda k: last.spot(k)[0][1])
    way = [spot for k in near for spot in (last.spot(k)[0], first.spot(k + (6 if last.spot(k + 6)[1] > 0 else 7))[0])]
    x, y = way[-1]
    tail = [(x, y), (x - 1.0, y + 3.0), (x - 1.4, y + 6.4), (x - 4.4, y + 9.0)]
    sewn: list[Part] = [part for a, b in pairwise(way) for part in line(a, b, ink=ACCENT, width=0.9)]
    sewn += thread(tail, cord=NEW_THREAD)
    ink: list[Part] = [
        clipped((1.2, 6, 27.6, 38), (*sewn, *rope(last, 5, JOIN, _tone), *rope(first, JOIN, JOIN + 30, _tone)))
    ]
    ink += needle((tail[-1][0] - 0.7, tail[-1][1] + 0.2), 174, 13.5)
    for s, x in ((1, 6.2), (-1, 24.2)):
        ink += arrow((x - s * 3.6, 11.4), (x + s * 3.6, 11.4))
    return tuple(ink)


def _together() -> Parts:
    whole = _seam(46.6)
    seam = (whole.spot(JOIN - 1)[0][0] + whole.spot(JOIN)[0][0]) / 2
    return (
        clipped((31.6, 6, 27.6, 38), rope(whole, 2, JOIN + 30, _tone)),
        *arrow((seam - 0.6, 6.6), (seam - 0.6, 13.0)),
        *arrow((seam + 0.6, 40.4), (seam + 0.6, 34.0)),
    )


def _tone(k: int) -> Look:
    return toned(DARK) if JOIN - 6 <= k < JOIN else OLD


DRAWINGS = (
    LineDrawing(
        name="new-thread",
        title="Adding a thread",
        words="a: the hook is in the last loop of the old thread, 1, and catches a loop of the new thread, 2. b: "
        "that loop is drawn through, the old loop is pulled tight round it, and both tails lie along the "
        "work.",
        draw=new_thread,
        note="1: the tail of the old thread. 2: the tail of the new one.",
    ),
    LineDrawing(
        "hiding-tail",
        "Hiding a tail",
        "The rope cut across, beads outside, the thread wall inside them. A needle takes the tail through the "
        "wall a good way in one direction, then back in the other, as the arrows show. The channel in the "
        "middle stays open.",
        hiding_tail,
    ),
    LineDrawing(
        "ends-meet",
        "Ends that meet",
        "Both ends of the rope face each other, the last loop still on the hook at the end of the left one. A curved "
        "arrow shows the right one rolled until its colours go on across the gap.",
        ends_meet,
    ),
    LineDrawing(
        "ring-join",
        "Joining a ring so that it does not show",
        "a: the last round faces the first; a needle goes from a bead of one to its neighbour in the other, "
        "bead by bead, once around. b: pulled tight, the beads lock together as everywhere else, and the "
        "seam between the arrows cannot be seen.",
        ring_join,
    ),
)
