"""Drawings of the start: a chain with beads and its ring; the chain of a wide rope, its first row, its ring."""

from __future__ import annotations

from collections.abc import Callable

from engine.drawing.handwork.beads import NEW, bead
from engine.drawing.handwork.curves import along, polar
from engine.drawing.handwork.marks import arrow, callout, line, sign, step
from engine.drawing.handwork.parts import LINE, THIN, Clip, LineDrawing, Part, Parts
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import OLD as OLD_THREAD
from engine.drawing.handwork.threads import chain, thread
from engine.drawing.handwork.tools import Hook
from engine.drawing.shapes import Point

Place = Callable[[float, float], Point]


def beaded_chain() -> Parts:
    """A chain with a bead in each stitch, and the next bead slid up to the hook."""
    def up(s: float, v: float) -> Point:
        return 33.0 + v * 5.2, 41.0 - s * 5.4

    ink: list[Part] = [*thread([up(-0.6, 0.7), up(-0.3, 0.3), up(0, 0), up(0.2, 0)], width=1.3, ends="s")]
    ink += (part for i in range(4) for part in bead(up(i + 0.72, -1.0), 90, 5.2))
    hook, base = Hook((19.5, 11.0), 8, 2.6), up(4.0, 0)
    bearing = up(5.6, 0)
    loop = [(base[0] + 0.6, base[1] - 0.4), (bearing[0] + 2.4, bearing[1] + 2.0), hook.at(6.2, 0.6), hook.at(5.9, -0.3),
            hook.at(5.3, -0.8), hook.at(4.7, 0.0), hook.at(4.5, 0.8), (bearing[0] - 3.0, bearing[1] + 3.0),
            (base[0] - 0.6, base[1] - 0.4)]
    feed = [(30.4, 20.8), (28.6, 20.4), (24.6, 18.0), hook.at(1.5, 0.9), hook.at(1.35, -0.1),
            hook.at(1.1, -0.85), hook.at(0.95, 0.1), hook.at(0.75, 1.0), (16.4, 17.4), (12.6, 23.0), (11.0, 31.0),
            (11.6, 42.0)]
    ink += (*thread(feed, 0, 5, 1.1, NEW_THREAD), *thread(loop, 0, 3, 1.3), *chain(up, 4, 1.3))
    ink += (*bead((27.0, 19.6), 24, 5.2, NEW), Clip((1, 1, 58, 43), hook.drawn(44)))
    ink += arrow([hook.at(2.1), hook.at(5.2), hook.at(8.6)], 0.8, halo=False)
    ink += (*thread(loop, 2, 8, 1.3, over=True), *thread(feed, 4, None, 1.1, NEW_THREAD, over=True))
    for share in (0.70, 0.83):
        place, angle = along(feed, share)
        ink += bead(place, angle, 5.0)
    ink += (part for i in range(4) for part in callout((up(i + 0.72, 0)[0] + 7.4, up(i + 0.72, 0)[1]), "1234"[i]))
    return (*ink, *callout((21.6, 24.0), "5"))


def starting_ring() -> Parts:
    """The chain laid to a circle, beads outside; the hook in the first chain, the seventh bead ready."""
    centre, count, turn = (27.0, 22.6), 6, -56.0
    end = 58.0 + turn * count
    ink: list[Part] = []
    for i in range(count):
        way = 58.0 + turn * (i + 0.62)
        ink += bead(polar(centre, 13.2, way), way + 90, 5.8)
        ink += callout(polar(centre, 18.2, way), "123456"[i])
    ink += _joined(_round(centre, 8.6, 58.0, turn, 4.6), count, Hook(polar(centre, 13.4, 49), 229, 2.1),
                   polar(centre, 8.6, end), outer_only=True)
    feed = [polar(centre, 9.8, end + 6), (29.6, 36.4), (34.6, 40.0), (42.0, 40.4), (50, 37.4), (58.6, 34.6)]
    ink += thread(feed, 0, None, 1.0, NEW_THREAD)
    (x, y), angle = along(feed, 0.42)
    ink += (*bead((x, y), angle, 5.8, NEW), *bead(*along(feed, 0.76), 5.6))
    return (*ink, *callout((x - 0.6, y - 5.8), "7"))


def wide_chain() -> Parts:
    """A chain of one more than the rope is around; and the first row, from the second chain on."""
    def lying(s: float, v: float) -> Point:
        return 5.0 + s * 4.4, 12.2 + v * 4.2

    above: list[Part] = [*thread([lying(-0.7, 0.8), lying(-0.4, 0.3), lying(0, 0), lying(0.2, 0)], width=1.1, ends="s")]
    hook = Hook((43.6, 10.6), -12, 2.2)
    live = [lying(8.95, 0.1), (46.4, 14.8), hook.at(2.9, 0.7), hook.at(2.6, -0.3), hook.at(2.1, -0.75),
            hook.at(1.7, 0.1),
            (46.0, 12.4), (45.4, 12.0), lying(8.95, -0.1)]
    above += (*thread(live, 0, 3, 1.1), *chain(lying, 9), *hook.drawn(15.6), *thread(live, 2, 7, 1.1, over=True))
    above += (part for i in range(9) if i != 7 for part in sign((lying(i + 0.72, 0)[0], 18.4), "987654321"[i], 2.2))
    above += callout((lying(7.72, 0)[0], 18.4), "2")
    above += arrow([(42.0, 7.4), (39.4, 4.6), (37.6, 7.0), (38.0, 10.6)], 0.8)
    return (*above, *line((2, 22.8), (58, 22.8), ink=LINE, width=THIN), *_first_row(), *step((3.4, 4.2), "1"),
            *step((3.4, 26.6), "2"))


