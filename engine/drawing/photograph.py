"""A laid rope seen by a camera, to pixels: which bead is nearest, then light on what is seen.

Every bead facing the eye is splatted by looking its depth up, many beads at a time; depth and bead number share one
int64, so that the nearest is a plain maximum. Light is worked out afterwards, once a pixel inside a bead, once a
sub-pixel only where beads or ground meet. The picture is taken in bands of rows to keep memory low. Same input, same
bytes.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

import numpy as np

from engine.drawing.beadform import ANGLES, BOUND, NUMBER_BITS, REACH, SIDE, STEPS, Array, depth_pictures
from engine.drawing.camera import Camera
from engine.drawing.finishes import srgb
from engine.drawing.laying import LaidRope
from engine.drawing.shading import Beads, bead_table, shade
from engine.drawing.shadow import Shadow
from engine.pattern.palette import Entry

FINE = 2  # sub-pixels in a pixel, each way
BAND = 128  # rows of a band, px
THREAD = (1 << NUMBER_BITS) - 1  # number of the thread among the beads; 0 is the table
THREAD_RGB = (46, 40, 36)
SHADED = np.array([10 / 255, 8 / 255, 6 / 255, 1], np.float32)  # a shadow's colour, and that it covers
SQUARES_AT_ONCE = 16000  # sub-pixels of squares looked up at a time
PIECE = 8000  # surface points shaded at a time, so that they stay in the processor's cache


def photograph(
    rope: LaidRope,
    palette: Iterable[Entry],
    camera: Camera,
    background: str | None,
    shadowed: bool = True,
    casting: Array | None = None,
) -> Array:
    """uint8 (height, width, 3) on that colour; without one, (height, width, 4) with the shadow on a clear ground.

    `casting` are points (m, 3) of other things on the table whose shadow is seen; without `shadowed` there is none.
    """
    table = bead_table(rope, tuple(palette), camera, FINE)
    view = camera.project(rope.thread)
    floor = float(camera.near(camera.turn(rope.centre)).min()) - rope.radius - 2
    shadow = Shadow(rope, camera, fading=background is None, also=casting) if shadowed else None
    picture = np.empty((camera.height, camera.width, 4 if background is None else 3), np.uint8)
    first = _keys(table[3], np.arange(1, table.shape[1] + 1), floor)
    discs = list(
        zip(
            view.x * FINE,
            view.y * FINE,
            view.scale * FINE * rope.room,
            _keys(camera.near(view.view), THREAD, floor),
            strict=True,
        )
    )
    reach = BOUND / table[2].min() + 2 if table.size else 0
    for top in range(0, camera.height, BAND):
        rows = min(BAND, camera.height - top)
        band = np.empty((rows, camera.width, 4), np.float32)  # colour times what it covers, and what it covers
        band[:] = 0 if shadow is None else 255 * shadow.rows(top, rows)[:, :, None] * SHADED
        ids = np.flatnonzero((table[1] > top * FINE - reach) & (table[1] < (top + rows) * FINE + reach))
        if len(ids):
            key = np.zeros((rows * FINE, camera.width * FINE), np.int64)
            for disc in discs:
                _put_disc(key, top * FINE, *disc)
            _splat(table, first, ids, key, top * FINE)
            _light_band(table, key, top, band.reshape(-1, 4), floor)
        picture[top : top + rows] = _on_ground(band, background)
    return picture


def _keys(near: Array, number: Array | int, floor: float) -> Array:
    return np.asarray((((near.astype(float) - floor) * STEPS).astype(np.int64) << NUMBER_BITS) + number)


def _put_disc(key: Array, top: int, x: float, y: float, r: float, middle: int) -> None:
    """A disc across the rope's axis: the thread inside, so that one cannot see through."""
    y0, y1, x0, x1 = max(0, int(y - r) - top), int(y + r) - top, max(0, int(x - r)), max(0, int(x + r))
    if y1 <= 0 or not (place := key[y0:y1, x0:x1]).size:
        return
    dy, dx = np.arange(y0, y0 + place.shape[0]) + top - y, np.arange(x0, x0 + place.shape[1]) - x
    np.maximum(place, ((dy * dy)[:, None] + dx * dx < r * r) * middle, out=place)


