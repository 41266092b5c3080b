"""Symbols and codes given out anew, so that beads which touch in the chart are the hardest to mistake for one another.

Every two colours weigh by how often they touch on the lattice, and the more the nearer their colours are. Symbols and
codes are exchanged, beginning with those that stand, while that lowers the sum of weight × likeness.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from string import ascii_uppercase

import numpy as np
from numpy.typing import NDArray

from engine.drawing.shapes import Outline
from engine.drawing.symbols import SYMBOLS, assigned
from engine.pattern.colour import TOO_NEAR, Array, colour_pairs
from engine.pattern.palette import Palette
from engine.pattern.pattern import Pattern

Places = NDArray[np.int64]

PIXELS, FINER = 24, 4  # a symbol of 2 mm at 300 dots an inch; samples in a pixel, each way
MORE_SYMBOLS = 8  # beyond those that a palette needs, the calmest of which it may choose
LATE = 1e-3  # what a symbol or a letter costs for each place that it stands later in its order
TOO_LITTLE = 1e-12  # of a difference, to be one
LIKE_LETTERS = ("BDEFPR", "CGOQ", "HKMNWX", "IJLTY", "SZ", "UV")  # mistaken for one another (our judgement)


def told_apart(pattern: Pattern) -> Palette:
    """The palette with codes and symbols of which neighbours differ most."""
    weights = touching(pattern)
    symbols = [SYMBOLS.index(symbol) for symbol in assigned(pattern.palette)]
    symbols = exchanged(symbols, _unlike_symbols(max(symbols) + 1, len(symbols)), weights)
    codes = _codes(pattern.palette, weights)
    return Palette(
        tuple(
            replace(entry, code=code, symbol=SYMBOLS[symbol].name)
            for entry, code, symbol in zip(pattern.palette, codes, symbols, strict=True)
        )
    )


def touching(pattern: Pattern) -> Array:
    """Weight (m, m) of every two entries of a palette: how often their beads touch, more for colours that are near."""
    beads = np.frombuffer(b"".join(part.beads * 2 for part in pattern.parts), np.uint8).astype(int)
    entries = len(pattern.palette)
    contacts = np.zeros((entries, entries))
    for step in (1, pattern.around, pattern.around + 1):
        np.add.at(contacts, (beads[:-step], beads[step:]), 1)
    near = np.ones((entries, entries))
    for first, second, apart in colour_pairs(pattern.palette):
        near[first, second] = near[second, first] = 1 + TOO_NEAR / (1 + min(apart))
    weights = (contacts + contacts.T) * near
    np.fill_diagonal(weights, 0)
    shares: Array = weights / max(float(weights.sum()), 1.0)
    return shares


def exchanged(given: Sequence[int], likeness: Array, weights: Array) -> list[int]:
    """What is given out, one to each entry, after every exchange that lowers the sum of weight × likeness.

    `likeness` (k, k) is that of all that can be given, `weights` (m, m) that of the entries; `given` are m places of k.
    An entry may also take what nobody has.
    """
    taken = len(given)
    free = [place for place in range(len(likeness)) if place not in given]
    order = np.array([*given, *free])
    better = True
    while better:
        better = False
        for one in range(taken):
            for other in range(one + 1, len(order)):
                if _change(order, one, other, likeness, weights) < -TOO_LITTLE:
                    order[[one, other]] = order[[other, one]]
                    better = True
    found = order[:taken]
    in_order = np.sort(found)  # as good: then codes and symbols stand in the order of the palette
    best = in_order if _cost(in_order, likeness, weights) <= _cost(found, likeness, weights) + TOO_LITTLE else found
    return [int(place) for place in best]


def _change(order: Places, one: int, other: int, likeness: Array, weights: Array) -> float:
    """By how much the cost rises when an entry exchanges what it has with another entry, or with what nobody has."""
    taken = len(weights)
    was, now = order[one], order[other]
    unlike = likeness[now, order[:taken]] - likeness[was, order[:taken]]
    if other < taken:
        weighed = weights[one] - weights[other]
        return float(2 * (weighed @ unlike - weighed[one] * unlike[one] - weighed[other] * unlike[other]))
    return float(2 * (weights[one] @ unlike - weights[one, one] * unlike[one])) + LATE * int(now - was) / len(likeness)


def _cost(places: Places, likeness: Array, weights: Array) -> float:
    return float((likeness[np.ix_(places, places)] * weights).sum() + LATE * places.sum() / len(likeness))


def _unlike_symbols(last: int, entries: int) -> Array:
    most = min(len(SYMBOLS), max(last, entries + MORE_SYMBOLS))
    return symbol_likeness()[:most, :most]


@cache
def symbol_likeness() -> Array:
    """How like one another the symbols are (64, 64): 1 where two print the same, 0 where no pixel is shared."""
    printed = np.stack([ink_of(symbol.outline).ravel() for symbol in SYMBOLS])
    likeness: Array = 1 - np.abs(printed[:, None] - printed[None]).mean(axis=2)
    return likeness


def ink_of(outline: Outline) -> Array:
    """Ink in each of the pixels (24, 24) of a symbol printed at 2 mm, 0 to 1, by the even-odd rule."""
    side = PIXELS * FINER
    x, y = np.meshgrid(*2 * [(np.arange(side) + 0.5) / side * 2 - 1])
    inside = np.zeros((side, side), bool)
    for points in _corners(outline):
        for (x1, y1), (x2, y2) in zip(points, [*points[1:], points[0]], strict=True):
            if y1 != y2:
                inside ^= (y >= min(y1, y2)) & (y < max(y1, y2)) & (x < x1 + (y - y1) * (x2 - x1) / (y2 - y1))
    ink: Array = inside.reshape(PIXELS, FINER, PIXELS, FINER).mean(axis=(1, 3))
    return ink


def _corners(outline: Outline) -> list[list[tuple[float, float]]]:
    """The closed parts of an outline as corners; curves in eight pieces."""
    parts: list[list[tuple[float, float]]] = []
    for letter, *numbers in outline:
        values = [float(number) for number in numbers]
        points = list(zip(values[::2], values[1::2], strict=True))
        if letter == "M":
            parts.append(points)
        elif letter == "L":
            parts[-1] += points
        elif letter == "C":
            parts[-1] += _on_curve(np.array([parts[-1][-1], *points]))
    return parts


def _on_curve(corners: Array) -> list[tuple[float, float]]:
    t = np.linspace(1 / 8, 1, 8)
    shares = np.stack([(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3], axis=1)
    return [(float(x), float(y)) for x, y in shares @ corners]


def _codes(palette: Palette, weights: Array) -> list[str]:
    """Single letters where there are enough; else the codes that stand, among themselves."""
    single = len(palette) <= len(ascii_uppercase)
    choice = list(ascii_uppercase) if single else list(palette.codes)
    given = [choice.index(code) if code in choice else -1 for code in palette.codes]
    free = iter(place for place in range(len(choice)) if place not in given)
    given = [place if place >= 0 else next(free) for place in given]
    likeness = np.array([[code_likeness(one, other) for other in choice] for one in choice])
    return [choice[place] for place in exchanged(given, likeness, weights)]


def code_likeness(one: str, other: str) -> float:
    """How easily a code is mistaken for another, 0 to 1: the share of its letters that are alike.

    >>> code_likeness("A", "B"), code_likeness("C", "G"), code_likeness("AB", "AP")
    (0.0, 0.5, 0.75)
    """
    if len(one) != len(other):
        return 0.0
    return sum(_letter_likeness(*pair) for pair in zip(one, other, strict=True)) / len(one)


def _letter_likeness(one: str, other: str) -> float:
    if one == other:
        return 1.0
    return 0.5 if any(one in group and other in group for group in LIKE_LETTERS) else 0.0
