"""Plain shapes and marks: lines, ovals, arrows, numbers in rings, ticks and crosses, the frames of a drawing."""

from __future__ import annotations

import re
from collections.abc import Sequence

from engine.drawing.handwork.curves import Points, bearing, bezier, outline_of, oval_outline, trail, turned
from engine.drawing.handwork.parts import (
    ACCENT,
    FINE,
    HEIGHT,
    INK,
    LINE,
    THIN,
    WHITE,
    WIDTH,
    Frame,
    Part,
    Parts,
    Sign,
    Stroke,
)
from engine.drawing.shapes import Outline, Point, moved

SIGNS = {  # on a grid of 4 × 6, from its top left
    "0": "M2 0C.6 0 0 1.4 0 3C0 4.6 .6 6 2 6C3.4 6 4 4.6 4 3C4 1.4 3.4 0 2 0Z",
    "1": "M.7 1.3L2.4 0L2.4 6",
    "2": "M.2 1.5C.4 .5 1.1 0 2 0C3.1 0 3.8 .7 3.8 1.7C3.8 3.2 1.6 4 .2 6L4 6",
    "3": "M.3 1C.7 .3 1.3 0 2 0C3 0 3.7 .6 3.7 1.5C3.7 2.4 3 2.8 1.7 2.8C3.1 2.8 3.9 3.4 3.9 4.4C3.9 5.4 3.1 6 2 6"
    "C1.2 6 .5 5.7 .1 5",
    "4": "M3 6L3 0L0 4.2L4 4.2",
    "5": "M3.6 0L.8 0L.5 2.7C1 2.3 1.4 2.2 2 2.2C3.1 2.2 3.9 2.9 3.9 4.1C3.9 5.3 3.1 6 1.9 6C1.2 6 .5 5.7 .1 5.1",
    "6": "M3.4 .3C2.9 0 2.6 0 2.2 0C.8 0 .1 1.5 .1 3.6C.1 5.1 .8 6 2 6C3.2 6 3.9 5.2 3.9 4.1C3.9 3 3.2 2.3 2.1 2.3"
    "C1 2.3 .1 3.1 .1 4.1",
    "7": "M0 0L4 0L1.5 6",
    "8": "M2 2.8C1 2.8 .4 2.2 .4 1.4C.4 .6 1 0 2 0C3 0 3.6 .6 3.6 1.4C3.6 2.2 3 2.8 2 2.8Z"
    "M2 2.8C.8 2.8 .1 3.5 .1 4.4C.1 5.3 .8 6 2 6C3.2 6 3.9 5.3 3.9 4.4C3.9 3.5 3.2 2.8 2 2.8Z",
    "9": "M.6 5.7C1.1 6 1.4 6 1.8 6C3.2 6 3.9 4.5 3.9 2.4C3.9 .9 3.2 0 2 0C.8 0 .1 .8 .1 1.9C.1 3 .8 3.7 1.9 3.7"
    "C3 3.7 3.9 2.9 3.9 1.9",
    "A": "M0 6L2 0L4 6M.7 4L3.3 4",
    "B": "M.4 6L.4 0L2.1 0C3.2 0 3.7 .6 3.7 1.4C3.7 2.2 3.2 2.8 2.1 2.8L.4 2.8"
    "M2.1 2.8C3.3 2.8 3.9 3.4 3.9 4.4C3.9 5.4 3.3 6 2.1 6L.4 6",
    "a": "M3.6 2.4L3.6 6M3.6 3.4C3.3 2.7 2.8 2.3 2.1 2.3C1 2.3 .3 3.1 .3 4.2C.3 5.3 1 6 2.1 6C2.8 6 3.3 5.6 3.6 4.9",
    "b": "M.4 0L.4 6M.4 3.4C.7 2.7 1.2 2.3 1.9 2.3C3 2.3 3.7 3.1 3.7 4.2C3.7 5.3 3 6 1.9 6C1.2 6 .7 5.6 .4 4.9",
    "c": "M3.6 3.1C3.3 2.6 2.8 2.3 2.1 2.3C1 2.3 .3 3.1 .3 4.2C.3 5.3 1 6 2.1 6C2.8 6 3.3 5.7 3.6 5.2",
    "d": "M3.6 0L3.6 6M3.6 3.4C3.3 2.7 2.8 2.3 2.1 2.3C1 2.3 .3 3.1 .3 4.2C.3 5.3 1 6 2.1 6C2.8 6 3.3 5.6 3.6 4.9",
    "m": "M0 6L0 2.4M0 3.6C.2 2.8 .6 2.4 1.1 2.4C1.7 2.4 2 2.8 2 3.6L2 6"
    "M2 3.6C2.2 2.8 2.6 2.4 3.1 2.4C3.7 2.4 4 2.8 4 3.6L4 6",
}
PANELS = "abcd"
SIGN_MM, SIGN_LINE, RING_MM = 2.3, 0.42, 1.9  # how high and thick a sign is; the radius of a number's ring


def line(
    *points: Point, ink: str = INK, width: float = FINE, dash: tuple[float, ...] = (), butt: bool = False
) -> Parts:
    """Straight from point to point."""
    return (Stroke(outline=_straight(points), fill="", line=ink, width=width, dash=dash, butt=butt),)