def _first_row() -> Parts:
    """Eight stitches stand on the chain, worked from right to left; the ninth chain turned up at the right."""
    def lying(s: float, v: float) -> Point:
        return 10.0 + s * 4.4, 41.0 + v * 3.6

    def tops(s: float, v: float) -> Point:
        return 45.6 - s * 4.4, 31.4 + v * 3.6

    ink: list[Part] = []
    for i in range(8):
        x = lying(i + 0.62, 0)[0]
        for side in (-1, 1):
            ink += thread([(x + side * 0.5, 40.4), (x + side * 0.9, 36.4), (x + side * 0.2 - 0.3, 32.0)], width=1.1,
                          cord=NEW_THREAD if i == 7 else OLD_THREAD, ends="s")
    ink += (*chain(lying, 8), *chain(tops, 8))
    ink += thread([lying(8, 0.1), (47.4, 38.6), (47.0, 33.6), tops(0, 0)], width=1.1, over=True)
    ink += (part for i in range(8) for part in sign((tops(i + 0.62, 0)[0], 26.6), "12345678"[i], 2.2))
    return (*ink, *arrow([(56.0, 30.6), (54.6, 30.6), (51.4, 30.6)], 0.8))


def wide_ring() -> Parts:
    """The strip joined to a circle with a slip stitch in its first stitch."""
    centre, count, turn = (28.0, 21.8), 8, -42.5
    hook, end = Hook(polar(centre, 18.4, 47), 227, 2.3), 58 + turn * count
    feed = [polar(centre, 13.6, end + 6), polar(centre, 17.6, 80), polar(centre, 20.4, 68), hook.at(1.5, -1.5),
            hook.at(1.15, -0.7), hook.at(1.0, 0.1), hook.at(1.3, 1.0), polar(centre, 22.6, 36), (52.0, 31.0),
            (58.8, 27.0)]
    ink: list[Part] = [*thread(feed, 0, 4, 1.1, NEW_THREAD)]
    ink += _joined(_round(centre, 12.6, 58.0, turn, 4.6), count, hook, polar(centre, 12.6, end), outer_only=False,
                   pull=True)
    ink += thread(feed, 3, None, 1.1, NEW_THREAD, over=True)
    ink += (part for i in range(count)
            for part in callout(polar(centre, 18.0, 58 + turn * (i + 0.62 if i else 0.86)), "12345678"[i]))
    return tuple(ink)


def _round(centre: Point, radius: float, start: float, turn: float, width: float) -> Place:
    """Where a chain lies that is bent to a circle, seen from the working end."""
    return lambda s, v: polar(centre, radius - v * width, start + turn * s)


def _joined(place: Place, count: int, hook: Hook, end: Point, outer_only: bool, pull: bool = False) -> Parts:
    """A chain bent to a circle, its live loop on the hook, the hook in its first stitch."""
    live = [(end[0] + 0.6, end[1] - 0.2), (end[0] + 3.6, end[1] - 2.0), hook.at(4.4, -0.9), hook.at(4.7, 0.0),
            hook.at(5.2, 0.8), (end[0] + 1.4, end[1] - 5.0), (end[0] - 0.6, end[1] - 0.6)]
    first = ((0.0, -0.12), (0.40, -0.34), (0.86, -0.50), (1.22, -0.36), (1.36, 0.0))
    inner = tuple((s, -v) for s, v in first)
    ink: list[Part] = [*thread(live, 3, 6, 1.2), *chain(place, count, 1.2), *hook.drawn(42)]
    if pull:
        ink += arrow([hook.at(2.0), hook.at(5.0), hook.at(8.2)], 0.8, halo=False)
    for strand in ((first,) if outer_only else (first, inner)):
        ink += thread([place(s, v) for s, v in strand], 0, 3, 1.2, over=True, halo=0.28, ends="s")
    return (*ink, *thread(live, 0, 4, 1.2, over=True))


DRAWINGS = (
    LineDrawing("beaded-chain", "A chain with a bead in each stitch",
                "Four chains with a bead in each hang from the loop on the hook. Bead 5 is slid up to the hook, the "
                "thread lies over the hook behind it, and an arrow shows it drawn through the loop.",
                beaded_chain, "Drawn for 6 around."),
    LineDrawing("starting-ring", "The chain closed to a circle",
                "Seen from above: six chains bent to a circle, beads 1 to 6 on the outside. The hook comes from inside "
                "the circle and goes under the outer thread of the first chain; bead 7 is slid up beside it.",
                starting_ring, "Drawn for 6 around."),
    LineDrawing("wide-chain", "The chain of a wide rope and its first row",
                "For a rope of eight around. One: nine chains to the left of the hook, numbered from the hook; an "
                "arrow leads into chain 2. Two: eight stitches stand on the chain, worked from right to left.",
                wide_chain, "Drawn for 8 around."),
    LineDrawing("wide-ring", "The first row joined to a circle",
                "Seen from above: the eight stitches bent to a circle. The hook goes from inside under both threads of "
                "the first stitch, the thread lies over the hook, and an arrow shows it drawn through everything.",
                wide_ring, "Drawn for 8 around."),
)
