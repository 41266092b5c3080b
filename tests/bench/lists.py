"""The engine's own sums: list and bill."""

from __future__ import annotations

from collections import Counter
from itertools import groupby
from random import Random

from engine.counting.answers import answer
from engine.counting.materials import materials
from engine.counting.questions import NamedSize, Question
from engine.counting.size_table import size_table
from engine.counting.sizes import size
from engine.counting.stringing import string
from engine.counting.workshop import Workshop
from engine.pattern.settled import MOST_SETTLED, settled
from tests.bench.charts import parted, pattern
from tests.bench.figures import Figures, best_ms, ms, taken_ms, times

TIMES = 15


def figures() -> Figures:
    """Stringing lists of 40,000 beads, bills of ten sizes."""
    for run, told in ((1, "runs of one bead"), (4, "runs of four")):
        fresh = [pattern(40_000, 30, run) for _ in range(TIMES)]  # a pattern keeps what it has once worked out
        sized = size(fresh[0], Question())
        listed = min(taken_ms(lambda one=one, sized=sized: string(sized)) for one in fresh)
        rival = best_ms(lambda one=fresh[0]: bead_by_bead(one.chart))
        yield f"stringing list of 40,000 beads, {told}", ms(listed), "20 ms", times(listed, rival, "bead by bead")
    small = pattern(1_500)
    answered = [(sized := size(small, Question(mm)), string(sized)) for mm in range(400, 900, 50)]
    bills = best_ms(lambda: [materials(sized, listed) for sized, listed in answered])
    ropes = [bytes(small.chart) * 20 for _ in answered]
    rival = best_ms(lambda: [Counter(rope[: sized.beads]) for rope, (sized, _) in zip(ropes, answered, strict=True)])
    yield (
        "materials for ten sizes, counted from their lists",
        ms(bills),
        "5 ms",
        times(bills, rival, "counted bead by bead, without weights"),
    )
    whole = best_ms(
        lambda: [materials(sized := size(small, Question(mm)), string(sized)) for mm in range(400, 900, 50)]
    )
    yield "the same with sizes and lists", ms(whole), ""
    ten = Workshop(sizes=tuple(NamedSize("Own", str(mm), Question(float(mm), "clasp")) for mm in range(400, 900, 50)))
    yield (
        "a table of ten sizes, with their sentences",
        ms(best_ms(lambda: size_table(answer(small, Question(), ten)))),
        "",
    )
    yield from _parts()


def bead_by_bead(beads: bytes) -> list[tuple[int, int]]:
    """The runs of a rope as one would write it down first."""
    return [(bead, sum(1 for _ in run)) for bead, run in groupby(reversed(beads))]


def _parts() -> Figures:
    """The same of a rope of twelve parts, and beads of two sizes settled."""
    large = [parted(100_000, seed=number) for number in range(3)]
    listed = min(taken_ms(lambda one=one: string(size(one, Question()))) for one in large)
    yield "size and list of 12 parts, 100,000 beads in all", ms(listed), "50 ms, as 20 ms for 40,000"
    small = parted(1_500)
    lengths = [400.0 + 50 * number for number in range(10)]
    answered = [(sized := size(small, Question(mm)), string(sized)) for mm in lengths]
    bills = best_ms(lambda: [materials(sized, listed) for sized, listed in answered])
    yield "materials of 12 parts for ten sizes, counted from their lists", ms(bills), "5 ms"
    two = [bytes(Random(number).choices((0, 1), k=MOST_SETTLED)) for number in range(3)]
    settling = min(taken_ms(lambda beads=beads: settled(12, beads, (1.97628, 2.75))) for beads in two)
    yield "2,000 beads of two sizes settled, 12 around", ms(settling), "1 s"