def form(*points: Point, fill: str = WHITE, ink: str = INK, width: float = FINE) -> Parts:
    """A form with straight sides."""
    return (Stroke(_straight(points, close=True), fill, ink, width),)


def oval(
    centre: Point, rx: float, ry: float, angle: float = 0.0, fill: str = WHITE, ink: str = INK, width: float = FINE
) -> Parts:
    """An ellipse."""
    return (Stroke(oval_outline(centre, rx, ry, angle), fill, ink, width if ink else 0.0),)


def disc(centre: Point, radius: float, fill: str = WHITE, ink: str = INK, width: float = FINE) -> Parts:
    """A circle."""
    return oval(centre, radius, radius, 0.0, fill, ink, width)


def arrow(
    *points: Point,
    ink: str = ACCENT,
    slim: bool = False,
    halo: bool = True,
    both: bool = False,
    dash: tuple[float, ...] = (),
) -> Parts:
    """A motion: a smooth shaft and a solid head, or two; slim where there is little room."""
    width, head = (0.5, 1.7) if slim else (0.8, 2.4)
    pieces = bezier(points)
    ends = [(pieces[-1][3], pieces[-1][2]), *([(pieces[0][0], pieces[0][1])] if both else [])]
    heads = [_head(tip, bearing(back, tip), head) for tip, back in ends]
    shaft, made = outline_of(pieces), list[Part]()
    if halo:
        made.append(Stroke(outline=shaft, fill="", line=WHITE, width=width + 0.9, butt=True))
        made += (Stroke(outline, WHITE, WHITE, 0.9) for outline in heads)
    made.append(Stroke(outline=shaft, fill="", line=ink, width=width, dash=dash, butt=True))
    made += (Stroke(outline, ink, "", 0.0) for outline in heads)
    return tuple(made)


def sign(centre: Point, letters: str, ink: str = INK, ground: str = "") -> Parts:
    """Digits or letters, which still read in the mirrored drawing; a ground keeps them clear of what they cross."""
    scale = SIGN_MM / 6
    tall = -3.0 if any(letter not in "ac" for letter in letters) else -4.2  # small letters stand in the middle, too
    outline = tuple(
        step
        for i, letter in enumerate(letters)
        for step in moved(_read(SIGNS[letter]), scale, (5.6 * (i - len(letters) / 2) + 0.8) * scale, tall * scale)
    )
    clear = (Sign(outline, centre, ground, 3 * SIGN_LINE),) if ground else ()
    return (*clear, Sign(outline=outline, at=centre, line=ink, width=SIGN_LINE, says=letters))


def callout(centre: Point, letter: str) -> Parts:
    """A number in a ring, close to its thing."""
    return (*disc(centre, RING_MM), *sign(centre, letter))


def beside(edges: Sequence[float], *scenes: Parts, lettered: bool = True, height: float = HEIGHT) -> Parts:
    """Frames from left to right between those edges, lettered, with a line that no mirror moves between two."""
    frames = (
        Frame(
            left=left,
            right=right,
            parts=(*scene, *(_step((left + 3.2, 4.2), letter) if lettered else ())),
            top=0.0,
            foot=height,
        )
        for letter, left, right, scene in zip(PANELS, edges, edges[1:], scenes, strict=False)
    )
    return (*frames, *(Frame(x, x, line((x, 2.0), (x, height - 2.0), ink=LINE, width=THIN)) for x in edges[1:-1]))


def stacked(level: float, upper: Parts, lower: Parts, lettered: bool = True) -> Parts:
    """One frame above another, the line between them at that height."""
    ends = ((0.0, level, upper), (level, HEIGHT, lower))
    frames = (
        Frame(
            left=0.0,
            right=WIDTH,
            parts=(*scene, *(_step((3.4, top + 3.8), letter) if lettered else ())),
            top=top,
            foot=foot,
        )
        for letter, (top, foot, scene) in zip(PANELS, ends, strict=False)
    )
    return (*frames, *line((2.0, level), (WIDTH - 2.0, level), ink=LINE, width=THIN))


def tick(centre: Point, size: float = 2.2, width: float = 0.9) -> Parts:
    """Right so."""
    outline = trail((-size, 0), ((-0.25 * size, 0.8 * size),), ((1.1 * size, -size),))
    return (Sign(outline, centre, ACCENT, width),)


def cross(centre: Point, size: float = 2.0) -> Parts:
    """Not so."""
    x, y = centre
    return (
        *line((x - size, y + size), (x + size, y - size), width=0.9),
        *line((x - size, y - size), (x + size, y + size), width=0.9),
    )


def _step(centre: Point, letter: str) -> Parts:
    """The letter of a panel, white on ink."""
    return (*disc(centre, 2.0, INK), *sign(centre, letter, WHITE))


def _straight(points: Points, close: bool = False) -> Outline:
    return trail(points[0], *((point,) for point in points[1:]), close=close)


def _head(tip: Point, way: float, size: float) -> Outline:
    return _straight(
        [turned((size * x, size * y), way, tip) for x, y in ((0.75, 0.0), (-0.45, -0.48), (-0.2, 0.0), (-0.45, 0.48))],
        close=True,
    )


def _read(path: str) -> Outline:
    """The steps of a sign."""
    return tuple((letter, *map(float, numbers.split())) for letter, numbers in re.findall("([MLCZ])([^MLCZ]*)", path))
