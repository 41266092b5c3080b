"""All short repeats in a few colours: rotations counted once, and on wish their reversals once with them.

A repeat is a necklace in the sense of combinatorics, told by its rotation that comes first in the alphabet; with
reversals it is a bracelet. Necklaces come in alphabetical order (the algorithm of Fredricksen, Kessler and Maiorana,
from memory); a branch is left as soon as no bead behind it could make it fit what is wanted.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice
from math import gcd

from engine.errors import EngineError

LONGEST, MOST_COLOURS, MOST_FOUND = 14, 4, 10_000
MOST_TRIED = 400_000  # steps of the search, a second or two


@dataclass(frozen=True)
class Wanted:
    """Which repeats: their length, the number of colours, and what they must have.

    `counts` are beads of each colour and `most` what there may be at most, None for any number. `longest_run` is the
    longest stretch of one colour, nought for any. `whole`: those alone that have no shorter repeat. `both_ways`: one
    that reads like another backwards is left out. `every`: each colour stands in it.
    """

    length: int
    colours: int
    counts: tuple[int | None, ...] = ()
    longest_run: int = 0
    whole: bool = True
    both_ways: bool = False
    every: bool = True
    most: tuple[int | None, ...] = ()

    def __post_init__(self) -> None:
        if not 1 <= self.length <= LONGEST:
            raise EngineError(f"A repeat of {self.length} beads is not searched; expected 1 to {LONGEST}.", "length")
        if not 2 <= self.colours <= MOST_COLOURS:
            raise EngineError(f"{self.colours} colours are not searched; expected 2 to {MOST_COLOURS}.", "colours")
        said = [count for count in self.counts if count is not None]
        if sum(said) > self.length:
            raise EngineError(f"The colours come to {sum(said)} beads; the repeat has {self.length}.", "counts")


@dataclass(frozen=True)
class Found:
    """The repeats in alphabetical order, at most MOST_FOUND; `all` says that there are no others."""

    repeats: tuple[bytes, ...]
    all: bool


def search(wanted: Wanted) -> Found:
    """The repeats that fit, as far as they are found in time."""
    looking = _Search(wanted)
    repeats = tuple(islice(looking.fitting(), MOST_FOUND + 1))
    return Found(repeats[:MOST_FOUND], len(repeats) <= MOST_FOUND and not looking.tired)


def necklaces(length: int, colours: int) -> int:
    """How many repeats there are, rotations counted once: (1/r) Σ φ(d) c^(r/d) over the divisors d of r.

    >>> [necklaces(length, 2) for length in range(1, 9)]
    [2, 3, 4, 6, 8, 14, 20, 36]
    """
    turned: int = sum(colours ** gcd(turn, length) for turn in range(length))
    return turned // length


def bracelets(length: int, colours: int) -> int:
    """How many there are with reversals counted once.

    >>> [bracelets(length, 2) for length in range(1, 9)]
    [2, 3, 4, 6, 8, 13, 18, 30]
    """
    half: int = colours ** (length // 2)
    mirrored = half * colours if length % 2 else (half + half * colours) // 2
    return (necklaces(length, colours) + mirrored) // 2


class _Search:
    """Walks through the necklaces; `tired` once it gave up."""

    def __init__(self, wanted: Wanted) -> None:
        self.wanted = wanted
        counts, most = _all(wanted.counts, wanted.colours), _all(wanted.most, wanted.colours)
        self.least = tuple((1 if wanted.every else 0) if count is None else count for count in counts)
        self.most = tuple(
            min(wanted.length if bound is None else bound for bound in bounds)
            for bounds in zip(counts, most, strict=True)
        )
        self.beads = bytearray(wanted.length + 1)
        self.used = [0] * wanted.colours
        self.tried, self.tired = 0, False

    def fitting(self) -> Iterator[bytes]:
        return self._from(1, 1, 0)

    def _from(self, place: int, period: int, run: int) -> Iterator[bytes]:
        """All that continue the beads before a place, whose last `run` beads are alike; `period` is theirs."""
        length = self.wanted.length
        if place > length:
            if length % period == 0 and self._fits(period):
                yield bytes(self.beads[1:])
            return
        copied = self.beads[place - period]
        for bead in range(copied, self.wanted.colours):
            self.tried += 1
            if self.tried > MOST_TRIED:
                self.tired = True
                return
            again = run + 1 if place > 1 and bead == self.beads[place - 1] else 1
            if self._leaves_room(bead, place) and not 0 < self.wanted.longest_run < again:
                self.beads[place] = bead
                self.used[bead] += 1
                yield from self._from(place + 1, period if bead == copied else place, again)
                self.used[bead] -= 1

    def _leaves_room(self, bead: int, place: int) -> bool:
        """Whether the colour may stand once more, and what must still come finds room behind this place."""
        missing = sum(max(0, least - used) for least, used in zip(self.least, self.used, strict=True))
        helps = self.used[bead] < self.least[bead]
        return self.used[bead] < self.most[bead] and missing - helps <= self.wanted.length - place

    def _fits(self, period: int) -> bool:
        beads = bytes(self.beads[1:])
        return (
            not (self.wanted.whole and period < len(beads))
            and not 0 < self.wanted.longest_run < longest_run(beads)
            and not (self.wanted.both_ways and first_rotation(beads[::-1]) < beads)
        )


def _all(said: tuple[int | None, ...], colours: int) -> tuple[int | None, ...]:
    return (*said, *(None,) * colours)[:colours]


def longest_run(beads: bytes) -> int:
    """The longest stretch of one colour in a repeat that is said again and again.

    >>> longest_run(bytes([0, 1, 1, 0, 0]))
    3
    """
    run = best = 1
    for before, bead in zip(beads + beads, (beads + beads)[1:], strict=False):
        run = run + 1 if bead == before else 1
        best = max(best, run)
    return min(best, len(beads))


def first_rotation(beads: bytes) -> bytes:
    """The rotation that comes first in the alphabet."""
    return min(beads[turn:] + beads[:turn] for turn in range(len(beads)))
