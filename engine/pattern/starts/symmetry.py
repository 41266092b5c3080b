"""Plane groups on a rope: which a repeat can have, and the beads that its moves carry into one another.

The rope's lattice rolled out flat has a bead at x·a1 + y·a2, which is bead x + N·y along the thread; a repeat of r
beads is the same wherever that number is the same modulo r. A turn or a reflection of the plane keeps such a repeat
only if it keeps the lattice of those places, and is then k → times·k + plus (mod r) along the thread:

    half turn              always                       k → −k + b
    third turn             where r divides N² + N + 1   k → N·k + b
    sixth turn             the same                     k → (N + 1)·k + b
    reflections            where r divides 2N + 1       k → k + b,  k → −k + b
                           where r divides N·(N + 2)    k → −(N + 1)·k + b,  k → (N + 1)·k + b
                           where r divides N² − 1       k → N·k + b,  k → −N·k + b

No quarter turn keeps touching beads, so p4, p4m and p4g cannot be (E. Baker and S. Goldstine, Bridges 2012: those three
and p31m are impossible; p3m1 and p6m only with less than a bead to draw).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import product
from typing import NamedTuple

from engine.errors import ChoiceError, EngineError

GROUPS = ("p1", "p2", "pm", "pg", "cm", "pmm", "pmg", "pgg", "cmm", "p3", "p6")
FORBIDDEN = ("p4", "p4m", "p4g", "p31m", "p3m1", "p6m")
LEAST_REPEAT, LONGEST_REPEAT = 3, 240
LEAST_FREE = 2  # beads to draw: with fewer, all are one colour


class Move(NamedTuple):
    """A move of the plane as it acts along the thread: bead k goes to times·k + plus, modulo the repeat."""

    times: int
    plus: int


class Matrix(NamedTuple):
    """What a move does to x·a1 + y·a2: the images of a1 and a2."""

    a1: tuple[int, int]
    a2: tuple[int, int]

    def of(self, x: int, y: int) -> tuple[int, int]:
        return x * self.a1[0] + y * self.a2[0], x * self.a1[1] + y * self.a2[1]


# a1 lies at 0 degrees, a2 at 120; reflections are named by the direction of their axis in degrees
HALF, THIRD, SIXTH = Matrix((-1, 0), (0, -1)), Matrix((0, 1), (-1, -1)), Matrix((1, 1), (-1, 0))
AXES = {
    0: Matrix((1, 0), (-1, -1)),
    90: Matrix((-1, 0), (1, 1)),
    120: Matrix((-1, -1), (0, 1)),
    30: Matrix((1, 1), (0, -1)),
    60: Matrix((0, 1), (1, 0)),
    150: Matrix((0, -1), (-1, 0)),
}
MIRRORS = {"pmm": (True, True), "pgg": (False, False), "pmg": (True, False), "cmm": (True, True)}
ACROSS = {0: 90, 120: 30, 60: 150}  # each axis and the one square to it


@dataclass(frozen=True)
class Symmetry:
    """A plane group on a rope of that number around: the repeat, its moves, and the beads that are free to draw.

    `free` are the orbits: tuples of places in the repeat that always have one colour, in the order of their first.
    """

    group: str
    around: int
    repeat: int
    moves: tuple[Move, ...]

    @property
    def free(self) -> tuple[tuple[int, ...], ...]:
        return _orbits(self.repeat, self.moves)

    def beads(self, drawn: bytes) -> bytes:
        """The repeat for a colour of every free bead. Raises EngineError for another number of them."""
        free = self.free
        if len(drawn) != len(free):
            raise EngineError(f"{len(drawn)} beads are drawn; this cell has {len(free)} to draw.", "drawn")
        repeat = bytearray(self.repeat)
        for colour, orbit in zip(drawn, free, strict=True):
            for place in orbit:
                repeat[place] = colour
        return bytes(repeat)


def symmetries(around: int, group: str) -> tuple[Symmetry, ...]:
    """That group on every repeat that can have it, the shortest first. Raises ChoiceError for a group that is not."""
    if group not in GROUPS:
        raise ChoiceError("Plane group", group, GROUPS, "group")
    found = (symmetry_of(around, group, repeat) for repeat in range(LEAST_REPEAT, LONGEST_REPEAT + 1))
    return tuple(one for one in found if one is not None and len(one.free) >= LEAST_FREE)


@lru_cache(maxsize=4096)
def symmetry_of(around: int, group: str, repeat: int) -> Symmetry | None:
    """The group on that repeat with most beads free to draw; None where the rope's lattice forbids it."""
    turns = {"p2": HALF, "p3": THIRD, "p6": SIXTH}
    found: list[tuple[Move, ...]] = [()]
    if group in turns:
        found = [(move,) for move in _moves(around, repeat, turns[group])]
    elif group != "p1":
        found = _reflected(around, repeat, group)
    best = max(found, key=lambda moves: len(_orbits(repeat, moves)), default=None)
    return None if best is None else Symmetry(group, around, repeat, best)


