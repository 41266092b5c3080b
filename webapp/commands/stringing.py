"""The stringing list of a pattern file, as text or JSON."""

from __future__ import annotations

import json
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator, Sequence
from itertools import accumulate

from engine.counting.groups import Grouped, group_runs
from engine.counting.options import read_plan
from engine.counting.sizes import size
from engine.counting.stringing import Repeated, Run, StringingList, string
from engine.units import count, counted, metres, numbers_in_words
from webapp.commands import files
from webapp.exchange.results.lists import stringing_json


def add_options(parser: ArgumentParser) -> None:
    files.add_file(parser)
    parser.add_argument("--json", action="store_true", help="as JSON, with unrounded millimetres")
    files.add_threads(parser)
    files.add_hand(parser)
    files.add_size(parser)


def run(chosen: Namespace) -> int:
    sized = size(files.pattern(chosen), files.question(chosen), files.own(chosen))
    stringing = string(sized, read_plan(chosen.threads))
    if chosen.json:
        print(json.dumps(stringing_json(stringing), ensure_ascii=False))
    else:
        print("\n".join(_lines(sized.pattern.title, stringing)))
    return 0


def _lines(title: str, stringing: StringingList) -> Iterator[str]:
    threads = len(stringing.threads)
    yield f"{title}: one pass is {counted(stringing.beads, 'bead')}; {counted(threads, 'thread')}"
    yield "In stringing order: the first bead strung is the last bead worked."
    for number, repeated in enumerate(stringing.distinct, 1):
        yield ""
        yield from _list(number, repeated)


def _list(number: int, repeated: Repeated) -> Iterator[str]:
    thread, numbers = repeated
    times = len(numbers)
    of = f" ({', '.join(thread.parts)})" if thread.parts else ""
    again = f", string this list {times} times" if times > 1 else ""
    yield f"List {number}, for thread{'s' * (times > 1)} {numbers_in_words(numbers)}{of}{again}"
    yield f"{counted(thread.beads, 'bead')} in {counted(len(thread.runs), 'run')}, {metres(thread.strung_mm)} strung"
    grouped = group_runs(thread.runs)
    yield from _runs(thread.runs) if grouped is None else _groups(grouped)


def _runs(runs: Sequence[Run], strung: int = 0) -> Iterator[str]:
    """A line a run, and after every ten the beads strung by then, of which `strung` were before."""
    wide = len(str(max(run.beads for run in runs)))
    totals = accumulate((run.beads for run in runs), initial=strung)
    next(totals)
    for place, (run, so_far) in enumerate(zip(runs, totals, strict=True), 1):
        yield f"  {run.beads:>{wide}} {run.code}"
        if place % 10 == 0 or place == len(runs):
            yield f"  {'':{wide}} = {count(so_far)} so far"


def _groups(grouped: Grouped) -> Iterator[str]:
    """The group, how often it is strung, the beads after every ten, and what stands before and behind."""
    if grouped.before:
        yield "First:"
        yield from _runs(grouped.before)
    runs = ", ".join(f"{run.beads} {run.code}" for run in grouped.group)
    yield f"{'Then ' if grouped.before else ''}{grouped.times} times: {runs} ({counted(grouped.group_beads, 'bead')})"
    for times, so_far in grouped.totals:
        yield f"  {times:>{len(str(grouped.times))}} times = {count(so_far)} so far"
    if grouped.after:
        yield "Finish with:"
        yield from _runs(grouped.after, grouped.totals[-1][1])
