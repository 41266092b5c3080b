"""Thread and wire, painted in lengths so that they pass over and under; knots, chains and the reel."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import NamedTuple

from engine.drawing.handwork.curves import Points, bezier, lapped, outline_of, oval_outline, superoval, trail, trimmed
from engine.drawing.handwork.marks import form, line, oval
from engine.drawing.handwork.parts import (
    ACCENT,
    FINE,
    INK,
    METAL,
    MID,
    PALE,
    THIN,
    TINT,
    WHITE,
    Part,
    Parts,
    Stroke,
)
from engine.drawing.shapes import Point

EDGE = 0.24  # the dark edge of a light thread
LINK = ((0.0, -0.13), (0.62, -0.49), (1.14, -0.34), (1.32, 0.0), (1.14, 0.34), (0.62, 0.49), (0.0, 0.13))  # of a chain


class Cord(NamedTuple):
    """What a thread is painted in: its edge and its body."""

    edge: str
    body: str


OLD, NEW = Cord(INK, WHITE), Cord(ACCENT, ACCENT)
WIRE, NEW_WIRE = Cord(INK, METAL), Cord(ACCENT, TINT)


def thread(
    points: Points,
    first: int = 0,
    last: int | None = None,
    width: float = 0.9,
    cord: Cord = OLD,
    over: bool = False,
    ends: str = "",
    closed: bool = False,
    halo: float = 0.42,
) -> Parts:
    """A length of thread between two of its points. `over` breaks what it crosses; `ends` are rounded: s, e or se."""
    pieces = bezier(points, closed)
    whole = closed and first == 0 and last is None
    last = len(pieces) if last is None else last
    own = pieces[first:last]
    edge, body = (
        [outline_of(own, close=True)] * 2
        if whole
        else [outline_of(lapped(pieces, first, last, lap)) for lap in (0.05, 0.10)]
    )
    tips = [tip for mark, tip in (("s", own[0][0]), ("e", own[-1][3])) if mark == ends]
    made: list[Part] = []
    if over:
        made.append(Stroke(outline=outline_of(trimmed(own)), fill="", line=WHITE, width=width + 2 * halo, butt=True))
    inks = ((edge, width, cord.edge), (body, width - 2 * EDGE, cord.body))
    for path, broad, ink in inks if cord.body != cord.edge else inks[:1]:
        made += (Stroke(oval_outline(tip, broad / 2, broad / 2), ink, "", 0.0) for tip in tips)
        made.append(Stroke(outline=path, fill="", line=ink, width=broad, butt=ends != "se"))
    return tuple(made)


wire = partial(thread, width=0.95, cord=WIRE)  # as a thread, of metal


def chain(place: Callable[[float, float], Point], count: int, width: float = 1.1, cord: Cord = OLD) -> Parts:
    """A crochet chain: each loop comes up through the one before and lies over its head.

    `place` gives the point at a number of loops along the chain and that far to its side.
    """
    made: list[Part] = []
    for i in range(count):
        made += form(*(place(i + s, v) for s, v in (*LINK[:2], *LINK[-2:])), ink=WHITE, width=0.6) if i else ()
        made += thread([place(i + s, v) for s, v in LINK], width=width, cord=cord, over=i > 0, halo=0.28, ends="se")
    return tuple(made)


def knot(centre: Point, radius: float = 1.35) -> Parts:
    """An overhand knot pulled tight."""
    x, y = centre
    return (
        *oval(centre, radius * 1.15, radius * 0.9, -30, ACCENT, WHITE, 0.35),
        Stroke(trail((x - 0.9, y - 0.2), ((x, y + 0.5), (x + 0.6, y + 0.9))), "", WHITE, 0.25),
        Stroke(trail((x - 0.5, y - 0.9), ((x + 0.2, y - 0.1), (x + 1.1, y + 0.2))), "", WHITE, 0.25),
    )


def reel(centre: Point, height: float = 15.0, width: float = 8.0) -> Parts:
    """A reel of thread standing upright."""
    (x, y), w, h = centre, width / 2, height / 2
    body = form(
        (x - w * 0.75, y - h + 2),
        (x + w * 0.75, y - h + 2),
        (x + w * 0.75, y + h - 2),
        (x - w * 0.75, y + h - 2),
        fill=PALE,
    )
    turns = (y - h + 3 + i * (height - 5.4) / 6 for i in range(7))
    wound = tuple(part for v in turns for part in line((x - w * 0.75, v + 0.4), (x + w * 0.75, v - 0.4), width=THIN))
    flanges = tuple(
        part
        for v in (y - h, y + h - 2)
        for part in form((x - w, v), (x + w, v), (x + w, v + 2), (x - w, v + 2), fill=MID, width=FINE)
    )
    return (*body, *wound, *flanges)


def slip_knot(centre: Point, size: float = 1.3) -> Parts:
    """The small knot at the foot of the first loop."""
    return (Stroke(superoval(centre, size, size * 0.77, 20, 0.6), WHITE, INK, FINE),)
