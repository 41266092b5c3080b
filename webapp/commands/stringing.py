"""The stringing list of a pattern file, as text or JSON."""

from __future__ import annotations

import json
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from itertools import accumulate

from engine.counting.options import read_plan
from engine.counting.sizes import size
from engine.counting.stringing import Repeated, StringingList, string
from engine.units import count, counted, metres, numbers_in_words
from webapp.commands import files
from webapp.exchange.results import stringing_json


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
    again = f", string this list {times} times" if times > 1 else ""
    yield f"List {number}, for thread{'s' * (times > 1)} {numbers_in_words(numbers)}{again}"
    runs = counted(len(thread.runs), "run")
    yield f"{counted(thread.beads, 'bead')} in {runs}, {metres(thread.strung_mm)} strung"
    wide = len(str(max(run.beads for run in thread.runs)))
    totals = accumulate(run.beads for run in thread.runs)
    for place, (run, so_far) in enumerate(zip(thread.runs, totals, strict=True), 1):
        yield f"  {run.beads:>{wide}} {run.code}"
        if place % 10 == 0 or place == len(thread.runs):
            yield f"  {'':{wide}} = {count(so_far)} so far"
