"""Drawings of the start: a chain with beads and its ring; the chain of a wide rope, its first row, its ring."""

from __future__ import annotations

from collections.abc import Callable
from math import radians, sin

from engine.drawing.handwork.beads import NEW, bead
from engine.drawing.handwork.curves import along, bearing, polar
from engine.drawing.handwork.hooked import laid_over, loop_round
from engine.drawing.handwork.marks import arrow, callout, sign, stacked
from engine.drawing.handwork.parts import LineDrawing, Part, Parts
from engine.drawing.handwork.threads import LINK, chain, thread
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import OLD as OLD_THREAD
from engine.drawing.handwork.tools import Hook
from engine.drawing.shapes import Point

Place = Callable[[float, float], Point]


def beaded_chain() -> Parts:
    """A chain with a bead in each stitch, and the next bead slid up to the hook."""
    up = _laid((36.0, 40.8), (0.0, -6.4), (5.6, 0.0))
    hook = Hook((18.0, 9.0), 6, 2.6)
    loop = loop_round(hook, 6.9, up(3.02, 0), 1.3)
    over = laid_over(
        hook,
        1.9,
        [(35.6, 21.4), (32.8, 19.6), (29.2, 17.9), (25.4, 15.2)],
        [(19.0, 15.0), (14.6, 22.0), (11.8, 30.0), (10.8, 41.0)],
        1.1,
        NEW_THREAD,
    )
    ink: list[Part] = [*thread([up(-0.42, 0.7), up(-0.22, 0.32), up(0, 0.05), up(0.1, 0)], width=1.3, ends="s")]
    ink += (part for i in range(3) for part in bead(up(i + 0.70, -1.08), 90, 5.6))
    ink += (*over.behind, *chain(up, 3, 1.3), *bead((29.2, 17.9), 28, 5.6, NEW), *loop.behind, *hook.drawn(40.5))
    ink += (*arrow(hook.at(3.0), hook.at(9.6), halo=False), *loop.before, *over.before)
    ink += (part for share in (0.74, 0.87) for part in bead(*along(over.route, share), 5.4))
    ink += (part for i in range(3) for part in callout((24.2, up(i + 0.70, 0)[1]), "123"[i]))
    return (*ink, *callout((23.4, 18.4), "4"))


def starting_ring() -> Parts:
    """The chain laid to a circle, beads outside; the hook in the first chain, the seventh bead ready."""
    centre, count, start, turn = (27.0, 22.0), 6, 62.0, -53.0
    end, tip = start + turn * count, polar(centre, 13.6, 49)
    hook = Hook(tip, bearing(tip, polar(centre, 14.0, -98)), 2.1)
    feed = [polar(centre, 10.6, end + 2), (28.4, 36.4), (33.0, 39.8), (40.0, 40.0), (48.0, 37.0), (57.0, 34.0)]
    ink: list[Part] = [*thread(feed, 0, None, 1.0, NEW_THREAD)]
    for i in range(count):
        way = start + turn * (i + 0.62)
        ink += (*bead(polar(centre, 13.0, way), way + 90, 5.6), *callout(polar(centre, 18.4, way), "123456"[i]))
    ink += _joined(_round(centre, 8.8, start, turn, 4.4), count, hook, polar(centre, 8.8, end + 6), (LINK[:4],))
    (x, y), angle = along(feed, 0.47)
    ink += (*bead((x, y), angle, 5.6, NEW), *bead(*along(feed, 0.79), 5.4))
    return (*ink, *callout((x + 0.6, y - 5.4), "7"))


def wide_chain() -> Parts:
    """A chain of one more than the rope is around; and the first row, from the second chain on."""
    lying = _laid((4.6, 12.0), (4.3, 0.0), (0.0, 4.2))
    hook = Hook((45.4, 18.2), -52, 2.1)
    loop = loop_round(hook, 3.0, lying(9.05, 0), 1.1)
    tail = [lying(-0.7, 0.8), lying(-0.4, 0.3), lying(0, 0.05), lying(0.1, 0)]
    above: list[Part] = [
        *thread(tail, width=1.1, ends="s"),
        *chain(lying, 9),
        *loop.behind,
        *hook.drawn(20.0),
        *loop.before,
    ]
    above += (
        part for i in range(9) for part in (callout if i == 7 else sign)((lying(i + 0.7, 0)[0], 18.2), "987654321"[i])
    )
    above += arrow((40.8, 5.4), (38.4, 3.6), (36.6, 5.4), (36.9, 9.8))
    return stacked(22.8, tuple(above), _first_row())


