"""Drawings of joins: a new thread, a tail hidden in the wall, the seam of a ring."""

from __future__ import annotations

from itertools import pairwise

from engine.drawing.handwork.beads import OLD, Look, Rope, bead, ring_of_beads, rope, toned, wall
from engine.drawing.handwork.curves import along, arc, polar, smooth
from engine.drawing.handwork.marks import arrow, between, callout, disc, line, step
from engine.drawing.handwork.parts import (
    ACCENT,
    DARK,
    FINE,
    INK,
    LINE,
    PALE,
    THIN,
    Clip,
    Frame,
    LineDrawing,
    Part,
    Parts,
    Stroke,
)
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import thread
from engine.drawing.handwork.tools import Hook, needle
from engine.drawing.shapes import Point


def new_thread() -> Parts:
    """A loop of the new thread caught through the last loop of the old one; then the old one closed round it."""
    caught = (Clip((0.6, 0.5, 28.6, 44), _caught()), *_letters((25.0, 34.6), (24.8, 31.6), (18.6, 4.0), (13.2, 3.5)))
    tight = (Clip((30.6, 0.5, 28.6, 44), _tightened()),
             *_letters((52.0, 35.8), (51.6, 32.6), (50.0, 24.4), (51.6, 28.6)))
    return (Frame(0, 30, (*caught, *step((3.2, 4.2), "1"))), *between(30.0),
            Frame(30, 60, (*tight, *step((33.2, 4.2), "2"))))


def _letters(old: Point, old_at: Point, new: Point, new_at: Point) -> Parts:
    return (*callout(old, "A", old_at), *callout(new, "B", new_at))


def _caught() -> Parts:
    hook = Hook((4.0, 12.0), 36, 2.0)
    old = [(12.4, 34), (12.2, 30.5), (11.8, 26), hook.at(6.7, 0.95), hook.at(6.5, 0.0), hook.at(6.8, -0.85),
           hook.at(7.8, -0.3), hook.at(8.7, 0.95), (16.0, 28.0), (15.2, 30.8), (17.6, 32.4), (22.0, 32.2), (26.2, 31.0)]
    fold = [(14.0, 2.6), (11.0, 6.0), hook.at(1.6, -1.2), hook.at(1.15, 0.0), hook.at(1.5, 1.1), hook.at(2.5, 1.2),
            hook.at(3.3, 0.3), (14.6, 13.0), (20.6, 8.6), (25.5, 6.6), (30.4, 5.8)]
    ink: list[Part] = [*_low_wall(-0.2), *thread(old, 5, None, ends="e"), *thread(fold, 4, None, cord=NEW_THREAD),
                       *hook.drawn(42), *thread(fold, 0, 5, cord=NEW_THREAD, over=True, ends="s"),
                       *thread(old, 0, 5, over=True)]
    ink += (part for share in (0.72, 0.84) for part in bead(*along(fold, share), 3.9))
    return (*ink, *arrow([hook.at(9.4), hook.at(11.2), hook.at(13.2)], 0.8))


def _tightened() -> Parts:
    hook = Hook((36.4, 14.6), 30, 2.0)
    old = [(41.4, 35), (40.0, 31.8), (40.2, 28.4), (43.6, 26.0), (47.0, 28.4), (47.4, 31.0), (49.0, 33), (51.6, 33),
           (54.4, 31.8)]
    new = [(54.4, 26.4), (50.6, 29.2), (48.0, 30.6), (46.4, 31.0), (45.3, 29.6), (45.2, 26.4), (45.4, 23.8),
           *(hook.at(*at) for at in ((5.3, 0.95), (4.9, 0), (4.3, -0.85), (3.9, 0.0), (3.9, 0.95))), (41.8, 23.6),
           (42.0, 26.4), (41.9, 29.6), (40.9, 31.0), (39.0, 30.4), (36.2, 27.6), (34.4, 18), (37.8, 7.6), (43, 1)]
    ink: list[Part] = [*_low_wall(29.8), *thread(new, 0, 4, cord=NEW_THREAD, ends="s"),
                       *thread(new, 14, None, cord=NEW_THREAD), *thread(old, ends="e", over=True),
                       *thread(new, 7, 9, cord=NEW_THREAD), *hook.drawn(38),
                       *thread(new, 4, 7, cord=NEW_THREAD, over=True), *thread(new, 9, 14, cord=NEW_THREAD, over=True)]
    ink += (part for share in (0.845, 0.915) for part in bead(*along(new, share), 3.9))
    ink += arrow([(54.6, 31.3), (56.4, 30.8), (58.2, 30.2)], 0.75, 1.9)
    return (*ink, *arrow([(54.4, 26.1), (56.2, 25.0), (57.8, 23.8)], 0.75, 1.9))


