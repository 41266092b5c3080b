"""A chart on paper as a camera sees it: turned, in perspective, bent, in uneven light, with grain, as a JPEG."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from io import BytesIO
from itertools import cycle
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageFilter

from engine.drawing.charts import extent
from engine.pattern.colour import decoded
from engine.pattern.old_charts.paper import CORNERS, Place, perspective, projected
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern
from webapp.pictures.chart_image import EDGE, chart_png

COLOURS = ("#2f7f76", "#f3ecdd", "#d9932b", "#a83a2c", "#3d4f7d", "#8a9a5b", "#6b4a6e", "#c9b8a0")
CODES = "ABCDEFGHIJKLMNOPQRSTUVWX"
MARGIN = 120
PULLED: tuple[Place, ...] = ((0.5, 0.0), (0.5, 0.5), (0.5, 1.0))  # of the sheet
PAPER, TABLE = (252, 251, 247), (90, 70, 50)


class Photographed(NamedTuple):
    """The JPEG, where its marked corners lie in shares of it, and where places of the sheet, shares of the chart, do."""

    jpeg: bytes
    corners: tuple[Place, ...]
    pulled: tuple[tuple[Place, Place], ...]

    @property
    def pixels(self) -> NDArray[np.uint8]:
        return np.asarray(Image.open(BytesIO(self.jpeg)))


def random_rope(around: int, rows: int, colours: int, seed: int) -> Pattern:
    """A pattern of whole rows in short runs."""
    chance, total = np.random.default_rng(seed), sum(around + 1 - row % 2 for row in range(rows))
    beads = np.repeat(chance.integers(0, colours, total), chance.integers(1, 6, total))[:total]
    palette = Palette(
        tuple(
            Entry(code, f"Bead {code}", colour) for code, colour in zip(CODES[:colours], cycle(COLOURS), strict=False)
        )
    )
    return Pattern("Trial", around, palette, bytes(beads.tolist()))


def in_symbols(pattern: Pattern) -> Pattern:
    """The same to be printed in symbols without fills."""
    return replace(pattern, palette=Palette(tuple(replace(entry, colour="#ffffff") for entry in pattern.palette)))


@lru_cache(4)
def photographed(
    pattern: Pattern,
    seed: int = 1,
    upright: bool = True,
    symbols: bool = True,
    turn: float = 7.0,
    fall: float = 0.45,
    grain: float = 6.0,
    quality: int = 70,
    long_px: int = 1800,
    off_px: float = 2.0,
    bent_px: float = 0.0,
) -> Photographed:
    """The chart as we print it, photographed; light falls by a share from left to right, marks are pixels off.

    Bent paper stands up in the middle, by so many pixels of the print.
    """
    chance = np.random.default_rng(seed)
    sheet, box = _sheet(pattern, upright, symbols)
    sheet = _bent(sheet, bent_px)
    matrix, size = _view(sheet.size, turn, long_px)
    back = np.linalg.inv(matrix)
    taken = sheet.transform(
        size, Image.Transform.PERSPECTIVE, (back / back[2, 2]).ravel()[:8], Image.Resampling.BICUBIC, fillcolor=TABLE
    ).filter(ImageFilter.GaussianBlur(1))
    lit = _lit(np.asarray(taken), fall) + chance.normal(0, grain, (size[1], size[0], 3))
    out = BytesIO()
    Image.fromarray(lit.clip(0, 255).astype(np.uint8)).save(out, "JPEG", quality=quality)
    (left, top), _, (right, foot), _ = box
    flat = np.array([*CORNERS, *PULLED]) * (right - left, foot - top) + (left, top)
    flat[:, 1] -= bent_px * np.sin(np.pi * flat[:, 0] / sheet.width)
    seen = (projected(matrix, flat) + chance.normal(0, off_px, flat.shape)) / size
    places = [(x, y) for x, y in seen.tolist()]
    return Photographed(out.getvalue(), tuple(places[:4]), tuple(zip(PULLED, places[4:], strict=True)))


def scanned(pattern: Pattern, turn: float) -> tuple[Image.Image, tuple[Place, ...]]:
    """The chart as a scanner sees it, askew by so many degrees, and where its corners lie in shares of the picture."""
    sheet, box = _sheet(pattern, upright=True, symbols=True)
    middle, angle = np.array(sheet.size) / 2, np.radians(turn)
    askew = np.array([[np.cos(angle), np.sin(angle)], [-np.sin(angle), np.cos(angle)]])
    corners = (np.array(box) - middle) @ askew.T + middle
    seen = sheet.rotate(turn, Image.Resampling.BICUBIC, fillcolor=PAPER)
    return seen, tuple((x, y) for x, y in (corners / sheet.size).tolist())


def _sheet(pattern: Pattern, upright: bool, symbols: bool) -> tuple[Image.Image, list[Place]]:
    chart = Image.open(BytesIO(chart_png(pattern, upright=upright, symbols=symbols)))
    sheet = Image.new("RGB", (chart.width + 2 * MARGIN, chart.height + 2 * MARGIN), PAPER)
    sheet.paste(chart, (MARGIN, MARGIN), chart)
    wide, high = extent(pattern, upright=upright)
    bead = chart.width / (wide + 2 * EDGE)
    left = MARGIN + EDGE * bead
    right, foot = left + wide * bead, left + high * bead
    return sheet, [(left, left), (right, left), (right, foot), (left, foot)]


def _bent(sheet: Image.Image, bent_px: float) -> Image.Image:
    pixels = np.asarray(sheet)
    x = np.arange(sheet.width)
    down = np.rint(bent_px * np.sin(np.pi * x / sheet.width)).astype(int)
    rows = np.clip(np.arange(sheet.height)[:, None] + down[None], 0, sheet.height - 1)
    return Image.fromarray(pixels[rows, x[None]])


def _view(size: tuple[int, int], turn: float, long_px: int) -> tuple[NDArray[np.float64], tuple[int, int]]:
    wide, high = size
    corners = np.array([(-wide, -high), (wide, -high), (wide, high), (-wide, high)]) / 2
    corners[1] *= 0.90
    corners[2] *= 0.96
    cos, sin = np.cos(np.radians(turn)), np.sin(np.radians(turn))
    seen = corners @ np.array([[cos, sin], [-sin, cos]])
    seen = (seen - seen.min(axis=0)) * long_px / np.ptp(seen, axis=0).max() + 20
    matrix = perspective([(0, 0), (wide, 0), (wide, high), (0, high)], [(x, y) for x, y in seen.tolist()])
    return matrix, (int(seen[:, 0].max()) + 20, int(seen[:, 1].max()) + 20)


def _lit(pixels: NDArray[np.uint8], fall: float) -> NDArray[np.float64]:
    """The pixels under a warm lamp at the upper left, as sRGB, 0 to 255."""
    y, x = np.mgrid[0 : pixels.shape[0], 0 : pixels.shape[1]]
    x, y = x / pixels.shape[1], y / pixels.shape[0]
    light = 0.95 * (1 - fall * x) * (1 - fall / 2 * y)
    linear = decoded(pixels / 255) * np.stack([1.02 * light, light, light * (0.92 + 0.06 * x)], axis=-1)
    return np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055) * 255
