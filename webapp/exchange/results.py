"""Lists, bills and answers as JSON; the first two are stable, because scripts of other people read them."""

from __future__ import annotations

from typing import Any

from engine.counting.answers import Answer
from engine.counting.closings import closings
from engine.counting.doubts import doubts
from engine.counting.findings import bill_thread_grams, fittings
from engine.counting.materials import Materials
from engine.counting.offers import offers
from engine.counting.reply import Words, reply
from engine.counting.sizes import Workshop, main_kind
from engine.counting.stringing import StringingList
from engine.counting.sure import how_sure
from engine.pattern.pattern import Pattern


def stringing_json(stringing: StringingList) -> dict[str, Any]:
    """`beads`, `repeat` and `runs` of one pass of the chart, `threads` of the size asked for; lengths in mm."""
    return {
        "beads": stringing.beads,
        "repeat": stringing.repeat,
        "runs": [list(run) for run in stringing.runs],
        "threads": [
            {"beads": thread.beads, "strung_mm": thread.strung_mm, "runs": [list(run) for run in thread.runs]}
            for thread in stringing.threads
        ],
    }


def materials_json(bill: Materials) -> dict[str, Any]:
    """Unrounded millimetres and grams."""
    names = (
        "length_mm",
        "rope_mm",
        "rounds_per_cm",
        "beads",
        "passes",
        "strung_mm",
        "strung_rule_mm",
        "thread_mm",
        "thickness_mm",
        "source",
    )
    colours = [
        {"code": need.code, "name": need.name, "beads": need.beads, "grams": need.grams, "buy_grams": need.buy_grams}
        for need in bill.colours
    ]
    return {**{name: getattr(bill, name) for name in names}, "colours": colours}


def answer_json(answer: Answer) -> dict[str, Any]:
    """The sentence, the bill as its table, and what the threads and the closure come to."""
    size = answer.size
    return {
        "sentence": answer.sentence,
        "table": materials_json(answer.materials),
        "finished_mm": size.finished_mm,
        "threads": len(answer.stringing.threads),
        "joins": answer.stringing.joins,
        "closes": size.closes,
        "closing": {"beads": size.closing.beads, "degrees": size.closing.degrees},
        "measured": size.rope.measured,
        "thread_per_bead_mm": answer.materials.use.per_bead_mm,
        "thread_source": answer.materials.use.source,
    }


def beside_json(pattern: Pattern, answer: Answer, words: Words, workshop: Workshop) -> dict[str, Any]:
    """What stands beside an answer: questions to ask back, what goes with the rope, lengths to offer, the reply."""
    question, size = answer.size.question, answer.size
    kind = main_kind(pattern, question, workshop)
    found = fittings(size, kind, answer.materials, workshop, words.units)
    rings = closings(pattern, question, workshop) if question.closure == "ring" else ()
    return {
        "how_sure": how_sure(pattern, size, workshop),
        "doubts": list(doubts(question, size, words.units)),
        "findings": [fitting._asdict() for fitting in found],
        "offers": [
            {"round": rounding, "beads": offered.beads, "passes": offered.passes, "finished_mm": offered.finished_mm}
            for rounding, offered in offers(pattern, question, workshop)
        ],
        "rings": [
            {
                "beads": ring.beads,
                "passes": ring.passes,
                "girth_mm": ring.girth_mm,
                "diameter_mm": ring.diameter_mm,
                "degrees": ring.drift.degrees,
            }
            for ring in rings
        ],
        "thread_grams": bill_thread_grams(answer.materials, size, kind),
        "reply": reply(pattern, answer, words, workshop),
    }
