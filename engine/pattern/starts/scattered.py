"""Starts that are spread: colours scattered by weight and kept apart, and fades from one colour to the next."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from hashlib import sha256

from engine.errors import EngineError
from engine.pattern.lattice import neighbours
from engine.pattern.notation import MOST_BEADS
from engine.pattern.starts.start import Answers, Asked, Start, number, of_a_chart, row_of_beads
from engine.units import whole

MOST_APART = 12
STEPS, NEAREST = 997, 24  # a prime: the steps that are tried are its parts; beads looked at beside one another


def scatter(around: int, colours: int, answers: Answers) -> bytes:
    """Beads of the other colours on the first, each colour by its weight, no two of them nearer than asked.

    Distance is counted in beads that touch, also across the seam of one pass to the next. The same seed gives the same
    chart. Raises EngineError where so many do not find room so far apart.
    """
    total, weights = number(answers, "beads"), row_of_beads(answers, "weights")
    apart, seed = number(answers, "apart"), number(answers, "seed")
    wanted = [whole(total * weights.count(colour) / len(weights)) for colour in range(1, colours)]
    beads, taken, places = bytearray(total), bytearray(total), iter(mixed(range(total), seed))
    for colour in mixed([colour for colour, many in enumerate(wanted, 1) for _ in range(many)], seed):
        place = next((k for k in places if not taken[k]), None)
        if place is None:
            raise EngineError(
                f"{sum(wanted):,} beads do not find room {apart} beads apart among {total:,}; "
                "make them fewer, or let them stand nearer.",
                "apart",
            )
        beads[place] = colour
        for near in within(around, place, apart - 1, total):
            taken[near] = 1
    return bytes(beads)


def within(around: int, bead: int, steps: int, total: int) -> set[int]:
    """Beads that can be reached in so many steps from bead to bead, in a rope of `total` beads that is said again."""
    reached = edge = {bead}
    for _ in range(steps):
        edge = {near for k in edge for near in neighbours(around, k, total)} - reached
        reached = reached | edge
    return reached


def mixed(things: Iterable[int], seed: int) -> list[int]:
    """The things in an order that follows from the seed and from nothing else."""
    lots = ((sha256(f"{seed} {place}".encode()).digest(), thing) for place, thing in enumerate(things))
    return [thing for _, thing in sorted(lots)]


def fade(around: int, colours: int, answers: Answers) -> bytes:
    """From each colour of the row to the next over a length, mixed evenly along and round the rope.

    A bead takes the later colour where its place in an even sequence lies below the share of that colour; the sequence
    is k·s mod 1 with a step s for which beads that touch lie as far apart in it as can be.
    """
    through, length = row_of_beads(answers, "through"), number(answers, "length")
    step = even_step(around)
    total = of_a_chart(length * max(1, len(through) - 1))
    return bytes(_faded(through, k / length, k * step % 1) for k in range(total))


def _faded(through: bytes, at: float, place: float) -> int:
    before = min(int(at), len(through) - 1)
    after = min(before + 1, len(through) - 1)
    return through[after] if place < at - before else through[before]


@lru_cache
def even_step(around: int) -> float:
    """The step of an even sequence k·s mod 1: beads that touch lie far apart in it, and every stretch is spread evenly.

    Both are measured alike: how near the values of two beads come that touch, and how near those of beads j apart,
    times j, which is what makes a sequence of this kind even (a low-discrepancy sequence; its theory from memory).
    """
    return (
        max(range(1, STEPS), key=lambda many: min(_spread(many), *(_apart(many * j) for j in (1, around, around + 1))))
        / STEPS
    )


def _apart(many: int) -> int:
    return min(many % STEPS, -many % STEPS)


def _spread(many: int) -> int:
    return min(j * _apart(many * j) for j in range(1, NEAREST))


SCATTERED = (
    Start(
        key="scatter",
        label="Scatter",
        words="Single beads on a background, by weight, kept apart.",
        asks=(
            Asked("beads", "Beads", "240", "Of the chart, which is then repeated.", least=1, most=MOST_BEADS),
            Asked("weights", "Weights", "10A B C", "10A B C: ten of A to one of B and one of C.", beads=True),
            Asked(
                "apart",
                "At least apart",
                "2",
                "Beads from one to the next: 1 lets them touch.",
                least=1,
                most=MOST_APART,
            ),
            Asked("seed", "Seed", "1", "Another number gives another chart.", least=0, most=999_999),
        ),
        colours=3,
        make=scatter,
    ),
    Start(
        key="fade",
        label="Fade",
        words="From one colour to the next, mixed evenly along the rope.",
        asks=(
            Asked(
                "through",
                "Through",
                "A B C A",
                "The colours in order; the first once more at the end for a ring.",
                beads=True,
            ),
            Asked("length", "Beads from one to the next", "120", "", least=1, most=20_000),
        ),
        colours=3,
        make=fade,
    ),
)
