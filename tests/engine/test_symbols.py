"""The symbols stay apart in print, and every palette gets its own."""

from itertools import combinations

import numpy as np
import pytest

from engine.drawing.symbols import SYMBOLS, assigned, by_name
from engine.pattern.palette import Entry, Palette

PIXELS, FINER = 24, 4  # 2 mm at 300 dots an inch; samples in a pixel, each way
LEAST_SHARE = 0.12  # of all pixels that differ by more than a third of black
LEAST_BLURRED = 0.10  # mean difference after a blur of a pixel and a half, share of black
SHIFTS = [(down, right) for down in (-1, 0, 1) for right in (-1, 0, 1)]


def test_there_are_64_symbols_with_names_and_forms_of_their_own():
    assert len(SYMBOLS) == 64
    assert len({symbol.name for symbol in SYMBOLS}) == 64
    assert len({symbol.outline for symbol in SYMBOLS}) == 64


def test_every_form_stays_inside_its_square():
    for symbol in SYMBOLS:
        numbers = [float(part) for step in symbol.outline for part in step[1:]]
        assert max(map(abs, numbers)) <= 1.0001, symbol.name


def test_any_two_symbols_differ_when_printed_at_two_millimetres_even_a_pixel_aside():
    printed = {symbol.name: np.pad(_print(symbol.outline), 1) for symbol in SYMBOLS}
    nearest = min(
        (min((np.abs(one - np.roll(other, by, (0, 1))) > 1 / 3).sum() for by in SHIFTS) / PIXELS**2, a, b)
        for (a, one), (b, other) in combinations(printed.items(), 2)
    )
    assert nearest[0] >= LEAST_SHARE, nearest


def test_any_two_symbols_differ_when_their_print_is_blurred():
    printed = {symbol.name: _blur(np.pad(_print(symbol.outline), 6)) for symbol in SYMBOLS}
    nearest = min(
        (min(np.abs(one - np.roll(other, by, (0, 1))).sum() for by in SHIFTS) / PIXELS**2, a, b)
        for (a, one), (b, other) in combinations(printed.items(), 2)
    )
    assert nearest[0] >= LEAST_BLURRED, nearest


def test_the_eight_given_first_differ_in_a_fifth_of_their_pixels():
    printed = [np.pad(_print(symbol.outline), 1) for symbol in SYMBOLS[:8]]
    for one, other in combinations(printed, 2):
        assert min((np.abs(one - np.roll(other, shift, (0, 1))) > 1 / 3).sum() for shift in SHIFTS) >= PIXELS**2 / 5


def test_a_palette_of_64_beads_gets_64_symbols():
    palette = Palette(tuple(Entry(a + b, f"Bead {a}{b}", "#112233") for a in "ABCDEFGH" for b in "ABCDEFGH"))
    assert assigned(palette) == SYMBOLS


def test_a_bead_keeps_the_symbol_it_names_and_no_other_bead_gets_it():
    dotted = Entry("B", "Two", "#222222", symbol="dot")
    palette = Palette((Entry("A", "One", "#111111"), dotted, Entry("C", "Three", "#333333")))
    assert [symbol.name for symbol in assigned(palette)] == ["two level bars", "dot", "ring"]


@pytest.mark.parametrize("second", ["dot", "no such form", ""])
def test_a_name_taken_or_unknown_counts_as_none(second):
    palette = Palette((Entry("A", "One", "#111111", symbol="dot"), Entry("B", "Two", "#222222", symbol=second)))
    assert [symbol.name for symbol in assigned(palette)] == ["dot", "two level bars"]


def test_symbols_are_found_by_name():
    assert by_name("ring") is SYMBOLS[2]
    with pytest.raises(KeyError):
        by_name("spoon")


def _print(outline):
    """Ink in each of the pixels, 0 to 1, by the even-odd rule."""
    side = PIXELS * FINER
    x, y = np.meshgrid(*2 * [(np.arange(side) + 0.5) / side * 2 - 1])
    inside = np.zeros((side, side), bool)
    for points in _flattened(outline):
        for (x1, y1), (x2, y2) in zip(points, [*points[1:], points[0]], strict=True):
            if y1 != y2:
                inside ^= (y >= min(y1, y2)) & (y < max(y1, y2)) & (x < x1 + (y - y1) * (x2 - x1) / (y2 - y1))
    return inside.reshape(PIXELS, FINER, PIXELS, FINER).mean((1, 3))


def _flattened(outline):
    """The closed parts of an outline as lists of points, curves in eight pieces."""
    parts = []
    for letter, *numbers in outline:
        if letter == "M":
            parts.append([tuple(numbers)])
        elif letter == "L":
            parts[-1].append(tuple(numbers))
        elif letter == "C":
            corners = [parts[-1][-1], *zip(numbers[::2], numbers[1::2], strict=True)]
            parts[-1] += [tuple(float(v) for v in _on_curve(np.array(corners), t)) for t in np.linspace(1 / 8, 1, 8)]
    return parts


def _on_curve(corners, t):
    return np.array([(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3]) @ corners


def _blur(picture, sigma=1.5):
    weights = np.exp(-(np.arange(-4, 5) ** 2) / (2 * sigma**2))
    for _ in range(2):
        picture = np.apply_along_axis(np.convolve, 0, picture, weights / weights.sum(), "same").T
    return picture
