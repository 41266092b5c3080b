"""Which symbol every bead of a chart in black and white has: beads are grouped by the look of their cells.

A cell is seen as a small square of ink: how dark it is beside the paper round it, whatever the light there. Squares are
gathered to many groups, groups whose middles look alike are put together, and every bead then goes to the group that it
looks like most, moved by a little to every side, as a lattice is never quite in its place. Nothing is known of symbols
beforehand. Measured on our own print alone: signs drawn by hand differ more from bead to bead.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from engine.errors import EngineError
from engine.pattern.old_charts.drawn import Drawn
from engine.pattern.old_charts.grains import LINEAR, Pixels, bead_px
from engine.pattern.old_charts.paper import Paper
from engine.pattern.old_charts.reading import AT_ONCE, Reading
from engine.pattern.photographs.few_colours import middles_of, nearest_middle
from engine.units import plain

Array = NDArray[np.float32]

LEAST_PX = 14  # of a bead's shorter side; below, forms run together (our measure)
GRID, REACH, MOVED = 13, 0.35, 2  # places of a square a side; how far it reaches from the middle, in beads; its moves
STEP = 2 * REACH / (GRID - 1)
MOVES = tuple((down, over) for down in range(-MOVED, MOVED + 1) for over in range(-MOVED, MOVED + 1))
PAPER = 0.85  # share of a cell's places that are darker than its paper: a symbol leaves as many free (our measure)
LUMINANCE = np.array([0.2126, 0.7152, 0.0722])
LOOKED_AT, AT_FIRST = 1600, 28  # beads that groups are made of, and groups before those that are alike are put together
WAYS = 24  # in which squares differ most, that groups are begun in
ROUNDS = 2
BLOCK = 1024  # beads whose moves are held side by side
ALIKE = 1.3  # squared difference of two middles, in places of full ink, up to which they are one symbol (our measure)
CLEAR = 0.62  # how near to a symbol, beside how near to the second, is in doubt (our measure)
STRANGE = 6.0  # how far from its symbol a bead is in doubt, beside what is usual (our measure)
BLANK = 0.2  # darkness beside the paper below which there is no ink


def read_symbols(pixels: Pixels, paper: Paper, drawn: Drawn, many: int = 0) -> Reading:
    """The beads of a chart in symbols, so many or as many as are told apart, the most frequent first.

    The colours of the reading are empty. Raises EngineError where beads are too small in the picture.
    """
    if (size := bead_px(pixels, paper, drawn)) < LEAST_PX:
        raise EngineError(
            f"A bead has about {plain(size, 1)} pixels there; symbols want at least {LEAST_PX}. Are there so many "
            "rows? If so, photograph the chart nearer, in parts.",
            "rows",
        )
    inked = _inked(pixels, paper, drawn)
    symbols = _symbols(inked[:: -(-len(inked) // LOOKED_AT)], many)
    far, _ = _distances(inked, symbols)
    groups = far.argmin(axis=1)
    counts = np.bincount(groups, minlength=len(symbols))
    order = [group for group in np.argsort(-counts, kind="stable").tolist() if counts[group]]
    place_of = np.zeros(len(symbols), np.uint8)
    place_of[order] = range(len(order))
    nearest = np.sort(np.sqrt(np.maximum(far, 0)), axis=1)
    doubt = _doubt(nearest, groups)
    worst = np.argsort(-doubt, kind="stable")
    return Reading(
        beads=bytes(place_of[groups]),
        colours=("",) * len(order),
        doubts=tuple(worst[doubt[worst] > 1].tolist()),
        examples=tuple(_clearest(nearest[:, 0], groups, group) for group in order),
    )


def _inked(pixels: Pixels, paper: Paper, drawn: Drawn) -> Array:
    """How dark every bead is (beads, side, side), 0 paper, 1 full ink, in a square that leaves room for its moves."""
    light = np.sqrt(LINEAR[pixels] @ LUMINANCE).astype(np.float32)
    middles, side = drawn.middles(), GRID + 2 * MOVED
    over = np.linspace(-REACH - MOVED * STEP, REACH + MOVED * STEP, side)
    square = np.stack(np.meshgrid(over, over), axis=-1).reshape(-1, 2) * drawn.bead()
    seen = np.concatenate(
        [
            _seen(light, paper.places((block[:, None] + square[None]).reshape(-1, 2))).reshape(-1, side, side)
            for block in _blocks(middles)
        ]
    )
    inner = seen[:, MOVED:-MOVED, MOVED:-MOVED].reshape(len(seen), -1)
    dark = np.clip(1 - seen / _paper_light(np.quantile(inner, PAPER, axis=1), middles)[:, None, None], 0, 1)
    full = float(np.quantile(dark[:, MOVED:-MOVED, MOVED:-MOVED].max(axis=(1, 2)), 0.7))
    scaled: Array = np.minimum(dark / max(full, BLANK), 1.2)
    return scaled


def _blocks(middles: NDArray[np.float64]) -> Iterator[NDArray[np.float64]]:
    return (middles[first : first + AT_ONCE] for first in range(0, len(middles), AT_ONCE))


def _seen(light: Array, places: NDArray[np.float64]) -> Array:
    """The light at places, shares of the picture, between its four nearest pixels."""
    height, width = light.shape
    x = np.clip(places[:, 0] * width - 0.5, 0, width - 1.001).astype(np.float32)
    y = np.clip(places[:, 1] * height - 0.5, 0, height - 1.001).astype(np.float32)
    left, top = x.astype(int), y.astype(int)
    right, down = x - left, y - top
    upper = light[top, left] * (1 - right) + light[top, left + 1] * right
    lower = light[top + 1, left] * (1 - right) + light[top + 1, left + 1] * right
    between: Array = upper * (1 - down) + lower * down
    return between


def _paper_light(lightest: NDArray[np.float64], middles: NDArray[np.float64]) -> Array:
    """The light of the paper at every bead: a curved surface through the beads whose cell leaves most of it free."""
    x, y = middles.T * 2 - 1
    surface = np.stack([np.ones_like(x), x, y, x * y, x * x, y * y, x**3, y**3], axis=1)
    at_least = np.maximum(lightest, 1e-3)
    for _ in range(ROUNDS):
        light = np.exp(surface @ np.linalg.lstsq(surface, np.log(at_least), rcond=None)[0])
        at_least = np.maximum(at_least, 0.97 * light)  # cells that are full of ink count for little
    of_beads: Array = light.astype(np.float32)
    return of_beads


def _symbols(inked: Array, many: int) -> Array:
    """The middle (n, places) of every symbol, of beads that are looked at."""
    symbols, counts = _settled(inked, _first_groups(_moved(inked, 0, 0)))
    steps = list(_put_together(symbols, counts))
    symbols = steps[_right_step([far for _, far in steps], [len(middles) for middles, _ in steps], many)][0]
    return _settled(inked, symbols)[0]


def _first_groups(squares: Array) -> Array:
    """Middles to begin with, found in the few ways in which squares (beads, places) differ most."""
    off = (squares - squares.mean(axis=0)).astype(np.float64)
    _, ways = np.linalg.eigh(off.T @ off)
    few = off @ ways[:, -WAYS:]
    groups = nearest_middle(few, middles_of(few, AT_FIRST))
    return np.stack([squares[groups == group].mean(axis=0) for group in np.unique(groups)])


def _put_together(symbols: Array, counts: Array) -> Iterator[tuple[Array, float]]:
    """The symbols as two that are most alike become one, again and again, and how far apart those two are each time."""
    while len(symbols) > 1:
        apart = _apart(symbols)
        one, other = divmod(int(apart.argmin()), len(symbols))
        yield symbols, float(apart[one, other])
        both = counts[one] + counts[other]
        mean = (counts[one] * symbols[one] + counts[other] * symbols[other]) / both
        symbols, counts = np.delete(symbols, other, axis=0), np.delete(counts, other)
        symbols[one - (other < one)], counts[one - (other < one)] = mean, both
    yield symbols, np.inf


def _right_step(far: list[float], left: list[int], many: int) -> int:
    """Which step to stop at: so many symbols, or the first that would make one of two that are not surely alike.

    One symbol as two groups is put right by giving both the same code; two as one group could not be parted again.
    """
    if many:
        return next((step for step, symbols in enumerate(left) if symbols <= many), len(left) - 1)
    return next(step for step, apart in enumerate(far) if apart > ALIKE)


def _settled(inked: Array, symbols: Array) -> tuple[Array, Array]:
    """The middles after each became the mean of the beads nearest to it, moved into place, and how many those are."""
    for _ in range(ROUNDS):
        far, moves = _distances(inked, symbols)
        groups = far.argmin(axis=1)
        chosen = moves[np.arange(len(groups)), groups]
        placed = np.empty((len(inked), GRID * GRID), np.float32)
        for move, (down, over) in enumerate(MOVES):
            own = chosen == move
            placed[own] = _moved(inked[own], down, over)
        counts = np.bincount(groups, minlength=len(symbols)).astype(np.float32)
        symbols = np.stack([placed[groups == group].mean(axis=0) for group in np.flatnonzero(counts)])
        counts = counts[counts > 0]
    return symbols, counts


def _distances(inked: Array, symbols: Array) -> tuple[Array, NDArray[np.int64]]:
    """Squared difference of every bead to every symbol (beads, symbols) in its best move, and which move that is."""
    sums, far, moves = (symbols**2).sum(axis=1), [], []
    for first in range(0, len(inked), BLOCK):
        block = inked[first : first + BLOCK]
        seen = np.concatenate([_moved(block, down, over) for down, over in MOVES])
        apart = ((seen**2).sum(axis=1)[:, None] - 2 * seen @ symbols.T + sums).reshape(len(MOVES), len(block), -1)
        far.append(apart.min(axis=0))
        moves.append(apart.argmin(axis=0))
    return np.concatenate(far), np.concatenate(moves)


def _moved(inked: Array, down: int, over: int) -> Array:
    """The inner squares (beads, places), moved by so many places."""
    top, left = MOVED + down, MOVED + over
    inner: Array = inked[:, top : top + GRID, left : left + GRID].reshape(len(inked), GRID * GRID)
    return inner


def _apart(symbols: Array) -> Array:
    """Squared difference of every two symbols in the move in which they are most alike; of one to itself, infinite."""
    squares = np.pad(symbols.reshape(-1, GRID, GRID), ((0, 0), (MOVED, MOVED), (MOVED, MOVED)))
    far, _ = _distances(squares, symbols)
    apart: Array = np.minimum(far, far.T)
    np.fill_diagonal(apart, np.inf)
    return apart


def _doubt(nearest: Array, groups: NDArray[np.int64]) -> Array:
    """How far every bead is in doubt: between two symbols, or unlike its own; above 1 it is."""
    usual = np.array(
        [np.median(nearest[groups == group, 0]) if (groups == group).any() else 1 for group in range(groups.max() + 1)]
    )
    strange: Array = nearest[:, 0] / np.maximum(usual, 0.2)[groups] / np.sqrt(STRANGE)
    if nearest.shape[1] == 1:
        return strange
    doubt: Array = np.maximum(strange, nearest[:, 0] / np.maximum(nearest[:, 1], 1e-6) / CLEAR)
    return doubt


def _clearest(far: Array, groups: NDArray[np.int64], group: int) -> int:
    """The bead that looks most like its symbol."""
    own = np.flatnonzero(groups == group)
    return int(own[far[own].argmin()])
