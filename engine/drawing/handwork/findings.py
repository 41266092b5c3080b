"""Rings and caps of metal, the hose of a core, closed ends cut open."""

from __future__ import annotations

from math import acos, degrees, dist

from engine.drawing.handwork.beads import THERE, DrawnRope, bead_end, rope
from engine.drawing.handwork.curves import arc, bearing, grid, oval_outline, trail
from engine.drawing.handwork.marks import disc, oval
from engine.drawing.handwork.parts import (
    ACCENT,
    BOLD,
    FINE,
    INK,
    MID,
    PALE,
    THIN,
    TINT,
    WHITE,
    WIDTH,
    Part,
    Parts,
    Stroke,
    clipped,
)
from engine.drawing.handwork.threads import WIRE, Cord, wire
from engine.drawing.shapes import Point


def wire_ring(centre: Point, radius: float, width: float = 0.95, cord: Cord = WIRE) -> Parts:
    """A closed ring of wire, flat on the page."""
    return wire(arc(centre, radius, 0, 360, 8)[:-1], width=width, cord=cord, closed=True)


def linked(
    first: Point, first_radius: float, second: Point, second_radius: float, width: float = 0.95, cord: Cord = WIRE
) -> Parts:
    """Where the second ring was laid over the first, the first comes up again at one of the two crossings."""
    gap = dist(first, second)
    lean = degrees(acos(max(-1.0, min(1.0, (first_radius**2 + gap**2 - second_radius**2) / (2 * first_radius * gap)))))
    middle, reach = bearing(first, second) + lean, degrees(1.15 / first_radius)
    return wire(arc(first, first_radius, middle - reach, middle + reach, 4), width=width, cord=cord, over=True)


def split_ring(centre: Point, half: float, gap: float, apart: float) -> list[Point]:
    """Points of a ring seen from above at a slant, from the right end of the cut in front to the left end.

    `gap` is half the opening in degrees; each end has moved `apart` along the axis, right down, left up.
    """
    points: list[Point] = []
    for x, y in arc(centre, half, 90 - gap, gap - 270, 14, 0.56):
        share = len(points) / 7 - 1
        points.append((x, y - apart * share * abs(share)))
    return points


def cut_end(end: Point, beside: Point) -> Parts:
    """The cut face of a thick wire."""
    return oval(end, 0.5, 0.95, bearing(end, beside))


def cap(rim: Point, width: float = 12.0, height: float = 6.0, angle: float = 0.0, new: bool = False) -> Parts:
    """A bead cap from the side: the middle of its rim; it opens downwards when `angle` is 0."""
    at = grid(rim, width / 2, -height, angle)
    edge, fill = (ACCENT, TINT) if new else (INK, MID)
    outline = trail(
        at(-1.06, -0.04),
        (at(-1.0, 0.12), at(-0.98, 0.2), at(-0.95, 0.3)),
        (at(-0.86, 0.75), at(-0.5, 0.95), at(-0.16, 1.0)),
        (at(0.16, 1.0),),
        (at(0.5, 0.95), at(0.86, 0.75), at(0.95, 0.3)),
        (at(0.98, 0.2), at(1.0, 0.12), at(1.06, -0.04)),
        (at(0, -0.36), at(-1.06, -0.04)),
        close=True,
    )
    ribs = tuple(
        Stroke(trail(at(x, 0.12 + 0.02 * abs(x)), (at(x * 0.85, 0.7), at(x * 0.3, 0.92))), "", edge, THIN)
        for x in (-0.55, 0.0, 0.55)
    )
    rim_line = Stroke(trail(at(-0.95, 0.27), (at(0, -0.05), at(0.95, 0.27))), "", edge, THIN)
    return (Stroke(outline, fill, edge, BOLD if new else FINE), rim_line, *ribs)


def hose(start: Point, end: float, outer: float = 5.0, wall: float = 0.8) -> Parts:
    """A hose from left to right, its open end at `end`."""
    (left, y), r = start, outer / 2
    bulge = end + r * 0.34 * 4 / 3
    body = trail(
        (left, y - r), ((end, y - r),), ((bulge, y - r), (bulge, y + r), (end, y + r)), ((left, y + r),), close=True
    )
    return (
        Stroke(body, TINT, ACCENT, BOLD),
        Stroke(oval_outline((end, y), r * 0.34, r), TINT, ACCENT, BOLD),
        Stroke(oval_outline((end, y), (r - wall) * 0.34, r - wall), WHITE, ACCENT, FINE),
    )