def _keeps(around: int, repeat: int, matrix: Matrix) -> int | None:
    """By what a move multiplies places along the thread; None where it does not keep the repeat's lattice."""
    one, other = (x + around * y for x, y in (matrix.a1, matrix.a2))
    return one % repeat if (other - around * one) % repeat == 0 else None


def _moves(around: int, repeat: int, matrix: Matrix) -> list[Move]:
    """The turns of that kind: about a bead, and where they differ between beads."""
    times = _keeps(around, repeat, matrix)
    if times is None:
        return []
    return [Move(times, plus) for plus in range(min(repeat, 3))]


def _reflected(around: int, repeat: int, group: str) -> list[tuple[Move, ...]]:
    """The moves of a group with reflections, by every axis that the repeat's lattice has."""
    found: list[tuple[Move, ...]] = []
    for axis, across in ACROSS.items():
        for one, other in ((axis, across), (across, axis)):
            found += _along(around, repeat, group, one, other)
    return found


def _along(around: int, repeat: int, group: str, axis: int, across: int) -> Iterator[tuple[Move, ...]]:
    times = _keeps(around, repeat, AXES[axis])
    if times is None:
        return
    rhombic = _is_rhombic(around, repeat, AXES[axis])
    if rhombic != (group in ("cm", "cmm")):
        return
    mirrors = [plus for plus in range(repeat) if (times + 1) * plus % repeat == 0]
    kinds = {plus: _is_mirror(around, repeat, AXES[axis], plus) for plus in mirrors}
    if group in ("pm", "pg", "cm"):
        wanted = group != "pg"
        yield from ((Move(times, plus),) for plus, mirror in kinds.items() if mirror == wanted)
        return
    for plus, turn in product(mirrors, range(repeat)):
        square = _after(Move(-1 % repeat, turn), Move(times, plus), repeat)
        if (square.times + 1) * square.plus % repeat:
            continue
        other = _is_mirror(around, repeat, AXES[across], square.plus)
        if MIRRORS[group] == (kinds[plus], other):
            yield (Move(times, plus), Move(-1 % repeat, turn))
            return


def _after(second: Move, first: Move, repeat: int) -> Move:
    """Both moves, the first one first."""
    return Move(second.times * first.times % repeat, (second.times * first.plus + second.plus) % repeat)


def _translations(around: int, repeat: int) -> Iterator[tuple[int, int]]:
    """Ways in the plane that lead to the same place of the repeat, as far as a cell reaches."""
    reach = range(-repeat - 1, repeat + 2)
    for y in range(-repeat - 1, repeat + 2):
        first = (-around * y) % repeat
        yield from ((x, y) for x in (first - 2 * repeat, first - repeat, first, first + repeat) if x in reach)


@lru_cache(maxsize=4096)
def _is_rhombic(around: int, repeat: int, matrix: Matrix) -> bool:
    """Whether the lattice has points in the middle of the rectangles along the axis: then groups are cm and cmm."""
    ways = set(_translations(around, repeat)) - {(0, 0)}
    along = [way for way in ways if matrix.of(*way) == way]
    square = [way for way in ways if matrix.of(*way) == (-way[0], -way[1])]
    if not along or not square:
        return False
    one, other = min(along, key=_far), min(square, key=_far)
    return abs(one[0] * other[1] - one[1] * other[0]) == 2 * repeat


@lru_cache(maxsize=65536)
def _is_mirror(around: int, repeat: int, matrix: Matrix, plus: int) -> bool:
    """Whether a reflection that goes on by `plus` beads is a mirror: somewhere it leaves a line where it is."""
    for x, y in _translations(around, repeat):
        x, y = x + plus, y
        mx, my = matrix.of(x, y)
        if (x + mx, y + my) == (0, 0):
            return True
    return False


def _far(way: tuple[int, int]) -> int:
    return way[0] ** 2 - way[0] * way[1] + way[1] ** 2


@lru_cache(maxsize=4096)
def _orbits(repeat: int, moves: tuple[Move, ...]) -> tuple[tuple[int, ...], ...]:
    """Places of the repeat that the moves carry into one another."""
    home = [-1] * repeat
    orbits: list[list[int]] = []
    for place in range(repeat):
        if home[place] >= 0:
            continue
        waiting, orbit = [place], []
        home[place] = len(orbits)
        while waiting:
            here = waiting.pop()
            orbit.append(here)
            for times, plus in moves:
                there = (times * here + plus) % repeat
                if home[there] < 0:
                    home[there] = len(orbits)
                    waiting.append(there)
        orbits.append(sorted(orbit))
    return tuple(map(tuple, orbits))
