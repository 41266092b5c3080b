"""The bill of materials of a pattern file, as text or JSON."""

from __future__ import annotations

import json
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator

from engine.counting.answers import Answer, answer
from engine.counting.findings import thickness_in_words
from engine.counting.options import USUAL, read_plan, read_spare
from engine.counting.parts import middle_in_words, times_in_words
from engine.counting.ring_fit import fit_in_words, ring_measures
from engine.units import count, fixed, grams, metres, millimetres, percent
from webapp.commands import files
from webapp.exchange.results.lists import materials_json


def add_options(parser: ArgumentParser) -> None:
    files.add_file(parser)
    parser.add_argument("--json", action="store_true", help="as JSON, with unrounded millimetres and grams")
    parser.add_argument("--spare", metavar="PERCENT", help="beads to buy beyond those worked (default 10)")
    files.add_threads(parser)
    files.add_hand(parser)
    files.add_size(parser)


def run(chosen: Namespace) -> int:
    kept = files.settings(chosen)
    answered = answer(
        files.pattern(chosen),
        files.question(chosen),
        files.own(chosen),
        read_plan(chosen.threads),
        read_spare(chosen.spare, kept.spare),
        kept.units,
    )
    if chosen.json:
        print(json.dumps(materials_json(answered.materials), ensure_ascii=False))
    else:
        print("\n".join(_lines(answered, kept.units, chosen.closure == USUAL)))
    return 0


def _lines(answered: Answer, units: str, usual: bool) -> Iterator[str]:
    bill = answered.materials
    size = answered.size
    yield answered.sentence
    if size.closure.worked_shut:
        yield f"The ring is {ring_measures(size, units)}."
    yield from fit_in_words(size, units)
    if usual:
        yield f"Assumed: {size.closure.label.lower()}."
    yield ""
    reason = f", {bill.spare_reason}" if bill.spare_reason else ""
    wide = max(len(f"{need.code} {need.name}") for need in bill.colours)
    heavy = max(8, *(len(grams(need.grams)) for need in bill.colours))
    yield f"{'Bead':{wide}}  {'beads':>8}  {'grams':>{heavy}}  buy with {percent(bill.spare)} spare{reason}"
    for need in bill.colours:
        named = f"{need.code} {need.name}"
        yield f"{named:{wide}}  {count(need.beads):>8}  {grams(need.grams):>{heavy}}  {need.buy_grams} g"
    yield f"{'All':{wide}}  {count(bill.beads):>8}  {grams(bill.grams):>{heavy}}"
    yield ""
    yield from _parts(answered, units)
    yield f"Rope {millimetres(bill.rope_mm)}, {fixed(bill.rounds_per_cm, 2)} rounds per cm ({bill.source})"
    yield f"Strung {metres(bill.strung_mm)}; by the rule of thumb {metres(bill.strung_rule_mm)}"
    how = bill.use.source if bill.use.measured else "estimate"
    yield f"Thread about {metres(bill.thread_mm)} on {bill.threads} thread{'s' * (bill.threads > 1)} ({how})"
    yield f"Buy {metres(bill.buy_thread_mm)} of thread"
    yield f"Rope thickness: {thickness_in_words(size)}"


def _parts(answered: Answer, units: str) -> Iterator[str]:
    """The parts of a rope of several: how often each is worked, its beads and its length, and what is in the middle."""
    parts = answered.materials.parts
    if len(parts) == 1:
        return
    wide = max(len(part.name) for part in parts)
    for part in parts:
        times = times_in_words(part.times)
        yield f"{part.name:{wide}}  {count(part.beads):>8}  {millimetres(part.rope_mm):>11}  {times}"
    yield from filter(None, (middle_in_words(answered.size, units),))
    yield ""
