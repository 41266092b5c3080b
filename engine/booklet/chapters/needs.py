"""What a buyer needs: beads by colour, thread, hook, findings and tools, each with where its number comes from."""

from __future__ import annotations

from dataclasses import dataclass

from engine.booklet.choices import Choices
from engine.booklet.measures import Measures
from engine.booklet.terms import TERMS
from engine.counting.answers import Answer
from engine.counting.closures import Closure
from engine.counting.findings import CORD_MM, EYE_PIN_LONG_MM, EYE_PIN_MM, Findings
from engine.drawing.symbols import assigned
from engine.pattern.pattern import Pattern
from engine.units import count, counted, grams, percent, plain

LEAST_CHANNEL_MM = 2.8  # the thinnest hose sold


@dataclass(frozen=True)
class BeadLine:
    """A bead of the bill: code and name, what it is, its symbol in words, beads, weight, and what to buy."""

    code: str
    name: str
    sort: str
    maker_code: str
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

    @property
    def has_codes(self) -> bool:
        """Whether a maker's code is known for any bead."""
        return any(bead.maker_code for bead in self.beads)


def needs(pattern: Pattern, answer: Answer, supplies: Findings, choices: Choices) -> Needs:
    """What the answered size needs; beads that it does not use are left out."""
    bill, terms = answer.materials, TERMS[choices.terms]
    lines = tuple(
        BeadLine(
            code=need.code,
            name=need.name,
            sort=", ".join(filter(None, (need.kind.name, entry.finish))),
            maker_code=entry.maker_code,
            symbol=symbol.name,
            beads=count(need.beads),
            grams=grams(need.grams),
            buy=f"{counted(need.buy_beads, 'bead')}, {count(need.buy_grams)} g",
        )
        for need, entry, symbol in zip(bill.colours, pattern.palette, assigned(pattern.palette), strict=True)
        if need.beads
    )
    return Needs(
        beads=lines,
        total_beads=count(bill.beads),
        total_grams=grams(bill.grams),
        total_buy=f"{count(sum(need.buy_grams for need in bill.colours))} g",
        note=_note(answer),
        things=(
            *((name, terms.spelled(text)) for name, text in things(answer, supplies, Measures(choices.units))),
            *_skill_and_time(choices),
        ),
    )


def _skill_and_time(choices: Choices) -> tuple[tuple[str, str], ...]:
    facts = (("Skill level", _ended(choices.skill)), ("Time", _ended(choices.own.hours)))
    return tuple(fact for fact in facts if fact[1])


def _ended(text: str) -> str:
    """As a sentence, if it is anything."""
    return f"{text[0].upper()}{text[1:].rstrip('.')}." if text else ""


def things(answer: Answer, supplies: Findings, measures: Measures) -> tuple[tuple[str, str], ...]:
    """Thread, hook, needles, and what the closure asks for."""
    closure = answer.size.closure
    core = _core(supplies, closure, measures)
    return (
        ("Thread", _thread(answer, supplies, measures)),
        ("Hook", f"{supplies.hook[0].upper()}{supplies.hook[1:]}."),
        ("Needles", measures.beside(f"{supplies.needle[0].upper()}{supplies.needle[1:]}.")),
        *_closing(supplies, closure, measures),
        *((("Core", core),) if core else ()),
        ("Tools", f"{_TOOLS} {closure.tools}".strip()),
    )


def may_measure_core(supplies: Findings, closure: Closure) -> bool:
    """Whether a core may go in that only the worked rope can decide."""
    return closure.takes_core and not supplies.measured and supplies.channel_mm >= LEAST_CHANNEL_MM


_TOOLS = "Ruler, bead mat, pencil, stitch marker, scissors; old cutters and safety glasses to break a bead."


def _note(answer: Answer) -> str:
    bill = answer.materials
    used = dict.fromkeys(need.kind for need in bill.colours if need.beads)
    per_gram = "; ".join(
        f"{kind.name}: {plain(kind.per_gram, 1)} beads to the gram, {plain(kind.fewest, 1)} to buy" for kind in used
    )
    reason = f", {bill.spare_reason}," if bill.spare_reason else ""
    return (
        f"“Buy” adds {percent(bill.spare)}{reason} and is rounded up to whole grams. Counted with {per_gram}; "
        "beads differ, so go by the number of beads where you can."
    )


def _thread(answer: Answer, supplies: Findings, measures: Measures) -> str:
    bill = answer.materials
    tails = "tails included" if bill.threads == 1 else f"on {count(bill.threads)} threads, tails included"
    taken = f"as the maker’s unravelled beads took, {measures.small(bill.use.per_bead_mm)} a bead"
    return (
        f"{supplies.thread[0].upper()}{supplies.thread[1:]}: buy {measures.thread(bill.buy_thread_mm)}. "
        f"{measures.thread(bill.thread_mm)} are reckoned with, {tails}; "
        f"{taken if bill.use.measured else bill.use.source}. Strung, the beads measure "
        f"{measures.strung(bill.strung_mm)}."
    )


def _closing(supplies: Findings, closure: Closure, measures: Measures) -> tuple[tuple[str, str], ...]:
    if not closure.needs:
        return ()
    inside = (
        f"{measures.between(*supplies.cap_mm)} inside"
        if supplies.measured
        else f"about {measures.roughly(*supplies.cap_mm)} inside (measure your rope before you buy them)"
    )
    needs = closure.needs.format(
        inside=inside,
        pin=plain(EYE_PIN_MM, 2),
        long=measures.plain(EYE_PIN_LONG_MM),
        button=measures.plain(supplies.button_mm),
        loop=supplies.loop_beads,
        cord=measures.about(CORD_MM),
    )
    return (("Findings", needs),)


def _core(supplies: Findings, closure: Closure, measures: Measures) -> str:
    if closure.takes_core and supplies.core is not None:
        return (
            f"For a firm rope flexible tubing or cord, {measures.small(supplies.core.outside_mm)} thick. The channel "
            f"is about {measures.small(supplies.channel_mm)} wide."
        )
    if may_measure_core(supplies, closure):
        wide = measures.roughly(*supplies.channel_range_mm)
        return (
            f"For a firm rope flexible tubing or cord. The channel is about {wide} wide: measure your rope before you "
            "buy it."
        )
    return ""