def _first_row() -> Parts:
    """Eight stitches stand on the chain, worked from right to left; the ninth chain turned up at the right."""
    lying, tops = _laid((11.2, 41.4), (4.3, 0.0), (0.0, 3.6)), _laid((45.4, 32.4), (-4.3, 0.0), (0.0, 3.6))
    turned_up = _laid(lying(8.05, 0), (1.9, -6.2), (2.8, 0.8))
    ink: list[Part] = []
    for i in range(8):
        x = lying(i + 0.62, 0)[0]
        ink += (
            part
            for side in (-1, 1)
            for part in thread(
                [(x + side * 0.5, 39.9), (x + side * 0.95, 37.0), (x + side * 0.3 - 0.3, 34.2)],
                width=1.1,
                cord=NEW_THREAD if i == 7 else OLD_THREAD,
            )
        )
    ink += (*chain(lambda s, v: lying(s, v) if s < 8 else turned_up(s - 8, v), 9), *chain(tops, 8))
    ink += (part for i in range(8) for part in sign((tops(i + 0.62, 0)[0], 27.4), "12345678"[i]))
    return (*ink, *arrow((57.6, 32.4), (53.0, 32.4)))


def wide_ring() -> Parts:
    """The strip joined to a circle with a slip stitch in its first stitch."""
    centre, count, start, turn = (26.5, 22.0), 8, 62.0, -40.0
    end, tip = start + turn * count, polar(centre, 20.8, 51)
    hook = Hook(tip, bearing(tip, polar(centre, 17.0, -98)), 2.3)
    feed = [
        polar(centre, 13.4, end + 4),
        polar(centre, 17.4, 88),
        polar(centre, 19.6, 72),
        hook.at(2.4, -0.9),
        hook.at(2.1, 0),
        hook.at(2.0, 1.0),
        (47.0, 31.6),
        (52.0, 32.8),
        (58.6, 29.0),
    ]
    ink: list[Part] = [*thread(feed, 0, 4, 1.1, NEW_THREAD)]
    ink += _joined(
        _round(centre, 11.6, start, turn, 4.4),
        count,
        hook,
        polar(centre, 11.6, end + 5),
        (LINK[:4], LINK[:2:-1]),
        arrow(hook.at(3.4), hook.at(9.0), halo=False),
    )
    ink += thread(feed, 3, None, 1.1, NEW_THREAD, over=True)
    ways = (18.0, *(start + turn * (i + 0.62) for i in range(1, count)))
    return (*ink, *(part for i, way in enumerate(ways) for part in callout(polar(centre, 17.4, way), "12345678"[i])))


def _laid(foot: Point, along_it: Point, across: Point) -> Place:
    """Where a straight chain lies: so far from its foot with every loop, and so far to its side."""
    return lambda s, v: (foot[0] + s * along_it[0] + v * across[0], foot[1] + s * along_it[1] + v * across[1])


def _round(centre: Point, radius: float, start: float, turn: float, width: float) -> Place:
    """Where a chain lies that is bent to a circle, seen from the working end."""
    return lambda s, v: polar(centre, radius - v * width, start + turn * s)


def _joined(
    place: Place, count: int, hook: Hook, end: Point, strands: tuple[tuple[Point, ...], ...], pull: Parts = ()
) -> Parts:
    """A chain bent to a circle, its live loop on the hook, the hook under those strands of its first stitch."""
    live, reach = loop_round(hook, 5.6, end, 1.1), (1.6 - hook.tip[1]) / sin(radians(hook.angle))
    ink = (*chain(place, count, 1.2), *live.behind, *hook.drawn(reach), *pull)
    firsts = (
        part
        for strand in strands
        for part in thread([place(s, v) for s, v in strand], 0, 1, 1.2, over=True, halo=0.28, ends="s")
    )
    return (*ink, *firsts, *live.before)


DRAWINGS = (
    LineDrawing(
        name="beaded-chain",
        title="A chain with a bead in each stitch",
        words="Three chains with a bead in each hang from the loop on the hook. Bead 4 is slid up to the hook, the "
        "thread lies over the hook behind it, and an arrow shows it drawn through the loop.",
        draw=beaded_chain,
        note="Drawn for 6 around: bead 4 is slid up.",
    ),
    LineDrawing(
        name="starting-ring",
        title="The chain closed to a circle",
        words="Seen from above: six chains bent to a circle, beads 1 to 6 on the outside. The hook comes from inside "
        "the circle and goes under the outer thread of the first chain; bead 7 is slid up beside it.",
        draw=starting_ring,
        note="Drawn for 6 around: bead 7 goes into the first ch.",
    ),
    LineDrawing(
        name="wide-chain",
        title="The chain of a wide rope and its first row",
        words="For a rope of eight around. One: nine chains to the left of the hook, numbered from the hook; an "
        "arrow leads into chain 2. Two: eight stitches stand on the chain, worked from right to left; the "
        "first, tinted, stands on chain 2.",
        draw=wide_chain,
        note="Drawn for 8 around: 9 ch, and 8 st on them.",
    ),
    LineDrawing(
        name="wide-ring",
        title="The first row joined to a circle",
        words="Seen from above: the eight stitches bent to a circle. The hook goes from inside under both threads of "
        "the first stitch, the thread lies over the hook, and an arrow shows it drawn through everything.",
        draw=wide_ring,
        note="Drawn for 8 around: st 8 is joined to st 1.",
    ),
)
