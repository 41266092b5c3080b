"""Hook, needles, pliers, cutters and goggles."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from engine.drawing.handwork.curves import Points, grid, oval_outline, smooth, trail, turned
from engine.drawing.handwork.marks import disc, form, line, oval
from engine.drawing.handwork.parts import BOLD, FINE, INK, LINE, MID, PALE, STEEL, THIN, WHITE, Part, Parts, Stroke
from engine.drawing.shapes import Point

Map = Callable[[float, float], Point]


class Hook(NamedTuple):
    """A steel hook: its tip, the way its handle points in degrees, and how thick its shaft is. Throat clockwise."""

    tip: Point
    angle: float
    size: float = 2.0

    def at(self, u: float, v: float = 0.0) -> Point:
        """The point that many thicknesses along the shaft from the tip, and that far to the throat's side."""
        return turned((u * self.size, v * self.size), self.angle, self.tip)

    def drawn(self, length: float = 30.0) -> Parts:
        """The hook, its handle cut off at that length."""
        end = length / self.size
        at = self.at
        outline = trail(
            at(end, -0.5),
            (at(2.8, -0.5),),
            (at(1.8, -0.5), at(1.3, -0.42), at(0.85, -0.40)),
            (at(0.35, -0.36), at(0.0, -0.22), at(0.0, 0.02)),
            (at(0.0, 0.30), at(0.28, 0.46), at(0.62, 0.47)),
            (at(0.9, 0.48), at(1.12, 0.50), at(1.34, 0.44)),
            (at(1.22, 0.34), at(0.98, 0.22), at(0.96, 0.06)),
            (at(0.95, -0.06), at(1.18, -0.08), at(1.34, 0.02)),
            (at(1.8, 0.24), at(2.2, 0.5), at(3.1, 0.5)),
            (at(end, 0.5),),
        )
        return (Stroke(outline, STEEL, INK, FINE), *line(at(3.2, -0.18), at(end, -0.18), ink=LINE, width=THIN))


def needle(eye: Point, angle: float, length: float = 34.0, width: float = 0.75) -> Parts:
    """A sewing needle from its eye; its point lies the way `angle`."""
    h, at = width / 2, grid(eye, 1.0, 1.0, angle)
    outline = trail(
        at(-1.8, 0),
        (at(-1.8, -h * 1.3), at(-0.8, -h * 1.5), at(2.5, -h)),
        (at(length, 0),),
        (at(2.5, h),),
        (at(-0.8, h * 1.5), at(-1.8, h * 1.3), at(-1.8, 0)),
        close=True,
    )
    return (Stroke(outline, STEEL, INK, FINE), *oval(eye, 1.05, h * 0.62, angle, WHITE, INK, THIN))


def big_eye_needle(left: float, right: float, y: float) -> tuple[Stroke, Stroke, Stroke]:
    """Its ground, its lower and its upper wire, so that a thread can lie between them."""
    span = right - left

    def wire(bulge: float) -> list[Points]:
        middle = left + 0.5 * span
        return [
            ((left + 0.22 * span, y), (left + 0.3 * span, y + bulge), (middle, y + bulge)),
            ((left + 0.7 * span, y + bulge), (left + 0.78 * span, y), (right, y)),
        ]

    upper, lower = trail((left, y), *wire(-2.3)), trail((left, y), *wire(2.3))
    back = [
        ((left + 0.78 * span, y), (left + 0.7 * span, y + 2.3), (left + 0.5 * span, y + 2.3)),
        ((left + 0.3 * span, y + 2.3), (left + 0.22 * span, y), (left, y)),
    ]
    ground = trail((left, y), *wire(-2.3), *back, close=True)
    return Stroke(ground, WHITE, "", 0.0), Stroke(lower, "", INK, BOLD), Stroke(upper, "", INK, BOLD)


def pliers(tip: Point, angle: float, size: float = 1.0, gap: float = 0.4, reach: float = 30.0) -> Parts:
    """Flat pliers from the side: `gap` is half the opening at the tip."""
    halves = tuple(part for side in (-1, 1) for part in _half(grid(tip, size, side * size, angle), gap, reach))
    return (*halves, *pivot(turned((13.6 * size, 0), angle, tip), 2.0 * size))


def pivot(centre: Point, radius: float) -> Parts:
    """Where the halves of a tool turn on each other."""
    return (*disc(centre, radius), *disc(centre, 0.3 * radius, INK, ""))


