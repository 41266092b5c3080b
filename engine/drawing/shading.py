"""Light on the beads of a rope: lamp, window and sky, valleys between beads, and what the finishes do with it."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from engine.drawing.beadform import CORE_LENGTH, CORE_RADIUS, HALF_LENGTH, RADIUS, Array, walk
from engine.drawing.camera import Camera
from engine.drawing.finishes import CLEAR_GLASS, looks, to_srgb
from engine.drawing.laying import LaidRope
from engine.pattern.palette import Entry

KEY, SOFT = (
    np.array(v, np.float32) / np.float32(np.linalg.norm(v)) for v in ((-0.38, 0.72, 0.80), (0.55, -0.55, 0.55))
)  # to the lamp and to a bright wall
LOWEST = -0.42  # beads turned farther from the eye than this cannot be seen


class Beads(NamedTuple):
    """One value a bead that may be seen, in float32. Places in sub-pixels, directions in view space, light linear."""

    x: Array
    y: Array
    unit: Array  # bead sizes in a sub-pixel
    near: Array
    eye_x: Array
    eye_y: Array
    eye_z: Array
    hole_x: Array
    hole_y: Array
    hole_z: Array
    out_x: Array
    out_y: Array
    out_z: Array
    hole_key: Array  # how far the hole points to the lamp
    out_key: Array
    axis: Array  # from the rope's axis, in bead sizes
    size: Array
    red: Array
    green: Array
    blue: Array
    body: Array
    shine: Array
    glow: Array
    metal: Array
    play: Array
    clear: Array
    lining: Array
    behind_red: Array
    behind_green: Array
    behind_blue: Array


def bead_table(rope: LaidRope, entries: tuple[Entry, ...], camera: Camera, fine: int) -> Array:
    """The rows of `Beads`, a column for every bead that may be seen; `fine` is sub-pixels in a pixel."""
    view, x, y, scale = camera.project(rope.centre)
    eye, out, hole = camera.lines_of_sight(view), camera.turn(rope.out), camera.turn(rope.hole)
    inside = (x > -scale) & (x < camera.width + scale) & (y > -scale) & (y < camera.height + scale)
    look = looks(entries)[rope.colours]
    rows = [
        x * fine,
        y * fine,
        1 / (scale * fine * rope.size),
        camera.near(view),
        *eye.T,
        *hole.T,
        *out.T,
        hole @ KEY,
        out @ KEY,
        rope.radius / rope.size,
        rope.size,
        *look.T,
        *_behind(look[:, :3]).T,
    ]
    return np.array(rows)[:, inside & ((out * eye).sum(1) > LOWEST)].astype(np.float32)


def _behind(colours: Array) -> Array:
    """What stands behind a clear bead: something of the beads beside it."""
    return np.asarray((np.roll(colours, 1, 0) + np.roll(colours, -1, 0)) / 2)


def shade(beads: Beads, px: Array, py: Array, near: Array) -> Array:
    """sRGB (m, 3) in 0 to 255 of the surface points at `px`, `py` (sub-pixels) with that closeness to the eye."""
    point = _surface(beads, px, py, near)
    mirror = _mirror(beads, point)
    valley = _valleys(beads, point, mirror.facing)
    lit, spark = _lamp(beads, point, mirror, valley), _spark(beads, point, mirror, valley)
    through = _through(beads, point, valley)
    result = np.empty((len(px), 3), np.float32)
    for i, colour in enumerate((beads.red, beads.green, beads.blue)):
        light = colour * (lit * beads.body * 1.02 + through * 0.8)
        light *= 1.12 / (1 + 0.30 * light)  # soft shoulder for pale beads
        light += (1 - beads.metal * (1 - np.minimum(colour * 1.5 + 0.38, 1)) - light) * spark
        result[:, i] = light
    _play(beads, mirror, valley, result)
    _look_into(beads, point, mirror, (lit, spark, through, valley.open), result)
    return to_srgb(result)


class _Point(NamedTuple):
    """On the surface: place along the hole and away from the rope's axis, away from the hole; the normal."""

    along: Array
    rise: Array
    rho: Array
    side_on: Array  # from the hole's line as the eye sees it
    x: Array
    y: Array
    z: Array


