"""What a buyer needs: beads by colour, thread, hook, findings and tools, each with where its number comes from."""

from __future__ import annotations

from dataclasses import dataclass

from engine.booklet.measures import Measures
from engine.booklet.words import counted
from engine.counting.answers import Answer
from engine.counting.findings import CAP_PLAY_MM, EYE_PIN_MM, Findings, findings
from engine.counting.kinds import Kind
from engine.counting.sizes import Question, Workshop, kinds_of
from engine.drawing.symbols import assigned
from engine.pattern.pattern import Pattern
from engine.units import count, grams, percent, plain

LEAST_CHANNEL_MM = 2.8  # the thinnest hose sold


@dataclass(frozen=True)
class BeadLine:
    """A bead of the bill: code and name, what it is, its symbol in words, beads, weight, and what to buy."""

    code: str
    name: str
    sort: str
    symbol: str
    beads: str
    grams: str
    buy: str


@dataclass(frozen=True)
class Needs:
    """The bill: a line a bead, the sums, what they rest on, and the other things by name and description."""

    beads: tuple[BeadLine, ...]
    total_beads: str
    total_grams: str
    total_buy: str
    note: str
    things: tuple[tuple[str, str], ...]


def needs(pattern: Pattern, answer: Answer, found: Findings, workshop: Workshop, measures: Measures) -> Needs:
    """What the answered size needs; beads that it does not use are left out."""
    kinds = {kind.name: kind for kind in kinds_of(pattern, answer.size.question, workshop)}
    bill = answer.materials
    lines = tuple(
        BeadLine(
            need.code,
            need.name,
            ", ".join(filter(None, (need.kind, entry.finish, entry.maker_code))),
            symbol.name,
            count(need.beads),
            grams(need.grams),
            f"{counted(need.buy_beads, 'bead')}, {count(need.buy_grams)} g",
        )
        for need, entry, symbol in zip(bill.colours, pattern.palette, assigned(pattern.palette), strict=True)
        if need.beads
    )
    return Needs(
        lines,
        count(bill.beads),
        grams(bill.grams),
        f"{count(sum(need.buy_grams for need in bill.colours))} g",
        _note(answer, kinds, {need.kind for need in bill.colours if need.beads}),
        things(answer, found, measures),
    )


def found_for(pattern: Pattern, answer: Answer, workshop: Workshop) -> Findings:
    """The findings of that size, for the kind most beads of the chart have."""
    kind = main_kind(pattern, answer.size.question, workshop)
    return findings(answer.size, kind.name, kind.hole_mm)


def main_kind(pattern: Pattern, question: Question, workshop: Workshop) -> Kind:
    """The kind asked for, else the one most beads of the chart have."""
    kinds = kinds_of(pattern, question, workshop)
    return kinds[max(range(len(kinds)), key=pattern.chart.count)]


def things(answer: Answer, found: Findings, measures: Measures) -> tuple[tuple[str, str], ...]:
    """Thread, hook, needles, and what the closure asks for."""
    closure = answer.size.question.closure
    core = _core(found, closure, measures)
    return (
        ("Thread", _thread(answer, found, measures)),
        ("Hook", f"{found.hook[0].upper()}{found.hook[1:]}."),
        ("Needles", f"{found.needle[0].upper()}{found.needle[1:]}."),
        *_closing(found, closure, measures),
        *((("Core", core),) if core else ()),
        ("Tools", TOOLS[closure]),
    )


def may_measure_core(found: Findings, closure: str) -> bool:
    """Whether a core may go in that only the worked rope can decide."""
    return closure != "ring" and not found.measured and found.channel_mm >= LEAST_CHANNEL_MM


_SMALL = "Ruler, bead mat, pencil, stitch marker, scissors; old cutters and safety glasses to break a bead."
TOOLS = {
    "open": _SMALL,
    "ring": _SMALL,
    "glued": f"{_SMALL} A fine file to roughen the ends.",
    "clasp": f"{_SMALL} Round-nose pliers, flat pliers and side cutters for the wire.",
}


def _note(answer: Answer, kinds: dict[str, Kind], used: set[str]) -> str:
    per_gram = "; ".join(
        f"{name}: {plain(kind.per_gram, 1)} beads to the gram" for name, kind in kinds.items() if name in used
    )
    return (
        f"“Buy” adds {percent(answer.materials.spare)} and is rounded up to whole grams. Counted with {per_gram}; "
        "beads differ, so go by the number of beads where you can."
    )


def _thread(answer: Answer, found: Findings, measures: Measures) -> str:
    bill = answer.materials
    tails = "tails included" if bill.threads == 1 else f"on {count(bill.threads)} threads, tails included"
    taken = f"as the maker’s unravelled beads took, {measures.small(bill.use.per_bead_mm)} a bead"
    return (
        f"{found.thread[0].upper()}{found.thread[1:]}: {measures.thread(bill.thread_mm)}, {tails}; "
        f"{taken if bill.use.measured else bill.use.source}. Strung, the beads measure "
        f"{measures.strung(bill.strung_mm)}."
    )


def _closing(found: Findings, closure: str, measures: Measures) -> tuple[tuple[str, str], ...]:
    inside = (
        f"{measures.between(*found.cap_mm)} inside"
        if found.cap_mm
        else f"as wide inside as your rope is thick or up to {measures.small(CAP_PLAY_MM)} more (measure first)"
    )
    if closure == "clasp":
        return (
            (
                "Findings",
                f"A toggle clasp; 2 bead caps, {inside}; 2 eye pins, wire {plain(EYE_PIN_MM, 2)} mm "
                "(22 gauge) or thicker; 3 jump rings.",
            ),
        )
    if closure == "glued":
        return (("Findings", f"A clasp with ends to glue in, {inside}; a glue for metal and glass."),)
    return ()


def _core(found: Findings, closure: str, measures: Measures) -> str:
    if closure != "ring" and found.core is not None:
        return (
            f"For a firm rope flexible tubing or cord, {measures.small(found.core.outside_mm)} thick. The channel is "
            "about "
            f"{measures.small(found.channel_mm)} wide."
        )
    if may_measure_core(found, closure):
        return "For a firm rope flexible tubing or cord. Measure first: it must go through your rope."
    return ""
