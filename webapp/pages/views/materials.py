"""The bill on the page: for one size, and for the sizes that are asked for most."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Annotated

from engine.cabinet.bead import Bead
from engine.cabinet.cost import packs_for
from engine.counting.answers import Answer
from engine.counting.findings import (
    Findings,
    bill_thread_grams,
    closing_fittings,
    core_in_words,
    core_reason,
    findings,
    thickness_in_words,
)
from engine.counting.finished import NAMED, asked_in_words, named
from engine.counting.materials import ColourNeed, Materials
from engine.counting.parts import middle_in_words, times_in_words
from engine.counting.questions import NamedSize, Question
from engine.counting.ring_fit import fit_in_words, ring_measures
from engine.counting.size_table import size_table
from engine.counting.sizes import Size
from engine.counting.sure import how_sure
from engine.counting.workshop import Workshop
from engine.pattern.seams import seam_in_words
from engine.units import counted, exact_grams, grams, length, metres, plain
from webapp.pages.forms.size import SizeForm, work_size
from webapp.pages.views.frame import Frame, Head, head, in_terms
from webapp.pages.views.glance import Fact
from webapp.pages.views.measuring import Measuring, measuring
from webapp.pages.views.signs import Sign, signs
from webapp.records import StoredPattern


@dataclass(frozen=True)
class NeedLine:
    """A bead of the bill."""

    sign: Annotated[Sign, "The bead as drawn."]
    need: Annotated[ColourNeed, "Beads, grams, and what to buy."]
    packs: Annotated[str, "How many packs that is, as the cabinet has them; empty where no pack is known."]


@dataclass(frozen=True)
class UsualLine:
    """The bill of a usual size, in one line."""

    name: Annotated[str, "The size's usual name."]
    asked: Annotated[str, "How long and how closed."]
    bill: Annotated[Materials, "What it takes."]


@dataclass(frozen=True)
class PartLine:
    """A part of the rope as it is worked in a size."""

    name: Annotated[str, "What it is called."]
    times: Annotated[str, "How often its chart is worked."]
    beads: Annotated[int, "Its beads."]
    rope_mm: Annotated[float, "How long it is."]
    seam: Annotated[str, "What the seam before it does; empty before the first."]


@dataclass(frozen=True)
class PartTable:
    """The parts of a rope of several."""

    lines: Annotated[tuple[PartLine, ...], "The parts in working order."]
    middle: Annotated[str, "What lies in the middle, and how far a motif is off it; empty of a ring."]


@dataclass(frozen=True)
class MaterialsPage:
    """The bill at `/patterns/{id}/materials`."""

    frame: Frame
    head: Head
    form: Annotated[SizeForm, "The size fields as typed, and what is wrong."]
    kinds: Annotated[tuple[str, ...], "The bead kinds to choose from."]
    sentence: Annotated[str, "The bill in one sentence; empty when something is wrong."]
    bill: Annotated[Materials | None, "The bill; none when something is wrong."]
    lines: Annotated[tuple[NeedLine, ...], "Its beads."]
    buy_grams: Annotated[int, "Whole grams to buy, all beads together."]
    buy_beads: Annotated[int, "Beads with spare, all together."]
    parts: Annotated[PartTable | None, "Its parts; none of a rope of one part."]
    facts: Annotated[tuple[Fact, ...], "Strung length, thread, thickness, hook and findings."]
    measuring: Annotated[Measuring | None, "What to measure, where no swatch stands behind the lengths."]
    usual: Annotated[tuple[UsualLine, ...], "The sizes picked for this pattern, in the same kind and stitch."]
    sizes: Annotated[tuple[tuple[str, str, bool], ...], "Sizes to pick from: key, name, and whether it is picked."]


def materials_page(
    frame: Frame,
    stored: StoredPattern,
    form: SizeForm,
    workshop: Workshop,
    own: Iterable[NamedSize] = (),
    cabinet: Mapping[str, Bead] | None = None,
) -> MaterialsPage:
    """The bill for what the form asks; `own` are finished sizes of the maker's own, `cabinet` are beads by key."""
    done = work_size(stored.pattern, form, workshop, frame.units)
    bill = done.answer.materials if done.answer else None
    needs = bill.colours if bill else ()
    drawn = signs(stored.pattern.palette)
    return MaterialsPage(
        frame=frame,
        head=head(stored),
        form=done.form,
        kinds=tuple(workshop.kinds),
        sentence=done.answer.sentence if done.answer else "",
        bill=bill,
        lines=tuple(
            NeedLine(sign, need, _packs(need, cabinet.get(entry.bead) if cabinet else None))
            for sign, need, entry in zip(drawn, needs, stored.pattern.palette, strict=bool(needs))
        ),
        buy_grams=sum(need.buy_grams for need in needs),
        buy_beads=sum(need.buy_beads for need in needs),
        parts=part_table(done.answer, frame.units),
        facts=_facts(done.answer, frame.units, frame.terms) if done.answer else (),
        measuring=measuring(done.answer.size, frame) if done.answer else None,
        usual=tuple(_usual(done.answer, frame.units)) if done.answer else (),
        sizes=_to_pick(workshop, own),
    )