class _Mirror(NamedTuple):
    """How far the surface faces the eye, and the direction that it mirrors to it."""

    facing: Array
    edge: Array
    x: Array
    y: Array
    z: Array


class _Valley(NamedTuple):
    """How open the place is to the sky, to the lamp, and on which side of the rope it lies."""

    open: Array
    sun: Array
    side: Array


def _surface(b: Beads, px: Array, py: Array, near: Array) -> _Point:
    dx, dy = (px - b.x) * b.unit, (b.y - py) * b.unit
    lean, beside = b.eye_x * b.hole_x + b.eye_y * b.hole_y + b.eye_z * b.hole_z, dx * b.eye_x + dy * b.eye_y
    guess = (near - b.near) / b.size - beside
    way, _ = walk(dx * b.hole_x + dy * b.hole_y, lean, beside, dx * dx + dy * dy, guess, 2, 0.10)
    x, y, z = dx + way * b.eye_x, dy + way * b.eye_y, way * b.eye_z  # from the bead's middle
    along, rise = x * b.hole_x + y * b.hole_y + z * b.hole_z, x * b.out_x + y * b.out_y + z * b.out_z + b.axis
    x, y, z = x - along * b.hole_x, y - along * b.hole_y, z - along * b.hole_z
    rho = np.sqrt(x * x + y * y + z * z) + 1e-6
    over_end, over_side = np.maximum(np.abs(along) - CORE_LENGTH, 0), np.maximum(rho - CORE_RADIUS, 0)
    norm = 1 / np.sqrt(over_end * over_end + over_side * over_side + 1e-12)
    end, side = np.copysign(over_end, along) * norm, over_side * norm / rho
    toward = x * b.eye_x + y * b.eye_y + z * b.eye_z
    side_on = np.sqrt(np.maximum(rho * rho - toward * toward / np.maximum(1 - lean * lean, 0.05), 0))
    return _Point(
        along=along,
        rise=rise,
        rho=rho,
        side_on=side_on,
        x=end * b.hole_x + side * x,
        y=end * b.hole_y + side * y,
        z=end * b.hole_z + side * z,
    )


def _mirror(b: Beads, p: _Point) -> _Mirror:
    facing = p.x * b.eye_x + p.y * b.eye_y + p.z * b.eye_z
    edge = np.clip(1 - facing, 0, 1)
    edge *= edge
    twice = 2 * facing
    return _Mirror(
        facing=facing, edge=edge * edge, x=twice * p.x - b.eye_x, y=twice * p.y - b.eye_y, z=twice * p.z - b.eye_z
    )


def _valleys(b: Beads, p: _Point, facing: Array) -> _Valley:
    """Valleys are dark, rims are not; a step towards the lamp tells whether a neighbour stands there."""
    outer, far = b.axis + RADIUS, np.sqrt(p.rise * p.rise + p.along * p.along)
    rim = np.clip(1 - facing, 0, 1) ** 4
    open_ = np.maximum(_smooth(outer - 1.75 * RADIUS, outer - 0.18 * RADIUS, far), 0.9 * rim)
    toward = np.sqrt((p.rise + 0.42 * b.out_key) ** 2 + (p.along + 0.42 * b.hole_key) ** 2)
    sun = 0.30 + 0.70 * _smooth(outer - 0.95 * RADIUS, outer + 0.25 * RADIUS, toward)
    side = 0.74 + 0.26 * np.clip(0.45 + 0.75 * (p.rise * b.out_key + p.along * b.hole_key) / far, 0, 1)
    return _Valley(open_, sun, side)


def _lamp(b: Beads, p: _Point, mirror: _Mirror, valley: _Valley) -> Array:
    key = np.clip((p.x * KEY[0] + p.y * KEY[1] + p.z * KEY[2] + 0.22) / 1.22, 0, 1)
    soft = np.maximum(p.x * SOFT[0] + p.y * SOFT[1] + p.z * SOFT[2], 0)
    lit = (0.25 + 0.08 * p.y + 0.82 * key * valley.sun + 0.12 * soft) * (0.20 + 0.80 * valley.open) * valley.side
    lit *= 1 - 0.6 * _smooth(RADIUS * 0.34, RADIUS * 0.16, p.rho) * (np.abs(p.along) > HALF_LENGTH * 0.5)  # thread hole
    sky = np.clip(0.5 + 0.5 * mirror.y, 0, 1) ** 2 + 0.30 * _smooth(-0.30, 0.30, mirror.y)
    return np.asarray(lit * (1 + b.metal * (1.7 * sky - 0.58)))