def _splat(table: Array, first: Array, ids: Array, key: Array, top: int) -> None:
    """Puts beads `ids` into the depth keys of a band that starts at row `top` (sub-pixels)."""
    squares = _squares(Beads(*table[:, ids]), top)
    at_once = max(1, SQUARES_AT_ONCE // squares.size**2)
    for i in range(0, len(ids), at_once):
        some = slice(i, i + at_once)
        depth = depth_pictures().take(squares.places(some))
        depth += first[ids[some], None, None]
        for square, left, head in zip(depth, squares.left[some].tolist(), squares.head[some].tolist(), strict=True):
            _put_square(key, square, left, head)


class Squares(NamedTuple):
    """A square of sub-pixels round each bead, and how it lies in the depth picture of the bead's slant.

    A sub-pixel is looked up by how far it lies along the bead's hole and across it: each is the sum of a share of its
    column and a share of its row.
    """

    size: int
    left: Array
    head: Array
    picture: Array
    along: tuple[Array, Array]
    across: tuple[Array, Array]

    def places(self, some: slice) -> Array:
        """Where every sub-pixel of some of the squares is found in all depth pictures laid end to end."""
        (along_x, along_y), (across_x, across_y) = self.along, self.across
        at: Array = (along_y[some, :, None] + along_x[some, None, :]).astype(np.int32) * SIDE
        at += np.abs(across_y[some, :, None] + across_x[some, None, :]).astype(np.int32)
        at += self.picture[some, None, None]
        return at


def _squares(beads: Beads, top: int) -> Squares:
    eye, hole = np.array(beads[4:7]), np.array(beads[7:10])
    widest = BOUND * min(1.04, 1 / eye[2].min())  # a slanting view stretches outlines a little
    half = int(np.ceil(widest / beads.unit.min())) + 1
    grid, far = np.arange(2 * half, dtype=np.float32), np.float32(widest * 1.01 * SIDE / REACH)
    left, head, unit = np.floor(beads.x) - half, np.floor(beads.y) - half, beads.unit * np.float32(SIDE / REACH)
    dx = np.clip((grid + (left + 0.5 - beads.x)[:, None]) * unit[:, None], -far, far)
    dy = np.clip((grid + (head + 0.5 - beads.y)[:, None]) * -unit[:, None], -far, far)
    lean = (eye * hole).sum(0)
    flat = (hole - lean * eye) * np.where(lean < 0, -1, 1)
    flat /= np.sqrt((flat * flat).sum(0)) + 1e-6
    cross = np.cross(eye, flat, axis=0)
    angle = np.arccos(np.minimum(np.abs(lean), 1)) * ((ANGLES - 1) / (np.pi / 2))
    return Squares(
        size=2 * half,
        left=left.astype(int),
        head=head.astype(int) - top,
        picture=np.round(angle).astype(np.int32) * (2 * SIDE * SIDE),
        along=(dx * flat[0][:, None] + SIDE, dy * flat[1][:, None]),
        across=(dx * cross[0][:, None], dy * cross[1][:, None]),
    )


def _put_square(key: Array, square: Array, left: int, head: int) -> None:
    """The nearer of what is there and of the square, as far as that lies in the band."""
    size = len(square)
    place = key[max(0, head) : max(0, head + size), max(0, left) : max(0, left + size)]
    if place.size:
        row, column = max(0, -head), max(0, -left)
        np.maximum(place, square[row : row + place.shape[0], column : column + place.shape[1]], out=place)


def _light_band(table: Array, key: Array, top: int, pixels: Array, floor: float) -> None:
    """Turns the depth keys of one band into colours, over the shadow that is in `pixels` (m, 4) already."""
    number = (key & THREAD).astype(np.int32)
    corner, width = number[::FINE, ::FINE], key.shape[1] // FINE
    whole = np.ones(corner.shape, bool)
    for i in range(1, FINE * FINE):
        whole &= number[i // FINE :: FINE, i % FINE :: FINE] == corner

    def light(cell: Array, sub_y: Array | int, sub_x: Array | int, nudge: float) -> Array:
        row, column = cell // width * FINE + sub_y, cell % width * FINE + sub_x
        nearest, colour = key[row, column], pixels[cell]
        bead = (nearest & THREAD).astype(np.int32)
        colour[bead == THREAD] = (*THREAD_RGB, 255)
        on = np.flatnonzero((bead > 0) & (bead < THREAD))
        for q in np.array_split(on, len(on) // PIECE + 1):
            near = (nearest[q] >> NUMBER_BITS).astype(np.float32) * np.float32(1 / STEPS) + np.float32(floor)
            px, py = (v[q].astype(np.float32) + np.float32(nudge) for v in (column, row + top * FINE))
            colour[q, :3] = shade(Beads(*table[:, bead[q] - 1]), px, py, near)
            colour[q, 3] = 255
        return np.asarray(colour)

    inner, mixed, sub = np.flatnonzero(whole & (corner > 0)), np.flatnonzero(~whole), np.arange(FINE * FINE)
    edges = light(np.repeat(mixed, FINE * FINE), np.tile(sub // FINE, len(mixed)), np.tile(sub % FINE, len(mixed)), 0.5)
    pixels[inner] = light(inner, 0, 0, FINE / 2)
    pixels[mixed] = edges.reshape(-1, FINE * FINE, 4).mean(1)


def _on_ground(band: Array, background: str | None) -> Array:
    """The band on that colour, or with a clear ground; to be cut off to uint8."""
    colour, covered = band[:, :, :3], band[:, :, 3:]
    if background is not None:
        return np.asarray(colour + (1 - covered / 255) * srgb(background).astype(np.float32) + 0.5)
    clear = np.concatenate([colour * (255 / np.maximum(covered, 1)), covered], axis=2)
    return np.asarray(np.minimum(clear, 255) + 0.5)
