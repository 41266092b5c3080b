"""The bill of materials: beads by colour, weights, strung length and thread; counts come from the stringing list."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from engine.counting.kinds import Kind
from engine.counting.parts import WorkedPart
from engine.counting.purchase import SPARE, check_spare, covering_spare, grams_to_buy, thread_to_buy_mm, with_spare
from engine.counting.sizes import Size
from engine.counting.stringing import StringingList
from engine.counting.thread import ThreadUse, thread_use


@dataclass(frozen=True)
class ColourNeed:
    """Beads of one colour, their weight, and what to buy with spare: beads and whole grams."""

    code: str
    name: str
    kind: Kind
    beads: int
    grams: float
    buy_beads: int
    buy_grams: int


@dataclass(frozen=True)
class Materials:
    """The bill for a size. Lengths in mm, weights in grams; `source` says where the rope's measures come from.

    `use` is the thread that a bead takes, of which `thread_mm` is made; `buy_thread_mm` is what to buy of it. `spare`
    is what the purchase has, in percent: what was asked for, or more where the length is an estimate.
    """

    length_mm: float
    rope_mm: float
    rounds_per_cm: float
    beads: int
    passes: float
    strung_mm: float
    strung_rule_mm: float
    thread_mm: float
    buy_thread_mm: float
    thickness_mm: float
    source: str
    colours: tuple[ColourNeed, ...]
    spare: float
    spare_asked: float
    threads: int
    finished_mm: float
    use: ThreadUse
    parts: tuple[WorkedPart, ...]

    @property
    def spare_reason(self) -> str:
        """Why more than was asked for is spared, or empty."""
        return "which covers the error of the estimate" if self.spare > self.spare_asked else ""

    @property
    def grams(self) -> float:
        return sum(colour.grams for colour in self.colours)


def materials(size: Size, stringing: StringingList, spare: float = SPARE) -> Materials:
    """The bill of that list. `spare` in percent. Raises SizeError for a spare that is not 0 to 1,000."""
    check_spare(spare)
    covering = covering_spare(size.rope.sure) if size.question.asks_for_length else 0.0
    beads, to_buy = _beads_by_code(stringing), max(spare, covering)
    colours = tuple(
        _need(entry.code, entry.name, kind, beads[entry.code], to_buy)
        for entry, kind in zip(size.pattern.palette, size.kinds, strict=True)
    )
    use = thread_use(size, _beads_by_kind(colours))
    thread_mm = use.of(size.beads, len(stringing.threads))
    return Materials(
        length_mm=size.length_mm,
        rope_mm=size.rope_mm,
        rounds_per_cm=size.rope.rounds_per_cm,
        beads=size.beads,
        passes=size.passes,
        strung_mm=stringing.strung_mm,
        strung_rule_mm=size.rope_mm * size.around,
        thread_mm=thread_mm,
        buy_thread_mm=thread_to_buy_mm(thread_mm, use.measured),
        thickness_mm=size.thickness_mm,
        source=size.rope.source,
        colours=colours,
        spare=to_buy,
        spare_asked=spare,
        threads=len(stringing.threads),
        finished_mm=size.finished_mm,
        use=use,
        parts=stringing.parts,
    )


def _beads_by_code(stringing: StringingList) -> Counter[str]:
    beads: Counter[str] = Counter()
    for thread, numbers in stringing.distinct:
        for run in thread.runs:
            beads[run.code] += run.beads * len(numbers)
    return beads


def _beads_by_kind(colours: Iterable[ColourNeed]) -> Counter[str]:
    beads: Counter[str] = Counter()
    for need in colours:
        beads[need.kind.name] += need.beads
    return beads


def _need(code: str, name: str, kind: Kind, beads: int, spare: float) -> ColourNeed:
    buy = with_spare(beads, spare)
    return ColourNeed(
        code=code,
        name=name,
        kind=kind,
        beads=beads,
        grams=beads / kind.per_gram,
        buy_beads=buy,
        buy_grams=grams_to_buy(buy, kind),
    )