def _spark(b: Beads, p: _Point, mirror: _Mirror, valley: _Valley) -> Array:
    window = (
        _smooth(-0.25, 0.15, mirror.z)
        * _smooth(0.16, 0.30, mirror.y)
        * _smooth(0.98, 0.84, mirror.y)
        * _smooth(0.62, 0.46, np.abs(mirror.x + 0.30))
    )
    x, y, z = KEY[0] + b.eye_x, KEY[1] + b.eye_y, KEY[2] + b.eye_z
    half = np.maximum((p.x * x + p.y * y + p.z * z) / np.sqrt(x * x + y * y + z * z), 0)
    shine = 0.75 * half**90 + 0.42 * window + 0.10 * half**14 + 0.10 * mirror.edge
    return np.asarray(np.minimum(shine * valley.open * (0.45 + 0.55 * valley.side) * b.shine, 1))


def _through(b: Beads, p: _Point, valley: _Valley) -> Array:
    """Lamp light that a bead gathers on the side turned from the lamp."""
    turned = np.clip(0.25 * p.z - 0.9 * (p.x * KEY[0] + p.y * KEY[1]), 0, 1) ** 1.6
    return np.asarray(turned * valley.open * valley.side * b.glow)


def _play(b: Beads, mirror: _Mirror, valley: _Valley, result: Array) -> None:
    """Pearl: rose where it faces the eye, green and blue towards the rim, and a wide soft sheen."""
    on = np.flatnonzero(b.play > 0)
    if not len(on):
        return
    facing, up, amount = mirror.facing[on], mirror.y[on], b.play[on] * valley.open[on]
    wave = facing * 1.25 + up * 0.30
    sheen = _smooth(0.35, 1.0, up) * 0.14
    for i, (phase, tint) in enumerate(((0.02, 1.00), (0.42, 0.97), (0.66, 1.02))):
        light = result[on, i]
        light *= 1 + amount * 0.15 * np.cos(2 * np.pi * (wave + phase))
        result[on, i] = light + (tint - light) * sheen * amount


def _look_into(b: Beads, p: _Point, mirror: _Mirror, light: tuple[Array, Array, Array, Array], result: Array) -> None:
    """Clear beads: neighbours and thread seen through coloured glass, or a coloured hole through clear glass."""
    on = np.flatnonzero(b.clear > 0)
    if not len(on):
        return
    lit, spark, through, open_ = (part[on] for part in light)
    facing, lining, across = mirror.facing[on], b.lining[on], p.side_on[on] / RADIUS
    deep = np.clip(facing, 0, 1)
    band = np.where(lining > 0, _smooth(0.80, 0.56, across), _smooth(0.50, 0.26, across))
    rim = 0.35 * (1 - deep) ** 2 * open_
    own, behind = (b.red, b.green, b.blue), (b.behind_red, b.behind_green, b.behind_blue)
    for i, glass in enumerate(CLEAR_GLASS.tolist()):
        c, other = own[i][on], behind[i][on]
        tint = c * (1 - 0.55 * deep * (1 - c))  # glass is deeper in colour where the way through is longer
        seen = tint * (0.22 * lit + 0.32 * open_ * (0.15 + 0.85 * other)) * (1 - 0.38 * band)
        seen += (1.05 * c + 0.02) * through
        hole = c * (0.95 * lit + 0.08) * (1 - 0.35 * across * across)
        shell = (0.62 * c + 0.38 * glass) * (0.62 * lit + 0.55 * through + 0.10 * open_)
        inside = np.where(lining > 0, shell + (hole - shell) * band, seen + rim * tint)
        inside *= 1.12 / (1 + 0.30 * inside)
        result[on, i] = inside + (1 - inside) * spark


def _smooth(low: Array | float, high: Array | float, value: Array) -> Array:
    u = np.clip((value - low) * (1 / (high - low)), 0, 1)
    return np.asarray(u * u * (3 - 2 * u))
