"""Charts that we print ourselves, photographed in simulation, are read bead by bead.

At least 99.5 % of beads are right before anything is put right, and every wrong one is among those in doubt.
"""

import numpy as np
import pytest
from PIL import Image, ImageDraw

from engine.pattern.colour import difference
from engine.pattern.old_charts.drawn import BRICKS, HEXAGONS, SHIFTED, SQUARES, STRAIGHT, TURNS, Drawn
from engine.pattern.old_charts.fitting import fitted
from engine.pattern.old_charts.paper import Paper
from engine.pattern.old_charts.reading import Reading, read_chart
from engine.pattern.pattern import Pattern
from tests.photographed import COLOURS, Photographed, photographed, random_rope

LEAST_RIGHT = 0.995
CRAYONS = (COLOURS[0], COLOURS[1], COLOURS[3])
BOX = ((-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5))
HEXAGON = ((0, -2 / 3), (0.5, -1 / 3), (0.5, 1 / 3), (0, 2 / 3), (-0.5, 1 / 3), (-0.5, -1 / 3))
TURNED = ({}, {"lying": True}, {"inset": True, "backwards": True})
OUTLINES = {
    (False, False): BOX,
    (False, True): BOX,
    (True, False): HEXAGON,
    (True, True): tuple((y, x) for x, y in HEXAGON),
}


def read(taken: Photographed, drawn: Drawn, many: int = 0) -> Reading:
    pixels = taken.pixels
    return read_chart(pixels, fitted(pixels, Paper(taken.corners), drawn), drawn, many)


def wrong_beads(pattern: Pattern, reading: Reading) -> set[int]:
    """The beads whose colour differs, the reading's colours taken for those of the pattern that most of them are."""
    true, seen = np.frombuffer(pattern.chart, np.uint8), np.frombuffer(reading.beads, np.uint8)
    meant = np.array([np.bincount(true[seen == colour]).argmax() for colour in range(len(reading.colours))])
    return set(np.flatnonzero(meant[seen] != true).tolist())


@pytest.mark.parametrize(
    ("around", "rows", "colours", "taken"),
    [
        (12, 30, 4, {"symbols": False, "turn": -20, "long_px": 1000}),
        (20, 40, 8, {"turn": 2, "fall": 0.5, "long_px": 1200}),
        (24, 24, 5, {"upright": False, "turn": -12, "long_px": 1000}),
        (8, 24, 3, {"fall": 0.6, "grain": 12, "quality": 50, "long_px": 800}),
        (15, 30, 2, {"off_px": 3, "long_px": 1000}),
    ],
)
def test_a_photographed_chart_is_read_with_its_colours_told_and_untold(around, rows, colours, taken):
    pattern = random_rope(around, rows, colours, seed=around + rows)
    drawn = Drawn(around, rows, lying=not taken.get("upright", True))
    seen = photographed(pattern, **taken)
    paper = fitted(seen.pixels, Paper(seen.corners), drawn)
    for many in (0, colours):
        reading = read_chart(seen.pixels, paper, drawn, many)
        wrong = wrong_beads(pattern, reading)
        assert len(reading.colours) == colours
        assert len(wrong) <= (1 - LEAST_RIGHT) * len(pattern.chart)
        assert wrong <= set(reading.doubts)
        assert len(reading.doubts) < 0.1 * len(pattern.chart)


def test_bent_paper_is_followed_where_its_middle_was_pulled():
    pattern, drawn = random_rope(14, 30, 4, seed=3), Drawn(14, 30)
    taken = photographed(pattern, bent_px=40, long_px=1200)
    wrong = wrong_beads(pattern, read_chart(taken.pixels, Paper(taken.corners), drawn, 4))
    assert len(wrong) > 0.1 * len(pattern.chart)
    paper = fitted(taken.pixels, Paper(taken.corners, taken.pulled), drawn)
    reading = read_chart(taken.pixels, paper, drawn, 4)
    wrong = wrong_beads(pattern, reading)
    assert len(wrong) <= (1 - LEAST_RIGHT) * len(pattern.chart)
    assert wrong <= set(reading.doubts)


@pytest.mark.parametrize(
    ("shape", "rowing", "turned"),
    [
        (shape, rowing, TURNED[(place + other) % 3])
        for place, shape in enumerate((SQUARES, BRICKS, HEXAGONS))
        for other, rowing in enumerate((TURNS, SHIFTED, STRAIGHT))
    ],
)
def test_every_way_of_drawing_a_chart_is_read(shape, rowing, turned):
    drawn = Drawn(7, 9, rowing, shape, **turned)
    beads = np.random.default_rng(6).integers(0, 3, len(drawn.middles()))
    sheet = drawn_by_hand(drawn, beads, 600, 700)
    reading = read_chart(np.asarray(sheet), Paper(((0.1, 0.1), (0.9, 0.1), (0.9, 0.9), (0.1, 0.9))), drawn, 3)
    meant = [min(CRAYONS, key=lambda one: difference(one, colour)) for colour in reading.colours]
    assert [meant[bead] for bead in reading.beads] == [CRAYONS[bead] for bead in beads]


def drawn_by_hand(drawn: Drawn, beads: np.ndarray, wide: int, high: int) -> Image.Image:
    """A chart in crayon on white paper, a tenth of it left free on every side."""
    sheet = Image.new("RGB", (wide, high), "#ffffff")
    brush, size = ImageDraw.Draw(sheet), np.array(drawn.bead())
    for middle, bead in zip(drawn.middles(), beads, strict=True):
        corners = (np.array(OUTLINES[drawn.shape == HEXAGONS, drawn.lying]) * size + middle) * 0.8 + 0.1
        brush.polygon([tuple(corner) for corner in (corners * (wide, high)).tolist()], CRAYONS[bead], "#444444")
    return sheet


def test_uneven_light_is_taken_off_so_that_colours_are_those_of_the_print():
    pattern = random_rope(12, 24, 4, seed=5)
    reading = read(photographed(pattern, long_px=800), Drawn(12, 24), 4)
    for colour in COLOURS[:4]:
        assert min(difference(colour, seen) for seen in reading.colours) < 12


def test_a_bead_that_was_smeared_is_in_doubt():
    pattern = random_rope(12, 20, 3, seed=2)
    taken = photographed(pattern, off_px=0, fall=0)
    drawn, pixels, paper = Drawn(12, 20), taken.pixels.copy(), Paper(taken.corners)
    wide, high = pixels.shape[1::-1]
    x, y = (paper.places(drawn.middles())[100] * (wide, high)).astype(int)
    reach = wide // 30
    pixels[y - reach : y + reach, x - reach : x], pixels[y - reach : y + reach, x : x + reach] = (
        (47, 127, 118),
        (243, 236, 221),
    )
    assert 100 in read_chart(pixels, paper, drawn, 3).doubts


def test_a_chart_of_one_colour_has_no_doubts():
    reading = read(photographed(random_rope(8, 20, 1, seed=1)), Drawn(8, 20), 1)
    assert (set(reading.beads), len(reading.colours), reading.doubts) == ({0}, 1, ())


def test_the_same_picture_is_read_the_same():
    taken = photographed(random_rope(10, 20, 3, seed=8), long_px=700)
    assert read(taken, Drawn(10, 20)) == read(taken, Drawn(10, 20))