def capped_end(x: float, rim: float, width: float = 12.5, height: float = 6.0) -> Parts:
    """A rope end standing under its cap."""
    stands = rope(DrawnRope((x, 58), -90, 8, 2.9), 42, 74, lambda k: THERE)
    return (
        clipped((x - 6.4, rim - 0.5, 12.8, 44.9 - rim), stands),
        *cap((x, rim), width, height),
        *oval((x, rim - height), 1.2, 0.35, 0, INK, ""),
    )


def lying_end(x: float, y: float, loop: float = 2.7) -> tuple[Parts, Point]:
    """A capped rope end that points to the right, with its wire loop; and the middle of that loop."""
    height = 6.0
    centre = (x + height + 0.9 + loop, y)
    lies = rope(DrawnRope((-8, y), 0, 8, 2.9), 26, 86, lambda k: THERE)
    neck = wire([(x + height - 0.2, y), (x + height + 0.4, y), (x + height + 1.1, y)])
    shown = clipped((0.6, y - 9, x + 1.4, 18), lies)
    return (shown, *cap((x, y), 12.4, height, 90), *neck, *wire_ring(centre, loop)), centre


def dome(x: float, top: float, size: float = 3.6, half: float = 7.0, bottom: float = 46.0) -> Parts:
    """A closed rope end cut lengthwise: thread wall and beads on both sides, gathered over the top."""
    made: list[Part] = [
        _vault(x, top + 1.5, half - 1.6, top + half + 0.5, bottom, PALE, FINE),
        _vault(x, top + 4.0, half - 3.3, top + half + 1.5, bottom, WHITE, THIN),
    ]
    for side in (-1, 1):
        for i in range(6):
            drop = 0.0 if side < 0 else size * 0.25
            made += bead_end((x + side * half, top + half + 1.2 + i * size * 0.98 + drop), size)
        made += bead_end((x + side * half * 0.84, top + half * 0.56), size)
        made += bead_end((x + side * half * 0.40, top + 1.1), size)
    return tuple(made)


def tube_end(x: float, y: float, seen: float = WIDTH - 1.0) -> Parts:
    """The rope of a lying end, its last beads at `x`, seen as far as `seen`."""
    lies = DrawnRope((-8.0, y), 0, 8, 2.9)
    return (clipped((0.6, y - 9, seen - 0.6, 18), rope(lies, 26, int((x + 6.55) / lies.rise) + 1, lambda k: THERE)),)


def cup(mouth: Point, width: float, height: float, new: bool = True) -> Parts:
    """An end to glue in, seen from the side, its mouth to the left and cut open: a cup with a ring."""
    (x, y), h = mouth, width / 2
    edge, fill = (ACCENT, TINT) if new else (INK, MID)
    body = trail(
        (x, y - h),
        ((x + height - 2, y - h),),
        ((x + height, y - h), (x + height, y - h + 2)),
        ((x + height, y + h - 2),),
        ((x + height, y + h), (x + height - 2, y + h)),
        ((x, y + h),),
        ((x, y + h - 1.1),),
        ((x + height - 2.4, y + h - 1.1),),
        ((x + height - 2.4, y - h + 1.1),),
        ((x, y - h + 1.1),),
        close=True,
    )
    eye = disc((x + height + 1.9, y), 2.0, "", edge, 1.0)
    return (*eye, Stroke(body, fill, edge, FINE))


def _vault(x: float, top: float, half: float, spring: float, bottom: float, fill: str, width: float) -> Stroke:
    lift = 1.1
    outline = trail(
        (x - half, bottom),
        ((x - half, spring),),
        ((x - half, top + lift), (x - half * 0.55, top), (x, top)),
        ((x + half * 0.55, top), (x + half, top + lift), (x + half, spring)),
        ((x + half, bottom),),
    )
    return Stroke(outline, fill, INK, width)