def _packs(need: ColourNeed, bead: Bead | None) -> str:
    if bead is None or not bead.pack_mg or not need.buy_beads:
        return ""
    return f"{counted(packs_for(need.buy_beads, need.kind, bead), 'pack')} of {exact_grams(bead.pack_mg)}"


def _to_pick(workshop: Workshop, own: Iterable[NamedSize]) -> tuple[tuple[str, str, bool], ...]:
    picked = {size.key for size in workshop.sizes or named()}
    sizes = {size.key: size for size in (*NAMED, *own)}
    return tuple((key, size.name, key in picked) for key, size in sizes.items())


def _facts(answered: Answer, units: str, terms: str) -> tuple[Fact, ...]:
    bill, size = answered.materials, answered.size
    fit = findings(size)
    return (
        Fact("Rope", length(bill.rope_mm, units), _worked(answered)),
        Fact("Finished", length(bill.finished_mm, units), _closed(answered, units)),
        *_ring(answered, units),
        Fact("How sure", in_terms(bill.source, terms), in_terms(how_sure(size), terms)),
        Fact(
            "Strung length",
            metres(bill.strung_mm),
            f"rule of thumb: rope × {size.around} = {metres(bill.strung_rule_mm)}",
        ),
        Fact(
            "Thread",
            f"{metres(bill.thread_mm)}, {grams(bill_thread_grams(answered))}",
            f"on {counted(bill.threads, 'thread')}, tails included, {bill.use.source}; "
            f"buy {metres(bill.buy_thread_mm)}",
        ),
        Fact("Thickness", *_parted(thickness_in_words(size))),
        Fact("Hook", fit.hook, ""),
        Fact("Cord", fit.thread, ""),
        Fact("Needle", fit.needle, ""),
        *(Fact(fitting.name, fitting.measure, fitting.reason) for fitting in closing_fittings(size, units)),
        _core(size, fit, units),
    )


def _worked(answered: Answer) -> str:
    """How often the chart is worked; of several parts a table says it."""
    bill = answered.materials
    return f"{plain(bill.passes, 2)} × the chart" if answered.pattern.one_chart else f"{len(bill.parts)} parts"


def part_table(answered: Answer | None, units: str) -> PartTable | None:
    """The parts of a rope of several, as they are worked in that size."""
    if answered is None or len(answered.materials.parts) == 1:
        return None
    lines = tuple(
        PartLine(
            name=part.name,
            times=times_in_words(part.times),
            beads=part.beads,
            rope_mm=part.rope_mm,
            seam=seam_in_words(part.seam) if part.seam else "",
        )
        for part in answered.materials.parts
    )
    return PartTable(lines, middle_in_words(answered.size, units))


def _closed(answered: Answer, units: str) -> str:
    """How it is closed, and what was asked for where another length is nearest."""
    size, closed = answered.size, answered.size.closure.ending
    asked, becomes = length(size.length_mm, units), length(size.finished_mm, units)
    return closed if asked == becomes else f"{closed}; {asked} was asked for"


def _ring(answered: Answer, units: str) -> tuple[Fact, ...]:
    size = answered.size
    if not size.closure.worked_shut:
        return ()
    closes, closing = size.closes, size.closing
    turn = f"turns {plain(abs(closing.beads), 1)} beads at the seam" if closing.beads else "no turn at the seam"
    joined = "the last part to the first" if size.pattern.in_parts else "end to start"
    seam = f"; the seam joins {joined}" if size.joins_end_to_start else ""
    return (
        Fact("Ring", ring_measures(size, units), " ".join(fit_in_words(size, units))),
        Fact("Seam", "closes in colour" if closes else "does not close in colour", turn + seam),
    )


def _core(size: Size, fit: Findings, units: str) -> Fact:
    hose, measure = _parted(core_in_words(size, fit, units))
    return Fact("Core", hose, "; ".join(filter(None, (core_reason(fit), measure))))


def _parted(words: str) -> tuple[str, str]:
    """Words before and behind a colon, as a fact and what is said beside it."""
    first, _, rest = words.partition(":")
    return first, rest.strip()


def _usual(answered: Answer, units: str) -> Iterator[UsualLine]:
    """A size that cannot be worked in this rope is left out."""
    for sized, usual in size_table(answered, units):
        yield UsualLine(sized.name, _asked(sized.question, units), usual.materials)


def _asked(question: Question, units: str) -> str:
    return f"{asked_in_words(question, units)} {question.ending.ending}".strip()