def _low_wall(left: float) -> Parts:
    return wall(left, ((35.6, 0.8), (39.5, 3.1), (43.4, 0.8)), 31)


def hiding_tail() -> Parts:
    """The rope cut across: a tail goes through the thread wall one way, then back; the channel stays open."""
    centre = (24.5, 22.5)
    ink: list[Part] = [*disc(centre, 16.2, "", LINE, 0.9), *ring_of_beads(centre, 16.4, 13, 7.4, 28),
                       *disc(centre, 13.0, PALE, INK, FINE)]
    ink += (Stroke(smooth([polar(centre, 12.4, way), polar(centre, 10.6, way + 4), polar(centre, 8.8, way + 1)]), "",
                   LINE, THIN)
            for way in range(0, 360, 6))
    ink += disc(centre, 8.2)
    route = [polar(centre, 21.6, 127), polar(centre, 17.6, 125), polar(centre, 13.8, 117),
             *arc(centre, 11.8, 104, -114, 11),
             polar(centre, 11.1, -126), polar(centre, 10.2, -126), *arc(centre, 9.5, -112, -10, 5),
             polar(centre, 9.8, 9)]
    ink += thread(route, width=0.95, cord=NEW_THREAD, over=True, ends="s")
    ink += arrow(arc(centre, 11.8, 80, 46, 5), 0.95, 2.6, halo=False)
    ink += arrow(arc(centre, 9.5, -100, -58, 5), 0.95, 2.4, halo=False)
    return (*ink, *needle(polar(centre, 10.4, 14.2), 14.2, 23), *callout((48.5, 36.5), "1", polar(centre, 11.8, 32)),
            *callout((47.5, 6.5), "2", polar(centre, 9.5, -40)))


JOIN = 28  # the bead at the seam; the last round before it is dark


def ring_join() -> Parts:
    """The ends sewn together bead by bead; and pulled tight, the seam between two arrows."""
    return (Frame(0, 30.2, (*_apart(), *step((3.2, 4.2), "1"))), *between(30.2),
            Frame(30.2, 60, (*_together(), *step((33.4, 4.2), "2"))))


def _seam(x: float) -> Rope:
    of = Rope((0, 23.5), 0, 6, 4.6, 150)
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
    ink: list[Part] = [Clip((1.2, 6, 27.6, 38), (*sewn, *rope(last, 0, JOIN, _tone),
                                                 *rope(first, JOIN, JOIN + 60, _tone)))]
    ink += needle((tail[-1][0] - 0.7, tail[-1][1] + 0.2), 174, 13.5)
    for s, x in ((1, 6.2), (-1, 24.2)):
        ink += arrow([(x - s * 3.6, 10.4), (x, 10.4), (x + s * 3.6, 10.4)], 0.85, 2.3)
    return tuple(ink)


def _together() -> Parts:
    whole = _seam(46.6)
    seam = (whole.spot(JOIN - 1)[0][0] + whole.spot(JOIN)[0][0]) / 2
    return (Clip((31.6, 6, 27.6, 38), rope(whole, 0, JOIN + 60, _tone)),
            *arrow([(seam - 0.6, 6.6), (seam - 0.6, 9.5), (seam - 0.6, 13.0)], 0.85, 2.3),
            *arrow([(seam + 0.6, 40.4), (seam + 0.6, 37.5), (seam + 0.6, 34.0)], 0.85, 2.3))


def _tone(k: int) -> Look:
    return toned(DARK) if JOIN - 6 <= k < JOIN else OLD


DRAWINGS = (
    LineDrawing("new-thread", "Adding a thread",
                "One: the hook is in the last loop of the old thread, A, and catches a loop of the new thread, B. Two: "
                "that loop is drawn through, the old loop is pulled tight round it, and both tails lie along the "
                "work.", new_thread),
    LineDrawing("hiding-tail", "Hiding a tail",
                "The rope cut across, beads outside, the thread wall inside them. One: a needle takes the tail through "
                "the wall a good way in one direction. Two: then back in the other. The channel in the middle "
                "stays open.",
                hiding_tail),
    LineDrawing("ring-join", "Joining a ring so that it does not show",
                "One: the last round faces the first; a needle goes from a bead of one to its neighbour in the other, "
                "bead by bead, once around. Two: pulled tight, the beads lock together as everywhere else, and the "
                "seam between the arrows cannot be seen.", ring_join),
)
