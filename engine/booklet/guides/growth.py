"""How far the rope has grown after each thread: a small picture of its last rows, and its beads and length in words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from engine.counting.answers import Answer
from engine.drawing.charts import ROW
from engine.pattern.lattice import first_of_row, rows
from engine.pattern.pattern import Pattern
from engine.units import count, length, numbers_in_words

MOST_PICTURES = 8
WIDTH_MM, TALLEST_MM, LARGEST_BEAD_MM = 76.0, 22.0, 1.7
MOST_BEADS = 1200  # in one picture


@dataclass(frozen=True)
class Grown:
    """The rope after a thread. `end` is a pattern of its last rows, drawn with beads `bead_mm` wide.

    `share` of the whole rope is worked, `joins` are the shares where threads end; `shows` says what is seen.
    """

    figure: str
    caption: str
    shows: str
    end: Pattern
    bead_mm: float
    share: float
    joins: tuple[float, ...]


def growth(pattern: Pattern, answered: Answer, units: str) -> tuple[Grown, ...]:
    """A picture for every thread that differs from the one before, eight at most; none where there is one thread."""
    threads, total = answered.stringing.threads, answered.size.beads
    if len(threads) < 2:
        return ()
    alike = [
        tuple(number for number, _ in group) for _, group in groupby(enumerate(threads, 1), lambda one: one[1].runs)
    ]
    shown = alike if len(alike) <= MOST_PICTURES else [*alike[: MOST_PICTURES - 1], alike[-1]]
    between = tuple(number for numbers in alike[MOST_PICTURES - 1 : -1] for number in numbers)
    worked, joins = answered.size.worked, tuple(thread.last / total for thread in threads[:-1])
    made = tuple(_grown(pattern, worked, numbers, answered, units, joins) for numbers in shown)
    return (*made[:-1], replace(made[-1], caption=made[-1].caption + _left_out(between)))


def _grown(
    pattern: Pattern, worked: bytes, numbers: Sequence[int], answered: Answer, units: str, joins: tuple[float, ...]
) -> Grown:
    upto, whole = answered.stringing.threads[numbers[0] - 1].last, len(worked)
    bead_mm = min(LARGEST_BEAD_MM, TALLEST_MM / (pattern.around + 1))
    return Grown(
        figure=f"grown-{numbers[0]}",
        caption=_caption(numbers, answered, units),
        shows=f"The rope lies on its side, the working end at the right, as it looks after thread {numbers[0]}; a "
        f"bar shows that {count(upto)} of {count(whole)} beads are worked.",
        end=_end(pattern, worked[:upto], bead_mm),
        bead_mm=bead_mm,
        share=upto / whole,
        joins=joins,
    )


def _end(pattern: Pattern, worked: bytes, bead_mm: float) -> Pattern:
    """The last rows of that rope, as many as a picture holds; the first has N + 1 beads, so that rows stay rows."""
    around = pattern.around
    room = min(int(WIDTH_MM / (ROW * bead_mm)), max(2, int(MOST_BEADS / (around + 0.5))))
    first = max(0, rows(around, len(worked)) - room)
    begin = first_of_row(around, first + first % 2)
    return pattern.alone(worked[begin:] or worked[-1:])


def _caption(numbers: Sequence[int], answered: Answer, units: str) -> str:
    first, *others = numbers
    said = f"After thread {first}: {_so_far(first, answered, units)}."
    if not others:
        return said
    alike = f"Thread {others[0]} is" if len(others) == 1 else f"Threads {numbers_in_words(others)} are"
    return f"{said} {alike} strung alike: {_so_far(others[-1], answered, units)} after thread {others[-1]}."


def _left_out(numbers: Sequence[int]) -> str:
    """Where threads stand that have no caption of their own; nothing where all have one."""
    if not numbers:
        return ""
    some = f"Thread {numbers[0]} is" if len(numbers) == 1 else f"Threads {numbers_in_words(numbers)} are"
    return f" {some} left out here; the heads of the lists say how many beads a thread takes."


def _so_far(number: int, answered: Answer, units: str) -> str:
    beads = answered.stringing.threads[number - 1].last
    return f"{count(beads)} beads, {length(answered.size.upto_mm(beads), units)}"