def cutters(tip: Point, angle: float, size: float = 1.0, reach: float = 22.0, gap: float = 0.0) -> Parts:
    """Side cutters: two short bevelled jaws that meet at the wire, a rivet, two handles."""
    made: list[Part] = []
    for side in (-1, 1):
        at = grid(tip, size, side * size, angle)
        outline = trail(
            at(-0.2, gap),
            (at(7.4, 0.1),),
            (at(9.4, 0.9),),
            (at(13, 2.0), at(16, 4.2), at(reach, 5.4)),
            (at(reach, 8.2),),
            (at(15, 7.2), at(12.5, 5.0), at(11.4, 3.6)),
            (at(10.4, 5.0), at(7.4, 5.2), at(5.4, 4.4)),
            (at(3.4, 3.4), at(1.4, 1.9), at(-0.2, gap)),
            close=True,
        )
        bevel = trail(at(0.6, gap + 0.5), (at(3.0, 1.6), at(5.6, 1.7), at(7.2, 1.2)))
        made += (Stroke(outline, PALE, INK, FINE), Stroke(bevel, "", INK, THIN))
    return (*made, *pivot(turned((9.0 * size, 0), angle, tip), 1.7 * size))


def round_jaw(tip: Point, angle: float, length: float, start: float, end: float) -> Parts:
    """One cone of round-nose pliers that comes towards the viewer: its end is a circle at the tip."""
    at, bulge = grid(tip, 1.0, 1.0, angle), length + end * 0.5
    body = trail(
        at(0, -start),
        (at(length, -end),),
        (at(bulge, -end * 0.5), at(bulge, end * 0.5), at(length, end)),
        (at(0, start),),
        close=True,
    )
    return (Stroke(body, PALE, INK, FINE), Stroke(oval_outline(tip, start, start), STEEL, INK, FINE))


def goggles(centre: Point, size: float = 0.88) -> Parts:
    """Safety glasses from the front."""
    x, y = centre

    def lens(half: Points, top: float, foot: float) -> Points:
        whole = [(0.0, top), *half, (0.0, foot), *((-a, b) for a, b in reversed(half))]
        return [(x + size * a, y + size * b) for a, b in whole]

    straps = tuple(
        part
        for s in (-1, 1)
        for part in form(
            *((x + s * size * a, y + size * b) for a, b in ((11.4, -3.2), (9, -4.4), (9, 2.4), (11.4, 1.2))),
            fill=MID,
            width=FINE,
        )
    )
    rim = lens(((5.4, -6.4), (9.0, -4.2), (9.2, 1.0), (6.6, 5.4), (3.4, 5.2), (1.5, 2.2)), -6.6, 1.2)
    pane = lens(((4.8, -4.9), (7.5, -3.2), (7.6, 0.6), (5.8, 3.8), (4.2, 3.8), (2.6, 0.9)), -5.1, -0.3)
    light = tuple(
        part
        for dx in (-5.4, 3.2)
        for part in line((x + size * dx, y - 0.6 * size), (x + size * (dx + 2.2), y - 3.4 * size), ink=LINE, width=BOLD)
    )
    return (
        *straps,
        Stroke(smooth(rim, closed=True), MID, INK, FINE),
        Stroke(smooth(pane, closed=True), WHITE, INK, FINE),
        *light,
    )


def _half(at: Map, gap: float, reach: float) -> Parts:
    """One jaw with its handle, and the teeth of the jaw."""
    outline = trail(
        at(0, gap),
        (at(11.5, 0.15),),
        (at(17, 0.9),),
        (at(21, 2.2), at(24, 4.8), at(reach, 5.6)),
        (at(reach, 8.4),),
        (at(23, 8), at(20, 5.4), at(16.5, 4.0)),
        (at(13.5, 5.2), at(11.5, 4.8), at(10, 4.0)),
        (at(0.4, gap + 1.7),),
        (at(-0.4, gap + 1.02), at(0, gap)),
        close=True,
    )
    inner = ((u, gap - (gap - 0.15) * u / 11.5) for u in (1.2, 2.2, 3.2, 4.2))
    teeth = ((at(u, edge + 0.2), at(u, edge + 0.9)) for u, edge in inner)
    return (Stroke(outline, PALE, INK, FINE), *(part for ends in teeth for part in line(*ends, width=THIN)))
