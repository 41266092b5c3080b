"""What is asked beside an answer as JSON: unrounded millimetres and grams; runs in stringing order."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from engine.counting.ran_out import OutOfColour, OutOfThread
from engine.counting.size_table import SizeRow
from engine.counting.stock import Kit, Longest
from engine.counting.stopped import Remaining, ToBuy
from webapp.exchange.results import materials_json


def compared_json(rows: Iterable[SizeRow]) -> list[dict[str, Any]]:
    """Each size or kind with its bill."""
    return [
        {
            "name": row.size.name,
            "sentence": row.answer.sentence,
            "finished_mm": row.answer.size.finished_mm,
            "measured": row.answer.size.rope.measured,
            "table": materials_json(row.answer.materials),
        }
        for row in rows
    ]


def longest_json(found: Longest) -> dict[str, Any]:
    """The longest rope of the beads in hand, the colour that ends it, and what is left over."""
    return {
        "beads": found.size.beads,
        "passes": found.size.passes,
        "rope_mm": found.size.rope_mm,
        "finished_mm": found.size.finished_mm,
        "limit": found.limit,
        "left": [{"code": code, "beads": beads} for code, beads in found.left],
    }


def kit_json(found: Kit) -> dict[str, Any]:
    """The shopping list for all pieces."""
    lines = [
        {
            "code": line.code,
            "name": line.name,
            "beads": line.beads,
            "grams": line.grams,
            "packs": line.packs,
            "cost": line.cost,
        }
        for line in found.lines
    ]
    return {
        "pieces": found.pieces,
        "lines": lines,
        "thread_mm": found.thread_mm,
        "cost": found.cost,
        "each": found.each,
    }


def remaining_json(left: Remaining) -> dict[str, Any]:
    """What is still to string, from where, and what to buy."""
    return {
        "worked": left.worked,
        "next_round": left.next_round,
        "next_place": left.next_place,
        "beads": left.beads,
        "strung_mm": left.strung_mm,
        "runs": [list(run) for run in left.runs],
        "to_buy": [_to_buy(need) for need in left.to_buy],
    }


def out_of_thread_json(out: OutOfThread) -> dict[str, Any]:
    """From where to go on, what is strung anew, and the thread that is wanting."""
    rest = {"beads": out.rest.beads, "strung_mm": out.rest.strung_mm, "runs": [list(run) for run in out.rest.runs]}
    return {
        "worked": out.remaining.worked,
        "next_round": out.remaining.next_round,
        "next_place": out.remaining.next_place,
        "thread": out.number,
        "rest": rest,
        "joins": list(out.joins),
        "beads": out.remaining.beads,
        "rest_thread_mm": out.rest_mm,
        "thread_mm": out.all_mm,
        "left_mm": out.left_mm,
        "works": out.works,
        "buy_mm": out.buy_mm,
    }


def out_of_colour_json(out: OutOfColour) -> dict[str, Any]:
    """Where the colour ends, and what to buy of it and of others that are short."""
    short = [{"wanted": one.wanted, "left": one.left, **_to_buy(one.buy)} for one in out.short]
    return {
        "code": out.code,
        "name": out.name,
        "worked": out.worked,
        "had": out.had,
        "next_bead": out.next_bead,
        "next_round": out.next_round,
        "next_place": out.next_place,
        "joins": list(out.joins),
        "short": short,
    }


def _to_buy(need: ToBuy) -> dict[str, Any]:
    return {"code": need.code, "name": need.name, "beads": need.beads, "grams": need.grams}
