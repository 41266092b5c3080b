"""Hook, needles, pliers, cutters and goggles."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from engine.drawing.handwork.curves import Points, oval_outline, smooth, trail, turned
from engine.drawing.handwork.marks import form, line, oval
from engine.drawing.handwork.parts import FINE, INK, LINE, MID, PALE, STEEL, THIN, WHITE, Part, Parts, Stroke
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
            at(end, -0.5), (at(2.8, -0.5),), (at(1.8, -0.5), at(1.3, -0.42), at(0.85, -0.40)),
            (at(0.35, -0.36), at(0.0, -0.22), at(0.0, 0.02)), (at(0.0, 0.30), at(0.28, 0.46), at(0.62, 0.47)),
            (at(0.9, 0.48), at(1.12, 0.50), at(1.34, 0.44)), (at(1.22, 0.34), at(0.98, 0.22), at(0.96, 0.06)),
            (at(0.95, -0.06), at(1.18, -0.08), at(1.34, 0.02)), (at(1.8, 0.24), at(2.2, 0.5), at(3.1, 0.5)),
            (at(end, 0.5),))
        return (Stroke(outline, STEEL, INK, 0.35), *line(at(3.2, -0.18), at(end, -0.18), ink=LINE, width=THIN))


def needle(eye: Point, angle: float, length: float = 34.0, width: float = 0.75) -> Parts:
    """A sewing needle from its eye; its point lies the way `angle`."""
    h = width / 2

    def at(u: float, v: float) -> Point:
        return turned((u, v), angle, eye)

    outline = trail(at(-1.8, 0), (at(-1.8, -h * 1.3), at(-0.8, -h * 1.5), at(2.5, -h)), (at(length * 0.55, -h),),
                    (at(length, 0),), (at(length * 0.55, h),), (at(2.5, h),),
                    (at(-0.8, h * 1.5), at(-1.8, h * 1.3), at(-1.8, 0)), close=True)
    return (Stroke(outline, STEEL, INK, FINE), *oval(eye, 1.05, h * 0.62, angle, WHITE, INK, THIN))


def big_eye_needle(left: float, right: float, y: float) -> tuple[Stroke, Stroke, Stroke]:
    """Its ground, its lower and its upper wire, so that a thread can lie between them."""
    span = right - left

    def wire(bulge: float) -> list[Points]:
        middle = left + 0.5 * span
        return [((left + 0.22 * span, y), (left + 0.3 * span, y + bulge), (middle, y + bulge)),
                ((left + 0.7 * span, y + bulge), (left + 0.78 * span, y), (right, y))]

    upper, lower = trail((left, y), *wire(-2.3)), trail((left, y), *wire(2.3))
    back = [((left + 0.78 * span, y), (left + 0.7 * span, y + 2.3), (left + 0.5 * span, y + 2.3)),
            ((left + 0.3 * span, y + 2.3), (left + 0.22 * span, y), (left, y))]
    ground = trail((left, y), *wire(-2.3), *back, close=True)
    return Stroke(ground, WHITE, "", 0.0), Stroke(lower, "", INK, 0.5), Stroke(upper, "", INK, 0.5)


def pliers(tip: Point, angle: float, size: float = 1.0, gap: float = 0.4, reach: float = 30.0) -> Parts:
    """Flat pliers from the side: `gap` is half the opening at the tip."""
    halves = tuple(part for side in (-1, 1) for part in _half(_at(tip, angle, size, side), gap, reach))
    centre = turned((13.6 * size, 0), angle, tip)
    return (*halves, *oval(centre, 2.0 * size, 2.0 * size, angle, WHITE, INK, 0.35),
            *oval(centre, 0.6 * size, 0.6 * size, angle, INK, ""))


def cutters(tip: Point, angle: float, size: float = 1.0, reach: float = 22.0, gap: float = 0.0) -> Parts:
    """Side cutters: two short bevelled jaws that meet at the wire, a rivet, two handles."""
    made: list[Part] = []
    for side in (-1, 1):
        at = _at(tip, angle, size, side)
        outline = trail(at(-0.2, gap), (at(7.4, 0.1),), (at(9.4, 0.9),), (at(13, 2.0), at(16, 4.2), at(reach, 5.4)),
                        (at(reach, 8.2),), (at(15, 7.2), at(12.5, 5.0), at(11.4, 3.6)),
                        (at(10.4, 5.0), at(7.4, 5.2), at(5.4, 4.4)), (at(3.4, 3.4), at(1.4, 1.9), at(-0.2, gap)),
                        close=True)
        bevel = trail(at(0.6, gap + 0.5), (at(3.0, 1.6), at(5.6, 1.7), at(7.2, 1.2)))
        made += (Stroke(outline, PALE, INK, 0.35), Stroke(bevel, "", INK, THIN))
    centre = turned((9.0 * size, 0), angle, tip)
    return (*made, *oval(centre, 1.7 * size, 1.7 * size, 0, WHITE, INK, 0.35),
            *oval(centre, 0.5 * size, 0.5 * size, 0, INK, ""))


def round_jaw(tip: Point, angle: float, length: float, start: float, end: float) -> Parts:
    """One cone of round-nose pliers that comes towards the viewer: its end is a circle at the tip."""
    def at(u: float, v: float) -> Point:
        return turned((u, v), angle, tip)

    bulge = length + end * 0.5
    body = trail(at(0, -start), (at(length, -end),), (at(bulge, -end * 0.5), at(bulge, end * 0.5), at(length, end)),
                 (at(0, start),), close=True)
    return (Stroke(body, PALE, INK, 0.35), Stroke(oval_outline(tip, start, start), STEEL, INK, 0.35))


def goggles(centre: Point, size: float = 0.88) -> Parts:
    """Safety glasses from the front."""
    x, y = centre

    def lens(half: Points, top: float, foot: float) -> Points:
        whole = [(0.0, top), *half, (0.0, foot), *((-a, b) for a, b in reversed(half))]
        return [(x + size * a, y + size * b) for a, b in whole]

    straps = tuple(part for s in (-1, 1) for part in form(
        *((x + s * size * a, y + size * b) for a, b in ((11.4, -3.2), (9, -4.4), (9, 2.4), (11.4, 1.2))), fill=MID,
        width=0.35))
    rim = lens(((5.4, -6.4), (9.0, -4.2), (9.2, 1.0), (6.6, 5.4), (3.4, 5.2), (1.5, 2.2)), -6.6, 1.2)
    pane = lens(((4.8, -4.9), (7.5, -3.2), (7.6, 0.6), (5.8, 3.8), (4.2, 3.8), (2.6, 0.9)), -5.1, -0.3)
    light = tuple(part for dx in (-4.8, 2.8)
                  for part in line((x + dx, y - 0.6), (x + dx + 2.0, y - 3.2), ink=LINE, width=0.45))
    return (*straps, Stroke(smooth(rim, closed=True), MID, INK, 0.4),
            Stroke(smooth(pane, closed=True), WHITE, INK, FINE), *light)


def _at(tip: Point, angle: float, size: float, side: int) -> Map:
    return lambda u, v: turned((u * size, side * v * size), angle, tip)


def _half(at: Map, gap: float, reach: float) -> Parts:
    """One jaw with its handle, and the teeth of the jaw."""
    outline = trail(at(0, gap), (at(11.5, 0.15),), (at(17, 0.9),), (at(21, 2.2), at(24, 4.8), at(reach, 5.6)),
                    (at(reach, 8.4),), (at(23, 8), at(20, 5.4), at(16.5, 4.0)),
                    (at(13.5, 5.2), at(11.5, 4.8), at(10, 4.0)), (at(0.4, gap + 1.7),),
                    (at(-0.4, gap + 1.02), at(0, gap)), close=True)
    teeth = ((at(u, gap * (1 - u / 11)), at(u, gap * (1 - u / 11) + 0.7)) for u in (1.2, 2.2, 3.2, 4.2))
    return (Stroke(outline, PALE, INK, 0.35), *(part for ends in teeth for part in line(*ends, width=THIN)))
