"""The reply to a customer, in the maker's words around the numbers of an answer, as text and as a table."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from engine.counting.answers import Answer
from engine.counting.findings import bill_thread_grams, fittings, thickness_in_words, tools_for
from engine.counting.materials import Materials
from engine.counting.offers import longer_threads
from engine.counting.ring_fit import fit_in_words, ring_measures
from engine.counting.rope import STITCH_NAMES
from engine.units import count, counted, grams, length, metres, percent, plain

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


def reply(answer: Answer, words: Words) -> str:
    """The reply in plain text: paragraphs with an empty line between them."""
    parts = [words.greeting.strip(), f"{answer.sentence}{_finished(answer, words.units)}"]
    for section in SECTIONS:
        if section in words.sections:
            parts.append(WRITTEN[section](answer, words.units).replace(STITCH_NAMES["single"], words.single))
    parts.append(words.closing.strip())
    return "\n\n".join(filter(None, parts))


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
    """What has to be said of the length: what a ring measures, and how far it is from what was asked for."""
    size = answer.size
    asked, becomes = length(size.length_mm, units), length(size.finished_mm, units)
    sentences = [f"It is {ring_measures(size, units)}."] if size.closure.worked_shut else []
    if size.question.asks_for_length and asked != becomes:
        sentences.append(f"You asked for {asked}; it comes out at {becomes}.")
    sentences += fit_in_words(size, units)
    return "".join(f" {sentence}" for sentence in sentences)


def _beads(answer: Answer, units: str) -> str:
    *rows, total = reply_rows(answer)
    kinds = dict.fromkeys(need.kind for need in answer.materials.colours if need.beads)
    sorts = "; ".join(f"{kind.name}, about {plain(kind.per_gram, 1)} to a gram" for kind in kinds)
    lines = [f"{row.bead}: {row.beads} beads, {row.weight}, buy {row.buy}" for row in rows]
    total_line = (
        f"All together {total.beads} beads, {total.weight}, buy {total.buy}. {spare_in_words(answer.materials)}"
    )
    return "\n".join((f"Beads: {sorts}.", *lines, total_line))


def spare_in_words(bill: Materials) -> str:
    """What the grams to buy count in: "To buy counts 10 % spare, and that a gram may hold few beads."."""
    reason = ", because the length is an estimate" if bill.spare_reason else ""
    return f"To buy counts {percent(bill.spare)} spare{reason}, and that a gram may hold few beads."


def _threads(answer: Answer, units: str) -> str:
    bill, joins = answer.materials, answer.stringing.joins
    joined = f"with {joins_in_words(joins)}" if joins else "without a join"
    how = "as my own swatch took" if bill.use.measured else "an estimate"
    thickness = thickness_in_words(answer.size).partition(":")[0]
    return (
        f"The rope is {length(bill.rope_mm, units)} long, its thickness {thickness}. "
        f"Strung, the beads are {metres(bill.strung_mm)} long, {joined}. "
        f"Thread: {tools_for(answer.size).thread}; it takes about {metres(bill.thread_mm)}, "
        f"{grams(bill_thread_grams(answer))} ({how}): buy {metres(bill.buy_thread_mm)}."
        f"{_fewer_joins(answer)}"
    )


def joins_in_words(joins: int) -> str:
    """ "no join", "one join", "1,200 joins"."""
    return {0: "no join", 1: "one join"}.get(joins, counted(joins, "join"))


def _fewer_joins(answer: Answer) -> str:
    """What longer threads would spare, where one pass a thread makes many."""
    longer = longer_threads(answer)
    if longer is None:
        return ""
    return (
        f" With up to {plain(longer.metres, 1)} m of beads on a thread it has {joins_in_words(longer.threads - 1)} "
        f"and takes {metres(longer.saved_mm)} of thread less."
    )


def _findings(answer: Answer, units: str) -> str:
    return "\n".join(f"{fitting.name}: {fitting.measure}" for fitting in fittings(answer, units))


def _sure(answer: Answer, units: str) -> str:
    source = answer.materials.source.replace("your swatch", "my swatch", 1)
    if answer.size.rope.measured:
        return f"The length rests on {source}."
    return f"How sure the length is: {source}. Work a piece and measure it before you string the rest."


WRITTEN = {"beads": _beads, "threads": _threads, "findings": _findings, "sure": _sure}
