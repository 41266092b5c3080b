"""The bill of materials: beads by colour, weights, strung length and thread; counts come from the stringing list."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from engine.counting.kinds import Kind
from engine.counting.sizes import Size, Workshop, kinds_of
from engine.counting.stringing import StringingList
from engine.counting.thread import ThreadUse, thread_use
from engine.errors import SizeError
from engine.pattern.pattern import Pattern

SPARE = 10.0  # percent; the usual advice (common practice, no source)
MOST_SPARE = 1000.0


@dataclass(frozen=True)
class ColourNeed:
    """Beads of one colour, their weight, and what to buy with spare: beads and whole grams."""

    code: str
    name: str
    kind: str
    beads: int
    grams: float
    buy_beads: int
    buy_grams: int


@dataclass(frozen=True)
class Materials:
    """The bill for a size. Lengths in mm, weights in grams; `source` says where the rope's measures come from.

    `use` is the thread that a bead takes, of which `thread_mm` is made.
    """

    length_mm: float
    rope_mm: float
    rounds_per_cm: float
    beads: int
    passes: float
    strung_mm: float
    strung_rule_mm: float
    thread_mm: float
    thickness_mm: float
    source: str
    colours: tuple[ColourNeed, ...]
    spare: float
    threads: int
    finished_mm: float
    use: ThreadUse

    @property
    def grams(self) -> float:
        return sum(colour.grams for colour in self.colours)


def materials(
    pattern: Pattern, size: Size, stringing: StringingList, workshop: Workshop | None = None, spare: float = SPARE
) -> Materials:
    """The bill of that list. `spare` in percent. Raises SizeError for a spare that is not 0 to 1,000."""
    if not 0 <= spare <= MOST_SPARE:
        raise SizeError("Spare is between 0 and 1,000 percent.", "spare")
    workshop = workshop or Workshop()
    kinds = kinds_of(pattern, size.question, workshop)
    beads = _beads_by_code(stringing)
    colours = tuple(
        _need(entry.code, entry.name, kind, beads[entry.code], spare)
        for entry, kind in zip(pattern.palette, kinds, strict=True)
    )
    use = thread_use(size.rope, size.stitch, _beads_by_kind(colours), workshop.swatches, bool(size.question.pass_mm))
    return Materials(
        size.length_mm,
        size.rope_mm,
        size.rope.rounds_per_cm,
        size.beads,
        size.passes,
        stringing.strung_mm,
        size.rope_mm * size.around,
        use.of(size.beads, len(stringing.threads)),
        size.thickness_mm,
        size.rope.source,
        colours,
        spare,
        len(stringing.threads),
        size.finished_mm,
        use,
    )


def _beads_by_code(stringing: StringingList) -> Counter[str]:
    found: Counter[str] = Counter()
    for thread, numbers in stringing.distinct:
        for code, beads in thread.runs:
            found[code] += beads * len(numbers)
    return found


def _beads_by_kind(colours: Iterable[ColourNeed]) -> Counter[str]:
    found: Counter[str] = Counter()
    for need in colours:
        found[need.kind] += need.beads
    return found


def _need(code: str, name: str, kind: Kind, beads: int, spare: float) -> ColourNeed:
    buy = ceil(beads * (1 + Fraction(str(spare)) / 100))
    grams = ceil(Fraction(buy) / Fraction(str(kind.per_gram)))
    return ColourNeed(code, name, kind.name, beads, beads / kind.per_gram, buy, grams)
