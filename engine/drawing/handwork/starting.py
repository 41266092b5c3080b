"""Drawings of the start for 3 to 9 around: a chain with beads and its ring; the chain of a wide rope and its ring."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from math import copysign, radians, sin, tan

from engine.drawing.handwork.beads import NEW, bead
from engine.drawing.handwork.curves import along
from engine.drawing.handwork.hooked import laid_over, loop_round
from engine.drawing.handwork.marks import arrow, callout, sign, stacked
from engine.drawing.handwork.parts import GLASS, TINT, LineDrawing, Part, Parts
from engine.drawing.handwork.threads import LINK, chain, slip_knot, thread
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import OLD as OLD_THREAD
from engine.drawing.handwork.tools import Hook
from engine.drawing.handwork.tube import THREAD_MM, Tube, held, inside, standing
from engine.drawing.shapes import Point

Place = Callable[[float, float], Point]

AROUND = range(3, 10)
GAP = 36.0  # degrees from the first bead back to the loop of the last stitch


def beaded_chain(around: int) -> Parts:
    """A chain with a bead in each stitch, and the next bead slid up to the hook."""
    worked = min(3, around - 1)
    up = _laid((36.0, 21.6 + 6.4 * worked), (0.0, -6.4), (5.6, 0.0))
    hook = Hook((18.0, 9.0), 6, 2.6)
    loop = loop_round(hook, 6.9, up(worked + 0.02, 0), 1.3)
    over = laid_over(
        hook,
        1.9,
        [(35.6, 21.4), (32.8, 19.6), (29.2, 17.9), (25.4, 15.2)],
        [(19.0, 15.0), (14.6, 22.0), (11.8, 30.0), (10.8, 41.0)],
        1.1,
        NEW_THREAD,
    )
    tail = [up(-0.30, 0.9), up(-0.26, 0.5), up(-0.06, 0.1), up(0.1, 0)]
    ink: list[Part] = [*thread(tail, width=1.3, ends="s"), *slip_knot(up(-0.04, 0.0), 1.5)]
    ink += (part for i in range(worked) for part in bead(up(i + 0.70, -1.08), 90, 5.6))
    ink += (*over.behind, *chain(up, worked, 1.3), *bead((29.2, 17.9), 28, 5.6, NEW), *loop.behind, *hook.drawn(40.5))
    ink += (*arrow(hook.at(3.0), hook.at(9.6), halo=False), *loop.before, *over.before)
    ink += (part for share in (0.74, 0.87) for part in bead(*along(over.route, share), 5.4))
    ink += (part for i in range(worked) for part in callout((24.2, up(i + 0.70, 0)[1]), str(i + 1)))
    return (*ink, *callout((23.4, 18.4), str(worked + 1)))


def starting_ring(around: int) -> Parts:
    """The chain laid to a circle, beads outside; bead 1 flipped over the hook, the next bead ready."""
    tube = Tube((25.0, 25.6), radius=max(8.6, 1.42 * around), around=around, first=68.0, size=9.0, rise=0.0)
    hook = Hook(tube.at(tube.first + 24, 8.4, 5.0), 62, 1.8)
    aside = tube.at(tube.first - 4, 2.4, tube.size * 0.34)
    live = tube.at(tube.first - GAP, -0.6, 0.4)
    feed = [live, (live[0] + 1.4, live[1] - 4.4), (39.0, 9.0), (45.0, 6.8), (51.0, 5.6), (58.8, 4.6)]
    loop = loop_round(hook, 6.2, live, 0.9)
    order = sorted(range(1, around), key=lambda k: -sin(radians(tube.bearing(k))))
    far, near = ([k for k in order if tube.far(k) is side] for side in (True, False))
    last = around - GAP * around / 360
    ink: list[Part] = [*thread(feed, width=THREAD_MM, cord=NEW_THREAD)]
    ink += (part for k in far for part in _standing(tube, k, k < around - 1))
    ink += (*bead(aside, 4, tube.size, NEW), *inside(tube, -0.12, last))
    ink += (part for k in far if k < around - 1 for part in held(tube, k, 2))
    ink += (part for k in near for part in _standing(tube, k, k < around - 1))
    over = [
        (aside[0] - 1.2, aside[1] - 0.6),
        (aside[0] - 2.4, aside[1] - 2.0),
        hook.at(3.2, -0.3),
        tube.at(tube.first + 32, 0.6, 2.0),
        tube.at(tube.first + 36, -0.5, 0.0),
    ]
    ink += (*loop.behind, *hook.drawn(33.0), *thread(over, width=THREAD_MM, over=True, halo=0.3), *loop.before)
    (x, y), angle = along(feed, 0.56)
    ink += (*bead((x, y), angle, 0.8 * tube.size, NEW), *bead(*along(feed, 0.84), 0.8 * tube.size))
    ink += sign((aside[0] + 0.9, aside[1] - 0.9), "1", ground=TINT)
    ink += (part for k in range(1, around) for part in sign(_face(tube, k, hook), str(k + 1), ground=GLASS))
    return (*ink, *sign((x, y), str(around + 1), ground=TINT))


def _standing(tube: Tube, k: int, threaded: bool) -> Parts:
    return (*standing(tube.stands(k), tube.size), *(held(tube, k) if threaded else ()))


def _face(tube: Tube, k: float, hook: Hook) -> Point:
    """Where the number of an upright bead stands, beside the hook where that lies over it."""
    x, y = tube.stands(k)
    y += 0.18 * tube.size
    shaft = hook.tip[0] + (y - hook.tip[1]) / tan(radians(hook.angle))
    aside = 2.6 - abs(x - shaft)
    return (x + copysign(aside, x - shaft), y) if aside > 0 and not tube.far(k) else (x, y)


def wide_chain(around: int) -> Parts:
    """A chain of one more than the rope is around; and the first row, from the second chain on."""
    pitch, count = min(4.3, 38.4 / (around + 1)), around + 1
    lying = _laid((6.5, 12.0), (pitch, 0.0), (0.0, 4.2))
    hook = Hook((lying(count, 0)[0] + 2.1, 18.2), -52, 2.1)
    loop = loop_round(hook, 3.0, lying(count + 0.05, 0), 1.1)
    tail = [lying(-0.9, 0.9), lying(-0.6, 0.5), lying(-0.2, 0.1), lying(0.1, 0)]
    above: list[Part] = [
        *thread(tail, width=1.1, ends="s"),
        *slip_knot(lying(-0.1, 0.0), 1.1),
        *chain(lying, count),
        *loop.behind,
        *hook.drawn(17.4),
        *loop.before,
    ]
    above += (
        part
        for i in range(count)
        for part in (callout if i == count - 2 else sign)(
            (lying(i + 0.7, 0)[0] - (1.0 if count - i > 9 else 0.0), 18.2), str(count - i)
        )
    )
    x = lying(count, 0)[0]
    above += arrow((x - 2.5, 5.4), (x - 4.9, 3.6), (x - 6.7, 5.4), (x - 6.4, 9.8))
    return stacked(22.8, tuple(above), _first_row(around, pitch))


def _first_row(around: int, pitch: float) -> Parts:
    """The stitches stand on the chain, worked from right to left; one chain is turned up at the right."""
    lying = _laid((11.2, 41.4), (pitch, 0.0), (0.0, 3.6))
    right = lying(around, 0)[0]
    tops = _laid((right - 0.2, 32.4), (-pitch, 0.0), (0.0, 3.6))
    turned_up = _laid(lying(around + 0.05, 0), (1.9, -6.2), (2.8, 0.8))
    ink: list[Part] = []
    for i in range(around):
        x = lying(i + 0.62, 0)[0]
        ink += (
            part
            for side in (-1, 1)
            for part in thread(
                [(x + side * 0.5, 39.9), (x + side * 0.95, 37.0), (x + side * 0.3 - 0.3, 34.2)],
                width=1.1,
                cord=NEW_THREAD if i == around - 1 else OLD_THREAD,
            )
        )
    ink += (
        *chain(lambda s, v: lying(s, v) if s < around else turned_up(s - around, v), around + 1),
        *chain(tops, around),
    )
    ink += (part for i in range(around) for part in sign((tops(i + 0.62, 0)[0], 27.4), str(i + 1)))
    return (*ink, *arrow((right + 12.0, 32.4), (right + 7.4, 32.4)))


def wide_ring(around: int) -> Parts:
    """The strip joined to a circle with a slip stitch in its first stitch."""
    tube = Tube((27.0, 25.0), max(9.0, 1.55 * around), around, first=104.0 - 150.0 / around, size=7.4, rise=0.0)
    hook = Hook(tube.at(110.0, 7.6, 4.4), 62, 1.8)

    def loop_at(s: float, v: float) -> Point:
        return tube.rim(s - 0.3, -0.4 + 5.2 * v, 3.0 * v)

    live = loop_at(around - 0.25, 0.0)
    old = loop_round(hook, 8.0, live, 1.0)
    feed = [
        live,
        (live[0] + 1.4, live[1] - 3.6),
        (live[0] - 2.6, live[1] - 8.4),
        hook.at(0.0, -1.2),
        hook.at(0.9, 0.0),
        hook.at(1.7, 1.2),
        (14.0, 8.0),
        (9.6, 5.0),
        (4.4, 3.0),
    ]
    strands = ([loop_at(s, v) for s, v in LINK[:4]], [loop_at(s, v) for s, v in LINK[:2:-1]])
    ink: list[Part] = [*thread(feed, 0, 4, 0.9, NEW_THREAD), *inside(tube, -0.4, around - 0.6)]
    ink += (*chain(loop_at, around, 1.0), *old.behind, *hook.drawn(33.0))
    ink += arrow(hook.at(3.4), hook.at(10.0), halo=False)
    ink += (part for strand in strands for part in thread(strand, width=1.0, over=True, halo=0.28))
    ink += (*old.before, *thread(feed, 4, None, 0.9, NEW_THREAD, over=True))
    return (*ink, *(part for k in range(around) for part in sign(_outside(tube, k), str(k + 1))))


def _outside(tube: Tube, k: int) -> Point:
    """Where the number of a stitch stands, outside the ring."""
    way = tube.bearing(k + 0.35)
    return tube.at(way, 5.6 if sin(radians(way)) < 0.4 else 6.4)


def _laid(foot: Point, along_it: Point, across: Point) -> Place:
    """Where a straight chain lies: so far from its foot with every loop, and so far to its side."""
    return lambda s, v: (foot[0] + s * along_it[0] + v * across[0], foot[1] + s * along_it[1] + v * across[1])


NUMBERS = {2: "two", 3: "three", 4: "four", 5: "five", 6: "six", 7: "seven", 8: "eight", 9: "nine", 10: "ten"}


def _beaded_chain(around: int) -> LineDrawing:
    worked = min(3, around - 1)
    return LineDrawing(
        name=f"beaded-chain-{around}",
        title="A chain with a bead in each stitch",
        words=f"{NUMBERS[worked].capitalize()} chains with a bead in each hang from the loop on the hook, a slip "
        f"knot and the tail below. Bead {worked + 1} is slid up to the hook, the thread lies over the hook behind it, "
        "and an arrow shows it drawn through the loop.",
        draw=partial(beaded_chain, around),
        note=f"Bead {worked + 1} is slid up.",
    )


def _starting_ring(around: int) -> LineDrawing:
    return LineDrawing(
        name=f"starting-ring-{around}",
        title="The chain closed to a circle",
        words=f"The {NUMBERS[around]} chains laid to a circle, its open end towards you, beads 1 to {around} on the "
        "outside. Bead 1, tinted, is flipped over the hook to the right. The hook comes from inside the circle and "
        f"goes under the thread of bead 1; bead {around + 1} is slid up behind it.",
        draw=partial(starting_ring, around),
        note=f"Bead 1 is flipped over; bead {around + 1} goes there.",
    )


def _wide_chain(around: int) -> LineDrawing:
    return LineDrawing(
        name=f"wide-chain-{around}",
        title="The chain of a wide rope and its first row",
        words=f"For a rope of {NUMBERS[around]} around. a: {NUMBERS[around + 1]} chains to the left of the hook, "
        "numbered from the hook, behind them the slip knot and the tail; an arrow leads into chain 2. b: "
        f"{NUMBERS[around]} stitches stand on the chain, worked from right to left; the first, tinted, stands on "
        "chain 2.",
        draw=partial(wide_chain, around),
        note=f"{around + 1} ch, and {around} st on them.",
    )


def _wide_ring(around: int) -> LineDrawing:
    return LineDrawing(
        name=f"wide-ring-{around}",
        title="The first row joined to a circle",
        words=f"The {NUMBERS[around]} stitches laid to a circle, its open end towards you. The hook goes from the "
        "inside under both threads of the first stitch, the thread lies over the hook, and an arrow shows it drawn "
        "through everything.",
        draw=partial(wide_ring, around),
        note=f"St {around} is joined to st 1.",
    )


DRAWINGS = tuple(made(around) for made in (_beaded_chain, _starting_ring, _wide_chain, _wide_ring) for around in AROUND)
