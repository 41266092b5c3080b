"""Lists, bills and answers as JSON; the first two are stable, because scripts of other people read them."""

from __future__ import annotations

from typing import Any

from engine.counting.answers import Answer
from engine.counting.materials import Materials
from engine.counting.stringing import StringingList


def stringing_json(stringing: StringingList) -> dict[str, Any]:
    """`beads`, `repeat` and `runs` of one pass of the chart, `threads` of the size asked for; lengths in mm."""
    return {
        "beads": stringing.beads, "repeat": stringing.repeat, "runs": [list(run) for run in stringing.runs],
        "threads": [{"beads": thread.beads, "strung_mm": thread.strung_mm, "runs": [list(run) for run in thread.runs]}
                    for thread in stringing.threads]}


def materials_json(bill: Materials) -> dict[str, Any]:
    """Unrounded millimetres and grams."""
    names = ("length_mm", "rope_mm", "rounds_per_cm", "beads", "passes", "strung_mm", "strung_rule_mm", "thread_mm",
             "thickness_mm", "source")
    colours = [{"code": need.code, "name": need.name, "beads": need.beads, "grams": need.grams,
                "buy_grams": need.buy_grams} for need in bill.colours]
    return {**{name: getattr(bill, name) for name in names}, "colours": colours}


def answer_json(answer: Answer) -> dict[str, Any]:
    """The sentence, the bill as its table, and what the threads and the closure come to."""
    size = answer.size
    return {
        "sentence": answer.sentence, "table": materials_json(answer.materials), "finished_mm": size.finished_mm,
        "threads": len(answer.stringing.threads), "joins": answer.stringing.joins, "closes": size.closes,
        "closing": {"beads": size.closing.beads, "degrees": size.closing.degrees}, "measured": size.rope.measured}
