"""The reply to a customer, in the maker's words around the numbers of an answer, as text and as a table."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from engine.counting.answers import Answer
from engine.counting.findings import bill_thread_grams, fittings
from engine.counting.offers import longer_threads
from engine.counting.rope import STITCH_NAMES
from engine.counting.sizes import Workshop, main_kind
from engine.pattern.pattern import Pattern
from engine.units import count, grams, length, metres, percent, plain

SECTIONS = ("beads", "threads", "findings", "sure")
USUAL = ("beads", "threads", "sure")


@dataclass(frozen=True)
class Words:
    """What stands round the numbers: greeting and closing as the maker writes them, units, and which SECTIONS.

    `single` is what the maker calls the US single crochet.
    """

    greeting: str = ""
    closing: str = ""
    units: str = "cm"
    sections: tuple[str, ...] = USUAL
    single: str = STITCH_NAMES["single"]


class ReplyRow(NamedTuple):
    """One colour of the reply: its bead, how many, what they weigh, and whole grams to buy."""

    bead: str
    beads: str
    weight: str
    buy: str


HEADS = ReplyRow("Bead", "Beads", "Weight", "To buy")


def reply(pattern: Pattern, answer: Answer, words: Words, workshop: Workshop | None = None) -> str:
    """The reply in plain text: paragraphs with an empty line between them."""
    parts = [words.greeting.strip(), f"{answer.sentence}{_finished(answer, words.units)}"]
    made = {"beads": _beads, "threads": _threads, "findings": _findings, "sure": _sure}
    parts += [
        made[section](pattern, answer, words.units, workshop or Workshop()).replace(
            STITCH_NAMES["single"], words.single
        )
        for section in SECTIONS
        if section in words.sections
    ]
    return "\n\n".join(part for part in (*parts, words.closing.strip()) if part)


def reply_rows(answer: Answer) -> tuple[ReplyRow, ...]:
    """The beads of the reply as a table, those that are needed, and all together."""
    bill = answer.materials
    rows = [
        ReplyRow(f"{need.code} {need.name}".strip(), count(need.beads), grams(need.grams), f"{count(need.buy_grams)} g")
        for need in bill.colours
        if need.beads
    ]
    bought = sum(need.buy_grams for need in bill.colours)
    return *rows, ReplyRow("All", count(bill.beads), grams(bill.grams), f"{count(bought)} g")


def _finished(answer: Answer, units: str) -> str:
    size = answer.size
    asked, becomes = length(size.length_mm, units), length(size.finished_mm, units)
    return "" if asked == becomes else f" You asked for {asked}; so worked it becomes {becomes}."


def _beads(pattern: Pattern, answer: Answer, units: str, workshop: Workshop) -> str:
    *rows, total = reply_rows(answer)
    lines = [f"{row.bead}: {row.beads} beads, {row.weight}, buy {row.buy}" for row in rows]
    spare = f"To buy counts {percent(answer.materials.spare)} spare."
    return "\n".join((*lines, f"All together {total.beads} beads, {total.weight}. {spare}"))


def _threads(pattern: Pattern, answer: Answer, units: str, workshop: Workshop) -> str:
    bill, joins = answer.materials, answer.stringing.joins
    joined = {0: "without a join", 1: "with one join"}.get(joins, f"with {count(joins)} joins")
    weight = grams(bill_thread_grams(bill, answer.size, main_kind(pattern, answer.size.question, workshop)))
    how = "as my own swatch took" if bill.use.measured else "an estimate"
    return (
        f"Strung, the beads are {metres(bill.strung_mm)} long, {joined}. "
        f"The thread takes about {metres(bill.thread_mm)}, {weight} ({how})."
        f"{_fewer_joins(pattern, answer, workshop)}"
    )


def _fewer_joins(pattern: Pattern, answer: Answer, workshop: Workshop) -> str:
    """What longer threads would spare, where one pass a thread makes many."""
    longer = longer_threads(pattern, answer.size, answer.stringing, workshop)
    if longer is None:
        return ""
    joins = longer.threads - 1
    told = {0: "no join", 1: "one join"}.get(joins, f"{count(joins)} joins")
    return (
        f" With up to {plain(longer.metres, 1)} m of beads on a thread it has {told} and takes "
        f"{metres(longer.saved_mm)} of thread less."
    )


def _findings(pattern: Pattern, answer: Answer, units: str, workshop: Workshop) -> str:
    kind = main_kind(pattern, answer.size.question, workshop)
    return "\n".join(_fitting_lines(fittings(answer.size, kind, answer.materials, workshop, units)))


def _fitting_lines(found: tuple[tuple[str, str, str, str], ...]) -> Iterator[str]:
    return (f"{name}: {measure}" for name, measure, _, _ in found)


def _sure(pattern: Pattern, answer: Answer, units: str, workshop: Workshop) -> str:
    source = answer.materials.source.replace("your swatch", "my swatch", 1)
    if answer.size.rope.measured:
        return f"The length rests on {source}."
    return f"How sure the length is: {source}. Work a piece and measure it before you string the rest."
