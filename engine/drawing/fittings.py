"""Metal on a rope, seen straight from above: caps, cones and bars as turned on a lathe, and rings of wire.

Lengths are in bead widths, as in the studio; every piece is measured by the scene that lays it.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from engine.drawing.beadform import Array
from engine.drawing.camera import Camera
from engine.drawing.finishes import linear, to_srgb
from engine.drawing.shading import KEY, SOFT

FINE = 2  # sub-pixels in a pixel, each way
Place = tuple[float, float, float]
SILVER = "#cfd2d6"
SAMPLES = 240  # of a profile
ROUNDED, GLIDING = 5, 17  # samples over which corners of a profile are rounded, and its slope


class Turned(NamedTuple):
    """A piece turned on a lathe, its axis level, from `start` (x, y, z) on.

    `quarters` are the quarter turns by which the axis is turned from the right, anticlockwise. `profile` are places
    along the axis, rising, and the radius there; between them the outline is straight.
    """

    start: Place
    quarters: int
    profile: tuple[tuple[float, float], ...]


class Loop(NamedTuple):
    """A ring of round wire: its middle (x, y, z), radius to the wire's middle, half the wire's width.

    It lies flat, or leans: `lean` is how much higher it is for every bead width up the picture.
    """

    centre: Place
    radius: float
    wire: float
    lean: float = 0.0


Fitting = Turned | Loop
Area = tuple[int, int, int, int]  # left, top, right and bottom, in px


def shadow_points(fittings: tuple[Fitting, ...]) -> Array:
    """Points (m, 3) about a bead width apart that cast the shadow of the pieces."""
    return np.concatenate([_points_of(fitting) for fitting in fittings] or [np.zeros((0, 3))])


def put_on(picture: Array, fittings: tuple[Fitting, ...], camera: Camera) -> None:
    """Draws the pieces over a picture, uint8 (height, width, 3 or 4), that was taken straight from above."""
    if not fittings:
        return
    boxes = [_box(fitting, camera) for fitting in fittings]
    left, top = max(0, min(box[0] for box in boxes)), max(0, min(box[1] for box in boxes))
    right, bottom = (
        min(camera.width, max(box[2] for box in boxes)),
        min(camera.height, max(box[3] for box in boxes)),
    )
    if right <= left or bottom <= top:
        return
    area = (left, top, right, bottom)
    height = np.full(((bottom - top) * FINE, (right - left) * FINE), -np.inf, np.float32)
    owner = np.full(height.shape, -1, np.int8)
    for number, fitting in enumerate(fittings):
        _put(fitting, number, boxes[number], area, camera, height, owner)
    light = np.zeros((*height.shape, 3), np.float32)
    for number, fitting in enumerate(fittings):
        rows, columns = np.nonzero(owner == number)
        x, y = _places(camera, left * FINE + columns, top * FINE + rows)
        way = _turned_way(fitting, x, y) if isinstance(fitting, Turned) else _loop_way(fitting, x, y)
        light[rows, columns] = _silver(*way)
    _lay_over(picture[top:bottom, left:right], light, owner >= 0)


def _lay_over(part: Array, light: Array, seen: Array) -> None:
    """Sub-pixels of metal, (rows, columns, 3), over that part of a picture, where they are seen."""
    shape = (len(part), FINE, part.shape[1], FINE)
    share = seen.reshape(shape).mean(axis=(1, 3), dtype=np.float32)[:, :, None]
    colour = light.reshape(*shape, 3).mean(axis=(1, 3))
    if part.shape[2] == 3:
        part[:] = colour + part * (1 - share) + 0.5
        return
    under = part[:, :, 3:] / np.float32(255)
    covered = share + under * (1 - share)
    mixed = (colour + part[:, :, :3] * under * (1 - share)) / np.maximum(covered, 1e-6)
    part[:] = np.concatenate([mixed, 255 * covered], axis=2) + 0.5


def _put(
    fitting: Fitting, number: int, box: Area, area: Area, camera: Camera, height: Array, owner: Array
) -> None:  # fmt: skip
    """Puts one piece where it is higher than what is there."""
    left, top = max(box[0], area[0]), max(box[1], area[1])
    right, bottom = min(box[2], area[2]), min(box[3], area[3])
    if right <= left or bottom <= top:
        return
    cells = (
        slice((top - area[1]) * FINE, (bottom - area[1]) * FINE),
        slice((left - area[0]) * FINE, (right - area[0]) * FINE),
    )
    x, y = _places(camera, np.arange(left * FINE, right * FINE), np.arange(top * FINE, bottom * FINE))
    x, y = x[None, :], y[:, None]
    high = _turned_height(fitting, x, y) if isinstance(fitting, Turned) else _loop_height(fitting, x, y)
    above = high > height[cells]
    np.copyto(height[cells], high, where=above)
    owner[cells][above] = number


def _places(camera: Camera, columns: Array, rows: Array) -> tuple[Array, Array]:
    """Where the middles of sub-pixels lie on the table."""
    x = ((columns + 0.5) / FINE - camera.width / 2 - camera.right) / camera.scale
    y = (camera.height / 2 + camera.down - (rows + 0.5) / FINE) / camera.scale
    return x.astype(np.float32), y.astype(np.float32)


def _turned_height(piece: Turned, x: Array, y: Array) -> Array:
    """Height of the surface over the table, −inf beside the piece."""
    along, across, _ = _along(piece, x, y)
    places, radii, _ = _outline(piece)
    radius = np.interp(along, places, radii, left=0, right=0).astype(np.float32)
    square = radius * radius - across * across
    return np.where(square > 0, np.float32(piece.start[2]) + np.sqrt(np.maximum(square, 0)), -np.inf)


def _turned_way(piece: Turned, x: Array, y: Array) -> tuple[Array, Array, Array]:
    """The normal of the surface at those places."""
    along, across, (right, up) = _along(piece, x, y)
    places, radii, slopes = _outline(piece)
    radius = np.maximum(np.interp(along, places, radii), 1e-6).astype(np.float32)
    slope = np.interp(along, places, slopes).astype(np.float32)
    norm = 1 / np.sqrt(1 + slope * slope)
    back, side = -slope * norm, np.clip(across / radius, -1, 1) * norm
    return back * right - side * up, back * up + side * right, np.sqrt(np.maximum(1 - back * back - side * side, 0))


def _along(piece: Turned, x: Array, y: Array) -> tuple[Array, Array, tuple[int, int]]:
    """Places along the axis and across it, and the direction of the axis: (right, up)."""
    right, up = ((1, 0), (0, 1), (-1, 0), (0, -1))[piece.quarters % 4]
    dx, dy = x - np.float32(piece.start[0]), y - np.float32(piece.start[1])
    return (dx * right, dy * right, (right, up)) if right else (dy * up, -dx * up, (right, up))


def _loop_height(ring: Loop, x: Array, y: Array) -> Array:
    dx, dy = x - np.float32(ring.centre[0]), y - np.float32(ring.centre[1])
    off = np.sqrt(dx * dx + dy * dy) - np.float32(ring.radius)
    square = np.float32(ring.wire**2) - off * off
    high = np.float32(ring.centre[2]) + np.float32(ring.lean) * dy + np.sqrt(np.maximum(square, 0))
    return np.where(square > 0, high, -np.inf)


def _loop_way(ring: Loop, x: Array, y: Array) -> tuple[Array, Array, Array]:
    dx, dy = x - np.float32(ring.centre[0]), y - np.float32(ring.centre[1])
    far = np.sqrt(dx * dx + dy * dy) + np.float32(1e-9)
    off = np.clip((far - ring.radius) / ring.wire, -1, 1)
    return off * dx / far, off * dy / far, np.sqrt(1 - off * off)


def _outline(piece: Turned) -> tuple[Array, Array, Array]:
    """Places along the axis, radii there with corners a little rounded, and how steeply they rise."""
    places, radii = (np.array(column, float) for column in zip(*piece.profile, strict=True))
    fine = np.linspace(places[0], places[-1], SAMPLES)
    sharp = np.interp(fine, places, radii)
    return fine, _smoothed(sharp, ROUNDED), _smoothed(np.gradient(sharp, fine), GLIDING)


def _smoothed(values: Array, over: int) -> Array:
    return np.convolve(np.pad(values, over // 2, mode="edge"), np.ones(over) / over, "valid")


def _silver(nx: Array, ny: Array, nz: Array) -> Array:
    """Polished silver that mirrors a bright sky, a dark horizon and a pale table: sRGB, 0 to 255."""
    my, mz = 2 * nz * ny, 2 * nz * nz - 1
    sky = _smooth(0.02, 0.55, my) * 0.55 + _smooth(0.35, 0.75, my) * _smooth(0.98, 0.80, my) * 0.38
    table = _smooth(-0.10, -0.80, my) * 0.36
    above = _smooth(0.80, 0.995, mz) * 0.20
    lamp = np.clip(nx * KEY[0] + ny * KEY[1] + nz * KEY[2], 0, 1)
    wall = np.clip(nx * SOFT[0] + ny * SOFT[1] + nz * SOFT[2], 0, 1)
    lit = 0.08 + 0.22 * lamp + 0.05 * wall + sky * 0.9 + table + above
    spark = 0.6 * lamp**40
    edge = 0.5 + 0.5 * _smooth(0.0, 0.45, nz)
    return to_srgb((lit * edge)[:, None] * linear(SILVER).astype(np.float32) + spark[:, None])


def _box(fitting: Fitting, camera: Camera) -> Area:
    """Left, top, right and bottom of the piece in px, with a rim."""
    if isinstance(fitting, Loop):
        middles, reach = np.array([fitting.centre[:2]]), fitting.radius + fitting.wire
    else:
        _, _, way = _along(fitting, np.zeros(1), np.zeros(1))
        ends = np.array([fitting.profile[0][0], fitting.profile[-1][0]])
        middles = np.array(fitting.start[:2]) + ends[:, None] * np.array(way)
        reach = max(radius for _, radius in fitting.profile)
    x = camera.width / 2 + camera.right + middles[:, 0] * camera.scale
    y = camera.height / 2 + camera.down - middles[:, 1] * camera.scale
    far = reach * camera.scale + 2
    return int(x.min() - far), int(y.min() - far), int(x.max() + far) + 1, int(y.max() + far) + 1


def _points_of(fitting: Fitting) -> Array:
    if isinstance(fitting, Loop):
        turn = np.linspace(0, 2 * np.pi, max(12, int(14 * fitting.radius)), endpoint=False)
        flat = np.full(len(turn), fitting.centre[2])
        x, y = (fitting.centre[0] + fitting.radius * np.cos(turn), fitting.centre[1] + fitting.radius * np.sin(turn))
        return np.column_stack([x, y, flat])[:: max(1, round(0.5 / fitting.wire / 2))]
    places, radii, _ = _outline(fitting)
    _, _, (c, s) = _along(fitting, np.zeros(1), np.zeros(1))
    points = []
    for place in np.arange(places[0], places[-1], 0.8):
        radius = float(np.interp(place, places, radii))
        for across in np.linspace(-radius, radius, max(1, round(2.4 * radius))):
            x, y = fitting.start[0] + place * c - across * s, fitting.start[1] + place * s + across * c
            points.append((x, y, fitting.start[2]))
    return np.array(points).reshape(-1, 3)


def _smooth(low: float, high: float, value: Array) -> Array:
    u = np.clip((value - low) / (high - low), 0, 1)
    return np.asarray(u * u * (3 - 2 * u))
